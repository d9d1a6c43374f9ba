// 1. Each row's places lie between where the drive begins on it and where it ends.
// 2. A place is reached after the driving to its middle, the manoeuvres of the rows before and the
//    planned stops before it.
// 3. Whoever stops there is there from the low arrival to the high one and as long as the stay more.
#include "find/kerb_places.hpp"

#include <cmath>

#include "find/describe.hpp"
#include "find/stops.hpp"
#include "loopwright/lanes/pull_up.hpp"
#include "loopwright/lanes/stopping.hpp"

namespace loopwright::find {

namespace {

/// Times that differ by less are the same; a file keeps milliseconds.
constexpr double a_hair_s = 0.0005;

}  // namespace

KerbPlaces::KerbPlaces(const Ground& ground, const Drive& drive)
    : ground_(ground), drive_(drive), before_(spells_before(ground.roads, ground.pace, drive)) {
  const road::Roads& roads = ground.roads;
  for (std::size_t i = 0; i < drive.states.size(); ++i) {
    const StretchId s = roads.stretch_of(drive.states[i]);
    const double from_m = i == 0 ? drive.start_m : 0;
    const double to_m = from_m + driven_m(roads, drive, i);
    for (const road::PullUp& place : roads.pull_ups_of(s)) {
      const double at_m = lanes::stop_at_m(place);
      if (at_m < from_m || at_m > to_m) continue;
      const auto row = static_cast<std::uint32_t>(&place - roads.pull_ups.data());
      places_.push_back({i, row, at_m, before_[i] + ground.pace.along_part(s, from_m, at_m)});
    }
  }
}

double KerbPlaces::stops_before_s(const KerbPlace& one) const {
  std::int64_t ms = 0;
  for (const PlannedStop& stop : drive_.stops)
    if (stop.at < one.at) ms += stop_ms(ground_.roads.chances[stop.chance.index()].kind);
  for (const PlannedPullUp& stop : drive_.pull_ups)
    if (stop.at < one.at || (stop.at == one.at && stop.place < one.place)) ms += stop.stay_ms;
  return static_cast<double>(ms) / 1000;
}

wish::Range KerbPlaces::there_s(const KerbPlace& one) const {
  const pace::Percentiles p = pace::percentiles_of(one.driven);
  const double stops_s = stops_before_s(one);
  return {p.low + stops_s, p.likely + stops_s, p.high + stops_s};
}

double KerbPlaces::row_s(std::size_t row) const {
  return static_cast<double>(before_[row].likely_ms) / 1000 +
         static_cast<double>(stops_before_ms(ground_.roads, drive_, row)) / 1000;
}

bool KerbPlaces::usable(const KerbPlace& one, double stay_s) const {
  const wish::Range there = there_s(one);
  const Instant start = ground_.wish.start;
  const lanes::Stay stay{
      start.plus_seconds(static_cast<std::int64_t>(std::floor(there.low + a_hair_s))),
      start.plus_seconds(static_cast<std::int64_t>(std::ceil(there.high + stay_s - a_hair_s)))};
  return lanes::may_stop(ground_.roads, ground_.roads.pull_ups[one.place], stay, ground_.setting)
             .verdict == lanes::MayStop::usable;
}

int KerbPlaces::planned_at(const KerbPlace& one) const {
  for (std::size_t k = 0; k < drive_.pull_ups.size(); ++k)
    if (drive_.pull_ups[k].at == one.at && drive_.pull_ups[k].place == one.place)
      return static_cast<int>(k);
  return -1;
}

}  // namespace loopwright::find
