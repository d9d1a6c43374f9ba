// 1. A place right at a junction is nearest to several streets alike; one of them may be shut. Then
//    it is set some metres into one that has no hours.
// 2. Other starts are tried in steps of five minutes, up to two hours away.
#include "command/lanes_along.hpp"

#include <algorithm>
#include <ostream>
#include <string>

#include "command/folded.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/reach/reach.hpp"

namespace loopwright::command {
namespace {

constexpr double as_near_m = 8;      // ours: the width of a street
constexpr double into_street_m = 3;  // ours: enough to be nearest to it alone
constexpr int step_minutes = 5, most_minutes = 120;
constexpr int hours_a_day = 24;

bool has_hours(const road::Roads& roads, PieceId piece) {
  for (const bool against : {false, true}) {
    for (const road::TimedRule& rule : roads.timed_rules_of(StretchId(piece, against)))
      if (rule.about != road::Timed::limit) return true;
  }
  return false;
}

/// The rule by which a piece is shut at a moment, in every direction one may drive it.
const road::TimedRule* shut_by(const road::Roads& roads, PieceId piece, const Instant& at,
                               const hours::Setting& setting) {
  lanes::Clockwork clock(roads, setting);
  const road::TimedRule* shut = nullptr;
  for (const bool against : {false, true}) {
    const StretchId stretch(piece, against);
    if (!roads.drivable(stretch)) continue;
    const road::TimedRule* own = nullptr;
    for (const road::TimedRule& rule : roads.timed_rules_of(stretch)) {
      if (rule.about == road::Timed::limit) continue;
      if (clock.open(rule, {at, at}).in_force != hours::Tri::yes) own = &rule;
    }
    if (own == nullptr) return nullptr;
    shut = own;
  }
  return shut;
}

struct Beside {
  Point at;
  PieceId piece;
};

/// On a street without hours as near as the one snapped to; none: there is no such street.
std::optional<Beside> beside(const road::Roads& roads, Point at, const reach::Snap& snap) {
  std::optional<Beside> best;
  double least_m = snap.off_m + as_near_m;
  for (const PieceId piece : road::pieces_near(roads, at, least_m)) {
    const bool drivable =
        roads.drivable(StretchId(piece, false)) || roads.drivable(StretchId(piece, true));
    if (!drivable || has_hours(roads, piece)) continue;
    const auto shape = roads.shape_of(piece);
    const Foot foot = nearest_on_line(shape, at);
    if (foot.off_m > least_m) continue;
    const double length_m = roads.pieces[piece.index()].length_m;
    const double inside_m = std::min(into_street_m, length_m / 2);
    least_m = foot.off_m;
    const double along_m = std::clamp(foot.along_m, inside_m, length_m - inside_m);
    best = Beside{point_along(shape, along_m), piece};
  }
  return best;
}

/// A place of the route, and whether to say so when it stays on a shut street: of both ends the
/// refusal of the drive says it.
struct RoutePlace {
  Point& at;
  std::string name;
  bool is_end = false;
};

void keep_off(std::ostream& out, const road::Roads& roads, const RoutePlace& place,
              const Instant& start, const hours::Setting& setting) {
  const auto snap = reach::snap_home(roads, place.at);
  if (!snap) return;
  const road::TimedRule* rule = shut_by(roads, snap->piece, start, setting);
  if (rule == nullptr) return;
  const std::string street = lanes::street_words(roads, rule->stretch);
  const std::string hours = lanes::words_of(roads, *rule);
  if (const auto open = beside(roads, place.at, *snap)) {
    place.at = open->at;
    const std::string other = lanes::street_words(roads, StretchId(open->piece, false));
    print_folded(out, 0, place.name + " is set on " + other + ", since " + street + " is " + hours);
  } else if (!place.is_end) {
    print_folded(out, 0, place.name + " lies on " + street + ", which is " + hours);
  }
}

std::optional<wish::Loop> drive(const road::Roads& roads, const wish::Wish& wish,
                                const hours::Setting& setting) {
  auto found = find::route_through(roads, wish, setting);
  if (found.loops.empty()) return std::nullopt;
  return std::move(found.loops.front());
}

}  // namespace

void keep_off_shut_streets(std::ostream& out, const road::Roads& roads, wish::Wish& wish,
                           const hours::Setting& setting) {
  keep_off(out, roads, {wish.home, "home", true}, wish.start, setting);
  for (std::size_t k = 0; k < wish.through.size(); ++k) {
    const RoutePlace place{wish.through[k], "point " + std::to_string(k + 1)};
    keep_off(out, roads, place, wish.start, setting);
  }
  if (wish.end) keep_off(out, roads, {*wish.end, "the end", true}, wish.start, setting);
}

std::optional<OtherStart> other_start(const road::Roads& roads, const wish::Wish& wish,
                                      const hours::Setting& setting) {
  wish::Wish shifted = wish;
  for (int step = step_minutes; step <= most_minutes; step += step_minutes) {
    for (const int minutes : {-step, step}) {
      shifted.start = setting.on_clock(wish.start.plus_seconds(std::int64_t{60} * minutes));
      if (auto loop = drive(roads, shifted, setting)) return OtherStart{minutes, std::move(*loop)};
    }
  }
  return std::nullopt;
}

std::optional<wish::Loop> drive_on_day(const road::Roads& roads, wish::Wish wish, const Date& day,
                                       const hours::Setting& setting) {
  const CivilTime asked = setting.on_clock(wish.start).civil();
  const std::string& zone = roads.info().zone;
  wish.start = hours::instant_in(zone, {day, asked.hour, asked.minute, 0});
  if (auto loop = drive(roads, wish, setting)) return loop;
  for (int hour = 0; hour < hours_a_day; ++hour) {
    wish.start = hours::instant_in(zone, {day, hour, 0, 0});
    if (auto loop = drive(roads, wish, setting)) return loop;
  }
  return std::nullopt;
}

}  // namespace loopwright::command
