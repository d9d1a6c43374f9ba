// Method:
//   1. Kerbs near the door are tried in order, for the minutes asked, then for fewer.
//   2. From each the search keeps off all that isn't done alone, and turns the car round nowhere. A street with a limit
//      faster than any that was met is kept off; then the search goes again, a few times. A quick search tells where there
//      is a drive, for most of the time went into kerbs with none; where there is one the usual search makes it an easy one.
//   3. Only loops that begin and end at a free kerb of the place count.
#include "command/home_drives.hpp"

#include <algorithm>

#include "command/files.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/road/kind_table.hpp"
#include "loopwright/wish/lesson.hpp"
#include "loopwright/wish/resolve.hpp"

namespace loopwright::command {
namespace {

constexpr double kmh_of_mile = 1.609344;  // the international mile: exact
/// A limit that no record need show: any learner has driven in a town (ours).
constexpr double town_kmh = 30 * kmh_of_mile + 2;
constexpr double no_limit_kmh = 1000;
constexpr std::int64_t seats_s = 600;  // before and after, for changing seats

double kmh(int value, SpeedUnit unit) {
  if (value == 0) return no_limit_kmh;
  return unit == SpeedUnit::mph ? value * kmh_of_mile : value;
}

double fastest_met_kmh(const book::Met& met) {
  double fastest = town_kmh;
  for (const auto& [limit, minutes] : met.limits)
    if (has_met_limit(met, limit.second, limit.first))
      fastest = std::max(fastest, kmh(limit.second, limit.first));
  return fastest;
}

bool is_alone(const std::vector<book::Practice>& alone, const book::Practice& what) {
  return std::any_of(alone.begin(), alone.end(), [&](const book::Practice& one) {
    return road::meets(one.kind, what.kind) && one.movement == what.movement;
  });
}

int hardest_of(const std::vector<book::Practice>& alone) {
  int hardest = 1;
  for (const book::Practice& one : alone)
    hardest = std::max(hardest, road::hardness_of(one.kind, one.movement));
  return hardest;
}

class HomeSearch {
 public:
  HomeSearch(const Ground& ground, const road::Roads& roads, const HomeAsk& ask)
      : ground_(ground),
        roads_(roads),
        ask_(ask),
        rules_(book::at_home_rules()),
        fastest_kmh_(fastest_met_kmh(ask.met)) {}

  HomeDrives run(const std::vector<find::BeginPlace>& places) const {
    HomeDrives best;
    best.any_place = !places.empty();
    for (int minutes = ask_.minutes; best.answer.loops.empty() && minutes >= rules_.least_minutes;
         minutes -= rules_.shorter_by_minutes)
      try_all(places, minutes, best);
    return best;
  }

 private:
  void try_all(const std::vector<find::BeginPlace>& places, int minutes, HomeDrives& best) const {
    const auto wanted = static_cast<std::size_t>(rules_.loops);
    for (const find::BeginPlace& place : places) {
      if (best.answer.loops.size() >= wanted) return;
      if (!all_slow_enough(place)) continue;
      wish::Answer answer = drives_from(place, minutes, find::Effort::quick);
      if (answer.loops.size() <= best.answer.loops.size()) continue;
      wish::Answer usual = drives_from(place, minutes, find::Effort::usual);
      if (usual.loops.size() >= answer.loops.size()) answer = std::move(usual);
      best.place = place;
      best.answer = std::move(answer);
    }
  }

  [[nodiscard]] bool all_slow_enough(const find::BeginPlace& place) const {
    return std::all_of(place.alongside.begin(), place.alongside.end(), [&](StretchId stretch) {
      const Date day = ask_.start.civil().date;
      return is_met(road::law_of(roads_.info()).on(roads_.stretch(stretch).limit, day));
    });
  }

  [[nodiscard]] bool is_met(const road::LimitOnDay& limit) const {
    return kmh(limit.value, limit.unit) <= fastest_kmh_;
  }

  [[nodiscard]] wish::Wish wish_for(const find::BeginPlace& place, int minutes) const {
    wish::Wish wish;
    wish.home = place.at;
    wish.start = ask_.start;
    wish.minutes = minutes;
    wish.level = ask_.level;
    wish.pace = ask_.pace;
    wish.alternatives = rules_.loops;
    wish.avoids = book::all_but(ask_.alone);
    wish.hardest = hardest_of(ask_.alone);
    wish.street_use = ask_.streets;
    wish.terms = ground_.terms();
    return wish;
  }

