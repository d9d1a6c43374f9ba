// 1. The spots of a want are those of its kinds on the stretches between the first and the last.
// 2. A want with a number gets spots that lie evenly over the drive, each place once while there are
//    others; wants are served in their order.
// 3. A "max" want takes, in driving order, whatever begins the spacing after the stop before it and
//    still fits into the minutes.
#include "find/stops.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "find/bans.hpp"
#include "find/describe.hpp"
#include "find/plan_pull_ups.hpp"
#include "loopwright/road/kind_table.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::find {

namespace {

bool is_for_manoeuvres(const wish::Want& want) {
  return road::form_of(want.kind) == road::KindForm::manoeuvre;
}

class StopPlanner {
 public:
  StopPlanner(const Ground& ground, Drive& drive) : ground_(ground), drive_(drive) {}

  void plan() {
    for (const wish::Want& want : ground_.wish.wants)
      if (is_for_manoeuvres(want) && want.count) take_number(want);
    for (const wish::Want& want : ground_.wish.wants)
      if (is_for_manoeuvres(want) && !want.count) take_most(want);
  }

 private:
  [[nodiscard]] bool is_taken(std::size_t at) const {
    return std::any_of(drive_.stops.begin(), drive_.stops.end(),
                       [&](const PlannedStop& stop) { return stop.at == at; });
  }

  [[nodiscard]] PlaceId place_of(const PlannedStop& stop) const {
    return ground_.roads.chances[stop.chance.index()].place;
  }

  /// In driving order, at most one for each stretch driven.
  [[nodiscard]] std::vector<PlannedStop> spots_of(const wish::Want& want) const {
    std::vector<PlannedStop> spots;
    for (std::size_t i = 1; i + 1 < drive_.states.size(); ++i) {
      if (is_taken(i)) continue;
      for (const road::Chance& chance :
           ground_.roads.chances_from(ground_.roads.stretch_of(drive_.states[i])))
        if (wish::counts_for(chance.kind, chance.movement, want) &&
            !is_unwanted(ground_.wish, ground_.caps, chance)) {
          const auto row = static_cast<std::size_t>(&chance - ground_.roads.chances.data());
          spots.push_back({i, ChanceId{row}});
          break;
        }
    }
    return spots;
  }

  void add(const PlannedStop& stop) {
    const auto after =
        std::upper_bound(drive_.stops.begin(), drive_.stops.end(), stop,
                         [](const PlannedStop& a, const PlannedStop& b) { return a.at < b.at; });
    drive_.stops.insert(after, stop);
  }

  void take_number(const wish::Want& want) {
    const auto asked = static_cast<std::size_t>(*want.count);
    std::vector<PlannedStop> fresh, again;
    std::map<PlaceId, int> uses;
    for (const PlannedStop& spot : spots_of(want)) {
      const int before = uses[place_of(spot)]++;
      if (before < ground_.caps.junction_passes) (before == 0 ? fresh : again).push_back(spot);
    }
    const std::size_t first = std::min(asked, fresh.size());
    for (std::size_t k = 0; k < first; ++k) add(fresh[(2 * k + 1) * fresh.size() / (2 * first)]);
    for (std::size_t k = 0; k < again.size() && first + k < asked; ++k) add(again[k]);
  }

  void take_most(const wish::Want& want) {
    const int minutes = ground_.wish.minutes.value_or(0) - ground_.wish.reserve_minutes;
    const std::int64_t most_ms = minutes * ms_per_minute;
    std::int64_t next_from = 0;
    std::map<PlaceId, int> uses;
    for (const PlannedStop& spot : spots_of(want)) {
      const std::int64_t stay_ms = stop_ms(ground_.roads.chances[spot.chance.index()].kind);
      const std::int64_t begins_ms = begin_times(ground_, drive_)[spot.at];
      const bool fits = !ground_.wish.minutes || away_ms(ground_, drive_) + stay_ms <= most_ms;
      if (!fits) return;
      if (begins_ms < next_from || uses[place_of(spot)] >= ground_.caps.junction_passes) continue;
      ++uses[place_of(spot)];
      add(spot);
      next_from = begins_ms + stay_ms + ground_.caps.spacing_ms;
    }
  }

  const Ground& ground_;
  Drive& drive_;
};

}  // namespace

std::int64_t stop_ms(road::Kind kind) {
  return road::form_of(kind) == road::KindForm::manoeuvre
             ? road::kind_row(kind).minutes * ms_per_minute
             : 0;
}

std::int64_t stops_ms(const road::Roads& roads, const Drive& drive) {
  std::int64_t sum = 0;
  for (const PlannedStop& stop : drive.stops)
    sum += stop_ms(roads.chances[stop.chance.index()].kind);
  return sum;
}

std::int64_t stops_before_ms(const road::Roads& roads, const Drive& drive, std::size_t row) {
  std::int64_t sum = 0;
  for (const PlannedStop& stop : drive.stops)
    if (stop.at < row) sum += stop_ms(roads.chances[stop.chance.index()].kind);
  for (const PlannedPullUp& stop : drive.pull_ups)
    if (stop.at < row) sum += stop.stay_ms;
  return sum;
}

bool asks_for_stops(const wish::Wish& wish) {
  return wish::kept_for_stops_s(wish) > 0 || std::ranges::any_of(wish.wants, is_for_manoeuvres);
}

void plan_stops(const Ground& ground, Drive& drive) {
  drive.stops.clear(), drive.pull_ups.clear(), drive.unplaced = 0;
  if (std::ranges::any_of(ground.wish.wants, is_for_manoeuvres)) StopPlanner(ground, drive).plan();
  if (wish::kept_for_stops_s(ground.wish) > 0) plan_pull_ups(ground, drive);
}

std::vector<std::int64_t> begin_times(const Ground& ground, const Drive& drive) {
  std::vector<std::int64_t> begins;
  for (const pace::Spell& spell : spells_before(ground.roads, ground.pace, drive))
    begins.push_back(spell.likely_ms);
  begins.pop_back();
  if (drive.stops.empty() && drive.pull_ups.empty()) return begins;
  for (std::size_t i = 0; i < begins.size(); ++i)
    begins[i] += stops_before_ms(ground.roads, drive, i);
  return begins;
}

std::int64_t away_ms(const Ground& ground, const Drive& drive) {
  return spells_before(ground.roads, ground.pace, drive).back().likely_ms +
         stops_ms(ground.roads, drive) + 1000 * wish::kept_for_stops_s(ground.wish);
}

double spot_m(const road::Roads& roads, const road::Chance& chance) {
  const Foot foot =
      nearest_on_line(roads.shape_of(chance.entry.piece()), roads.places[chance.place.index()].at);
  const double length_m = roads.piece(chance.entry).length_m;
  return chance.entry.against() ? length_m - foot.along_m : foot.along_m;
}

}  // namespace loopwright::find
