// 1. A place right at a junction is nearest to several streets alike; one of them may be shut. Then it
//    may be set some metres into any of those that have no hours.
// 2. The street nearest to the place may be one that is only left by the shut one. So the whole route
//    is tried with each choice, the nearest streets first, until one can be driven.
#include "command/lanes_beside.hpp"

#include <algorithm>
#include <ostream>
#include <string>
#include <utility>
#include <vector>

#include "command/folded.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/reach/reach.hpp"

namespace loopwright::command {
namespace {

constexpr double as_near_m = 8;         // ours: the width of a street
constexpr double into_street_m = 3;     // ours: enough to be nearest to it alone
constexpr int most_tries = 24;          // of a search over the roads each
constexpr std::int64_t soon_s = 3'600;  // ours: the route comes by within it

bool has_hours(const road::Roads& roads, PieceId piece) {
  for (const bool against : {false, true}) {
    for (const road::TimedRule& rule : roads.timed_rules_of(StretchId(piece, against)))
      if (rule.about != road::Timed::limit) return true;
  }
  return false;
}

/// The rule by which a piece may be shut in the next hour, in every direction one may drive it.
const road::TimedRule* shut_by(const TimedRoads& timed, PieceId piece, const Instant& start) {
  lanes::Clockwork clock(timed.roads, timed.setting);
  const lanes::Passing soon{start, timed.setting.on_clock(start.plus_seconds(soon_s))};
  const road::TimedRule* shut = nullptr;
  for (const bool against : {false, true}) {
    const StretchId stretch(piece, against);
    if (!timed.roads.drivable(stretch)) continue;
    const road::TimedRule* own = nullptr;
    for (const road::TimedRule& rule : timed.roads.timed_rules_of(stretch)) {
      if (rule.about == road::Timed::limit) continue;
      if (clock.open(rule, soon).in_force != hours::Tri::yes) own = &rule;
    }
    if (own == nullptr) return nullptr;
    shut = own;
  }
  return shut;
}

/// Where a place may be set instead.
struct Beside {
  double off_m = 0;
  Point at;
  std::string street;
};

/// On streets without hours as near as the one snapped to, the nearest first.
std::vector<Beside> beside(const road::Roads& roads, Point at, const reach::Snap& snap) {
  std::vector<Beside> all;
  const double most_m = snap.off_m + as_near_m;
  for (const PieceId piece : road::pieces_near(roads, at, most_m)) {
    const bool drivable =
        roads.drivable(StretchId(piece, false)) || roads.drivable(StretchId(piece, true));
    if (!drivable || has_hours(roads, piece)) continue;
    const auto shape = roads.shape_of(piece);
    const Foot foot = nearest_on_line(shape, at);
    if (foot.off_m > most_m) continue;
    const double length_m = roads.pieces[piece.index()].length_m;
    const double inside_m = std::min(into_street_m, length_m / 2);
    const double along_m = std::clamp(foot.along_m, inside_m, length_m - inside_m);
    all.push_back({foot.off_m, point_along(shape, along_m),
                   lanes::street_words(roads, StretchId(piece, false))});
  }
  std::ranges::stable_sort(all, {}, &Beside::off_m);
  return all;
}

/// A place of the route on a street that is shut.
struct ShutPlace {
  std::size_t number = 0;  ///< of the route's places
  const road::TimedRule* rule = nullptr;
  std::vector<Beside> instead;
};

std::vector<ShutPlace> shut_places(const TimedRoads& timed, const Instant& start,
                                   std::span<const NamedPlace> places) {
  std::vector<ShutPlace> shut;
  for (std::size_t k = 0; k < places.size(); ++k) {
    const auto snap = reach::snap_home(timed.roads, places[k].at);
    if (!snap) continue;
    if (const road::TimedRule* rule = shut_by(timed, snap->piece, start))
      shut.push_back({k, rule, beside(timed.roads, places[k].at, *snap)});
  }
  return shut;
}

Point& place_of(wish::Wish& wish, std::size_t number) {
  if (number == 0) return wish.home;
  return number <= wish.through.size() ? wish.through[number - 1] : *wish.end;
}

/// Goes on to the next choice as a counter does, the last place first. False after the last one.
bool next_choice(std::vector<std::size_t>& choice, const std::vector<ShutPlace>& movable) {
  for (std::size_t k = choice.size(); k-- > 0;) {
    if (++choice[k] < movable[k].instead.size()) return true;
    choice[k] = 0;
  }
  return false;
}

/// "Friars Row is shut Monday …"
std::string is_shut(const road::Roads& roads, const road::TimedRule& rule) {
  return lanes::street_words(roads, rule.stretch) + " is " + lanes::words_of(roads, rule);
}

/// Of all places on one street together: "54.30,2.60 lies on Friars Row, which is shut Monday …".
void tell_where_they_lie(std::ostream& out, const road::Roads& roads,
                         const std::vector<ShutPlace>& shut, std::span<const NamedPlace> places) {
  std::vector<std::string> told;
  for (const ShutPlace& place : shut) {
    const std::string street = lanes::street_words(roads, place.rule->stretch);
    std::string line = street + ", which is " + lanes::words_of(roads, *place.rule);
    if (std::ranges::find(told, line) != told.end()) continue;
    told.push_back(std::move(line));
    std::vector<std::string> names;
    for (const ShutPlace& other : shut) {
      const std::string& name = places[other.number].name;
      const bool same = other.rule->text == place.rule->text &&
                        lanes::street_words(roads, other.rule->stretch) == street;
      if (same && lower(name) != lower(street)) names.push_back(name);
    }
    if (names.empty()) continue;
    print_folded(out, 0,
                 listed(names) + (names.size() == 1 ? " lies on " : " lie on ") + told.back());
  }
}

}  // namespace

find::FindResult drive_beside_shut_streets(std::ostream& out, const TimedRoads& timed,
                                           wish::Wish& wish, std::span<const NamedPlace> places) {
  const std::vector<ShutPlace> shut = shut_places(timed, wish.start, places);
  std::vector<ShutPlace> movable = shut;
  std::erase_if(movable, [](const ShutPlace& place) { return place.instead.empty(); });
  std::vector<std::size_t> choice(movable.size(), 0);
  bool more = !movable.empty();
  for (int tries = 0; more && tries < most_tries; ++tries, more = next_choice(choice, movable)) {
    wish::Wish moved = wish;
    for (std::size_t k = 0; k < movable.size(); ++k)
      place_of(moved, movable[k].number) = movable[k].instead[choice[k]].at;
    find::FindResult found = find::route_through(timed.roads, moved, timed.setting);
    if (found.loops.empty()) continue;
    for (std::size_t k = 0; k < movable.size(); ++k) {
      print_folded(out, 0,
                   places[movable[k].number].name + " is set on " +
                       movable[k].instead[choice[k]].street + ", since " +
                       is_shut(timed.roads, *movable[k].rule));
    }
    wish = std::move(moved);
    return found;
  }
  tell_where_they_lie(out, timed.roads, shut, places);
  return {};
}

}  // namespace loopwright::command
