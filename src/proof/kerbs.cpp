// 1. Rows are asked for the area's places one by one; a claim of the file within a hair of a place's middle
//    is a claim of that place.
// 2. A planned stop on the same row makes what lies behind it later.
// 3. A stay lasts from the low arrival to the high one and its seconds more.
#include "proof/kerbs.hpp"

#include <cmath>

#include "loopwright/lanes/pull_up.hpp"
#include "loopwright/lanes/stopping.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

constexpr double a_hair_s = 0.0005;

double likely_s(const pace::Spell& spell) {
  return static_cast<double>(spell.likely_ms) / 1000;
}

}  // namespace

Kerbs::Kerbs(const Drive& drive) : drive_(drive), before_(taken_before(drive)) {
  const pace::Pace pace(drive.roads, {.level = drive.wish.level, .factor = drive.wish.pace},
                        drive.loop.start);
  const auto& claims = drive.loop.pull_ups;
  for (std::size_t row = 0; row < drive.stretches.size(); ++row) {
    const Part& part = drive.parts[row];
    double stops_s = before_[row].stops_s;
    for (const road::PullUp& place : drive.roads.pull_ups_of(drive.stretches[row])) {
      Kerb kerb{row, &place, lanes::stop_at_m(place), {}, -1, 0};
      if (kerb.at_m < part.from_m || kerb.at_m > part.to_m) continue;
      kerb.taken.driving =
          before_[row].driving + pace.along_part(drive.stretches[row], part.from_m, kerb.at_m);
      kerb.taken.stops_s = stops_s;
      for (std::size_t k = 0; k < claims.size(); ++k)
        if (claims[k].stretch == row && near(claims[k].at_m, kerb.at_m, length_tolerance_m)) {
          kerb.claimed = static_cast<int>(k);
          kerb.stay_s = claims[k].seconds;
        }
      stops_s += kerb.stay_s;
      kerbs_.push_back(kerb);
    }
  }
}

const Kerb* Kerbs::of(std::size_t claim) const {
  for (const Kerb& kerb : kerbs_)
    if (kerb.claimed == static_cast<int>(claim)) return &kerb;
  return nullptr;
}

bool Kerbs::usable(const Kerb& kerb, double stay_s) const {
  const pace::Percentiles p = pace::percentiles_of(kerb.taken.driving);
  const double from_s = std::floor(p.low + kerb.taken.stops_s + a_hair_s);
  const double to_s = std::ceil(p.high + kerb.taken.stops_s + stay_s - a_hair_s);
  const Instant start = drive_.loop.start;
  const lanes::Stay stay{start.plus_seconds(static_cast<std::int64_t>(from_s)),
                         start.plus_seconds(static_cast<std::int64_t>(to_s))};
  return lanes::may_stop(drive_.roads, *kerb.place, stay, drive_.setting).verdict ==
         lanes::MayStop::usable;
}

double Kerbs::there_s(const Kerb& kerb) {
  return likely_s(kerb.taken.driving) + kerb.taken.stops_s;
}

double Kerbs::row_s(std::size_t row) const {
  return likely_s(before_[row].driving) + before_[row].stops_s;
}

double Kerbs::driving_s(const Kerb& kerb, std::size_t row) const {
  return likely_s(before_[row].driving) - likely_s(kerb.taken.driving);
}

}  // namespace loopwright::proof