  /// Step 2.
  [[nodiscard]] wish::Answer drives_from(const find::BeginPlace& place, int minutes,
                                         find::Effort effort) const {
    wish::Answer answer;
    answer.wish = wish_for(place, minutes);
    const hours::Setting setting = ground_.setting_of(answer.wish);
    for (int round = 0; round <= rules_.most_kept_off; ++round) {
      answer.loops = find::find_loops(roads_, answer.wish, setting, effort).loops;
      std::erase_if(answer.loops, [&](const wish::Loop& loop) { return !is_fit(loop, place); });
      const bool none = answer.loops.empty();
      std::vector<wish::KeepOff> unfit;
      std::erase_if(answer.loops, [&](const wish::Loop& loop) {
        const auto street = unfit_on(loop);
        if (street) unfit.push_back(*street);
        return street.has_value();
      });
      if (none || !answer.loops.empty()) break;
      answer.wish.keep_offs.push_back(unfit.front());
    }
    number(answer);
    return answer;
  }

  /// Step 3; and nothing on it is new.
  [[nodiscard]] bool is_fit(const wish::Loop& loop, const find::BeginPlace& place) const {
    return !loop.stretches.empty() && new_on(loop, ask_.alone).empty() &&
           find::stands_beside(place, loop.stretches.front().stretch) &&
           find::stands_beside(place, loop.stretches.back().stretch);
  }

  /// The first street of a loop whose limit is faster than any that was met.
  [[nodiscard]] std::optional<wish::KeepOff> unfit_on(const wish::Loop& loop) const {
    for (std::size_t row = 0; row < loop.stretches.size(); ++row) {
      const wish::LoopStretch& driven = loop.stretches[row];
      if (is_met(driven.limit)) continue;
      const auto shape = roads_.shape_of(driven.stretch.piece());
      const Point middle = point_along(shape, roads_.piece(driven.stretch).length_m / 2);
      return wish::KeepOff{driven.street.empty() ? "a road without a name" : driven.street,
                           {middle}};
    }
    return std::nullopt;
  }

  /// What is left are all that are asked for.
  static void number(wish::Answer& answer) {
    int id = 0;
    for (wish::Loop& loop : answer.loops) loop.id = ++id;
    answer.wish.alternatives = std::max(id, 1);
  }

  const Ground& ground_;
  const road::Roads& roads_;
  const HomeAsk& ask_;
  book::AtHomeRules rules_;
  double fastest_kmh_;
};

std::vector<find::BeginPlace> places_for(const road::Roads& roads, const HomeAsk& ask,
                                         const hours::Setting& setting) {
  const book::AtHomeRules rules = book::at_home_rules();
  const find::BeginAsk begin{
      .door = ask.door,
      .from_m = static_cast<double>(rules.from_door_m),
      .to_m = static_cast<double>(rules.most_from_door_m),
      .room_m = static_cast<double>(rules.room_m),
      .corner_m = static_cast<double>(rules.to_corner_m),
      .apart_m = static_cast<double>(rules.places_apart_m),
      .most = static_cast<std::size_t>(rules.places),
      .stay = {
          ask.start.plus_seconds(-seats_s),
          ask.start.plus_seconds(std::int64_t{60} * wish::slow_minutes(ask.minutes) + seats_s)}};
  return ask.at ? find::place_to_begin_at(roads, begin, *ask.at, setting)
                : find::places_to_begin(roads, begin, setting);
}

}  // namespace

std::vector<book::Practice> new_on(const wish::Loop& loop,
                                   const std::vector<book::Practice>& alone) {
  std::vector<book::Practice> all;
  for (const wish::Pass& pass : loop.passes) {
    const book::Practice what{pass.kind, pass.movement};
    const bool counts = road::form_of(pass.kind) != road::KindForm::manoeuvre &&
                        !road::is_of_choice(pass.kind) && !is_alone(alone, what);
    if (counts && std::find(all.begin(), all.end(), what) == all.end()) all.push_back(what);
  }
  return all;
}

HomeDrives find_home_drives(Ground& ground, const HomeAsk& ask, const std::string& area) {
  const hours::Setting setting = ground.setting_at(ask.door);
  const road::Roads& roads =
      ground.for_lesson(road::lesson_time(ask.start, wish::slow_minutes(ask.minutes), setting));
  HomeDrives found = HomeSearch(ground, roads, ask).run(places_for(roads, ask, setting));
  found.answer.area = name_of(roads.info(), area);
  found.answer.notes = ground.notes_name();
  return found;
}

}  // namespace loopwright::command
