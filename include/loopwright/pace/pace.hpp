// How long a learner takes: along a stretch, and at each junction, as a likely time and its spread.
//
//   Pace pace(roads, Learner{.level = 3}, start);
//   Spell s = pace.along(stretch) + pace.at(turn);   // s.likely_ms, s.variance_s2
//
// Rules: likely times are whole milliseconds, so sums come out the same in any order; variances
// add, since delays are taken as independent. Numbers: src/rules/pace.txt, with their sources. A
// closed level crossing is not inside (it is listed beside the times). Parts of a stretch add up to
// the whole to the millisecond. Nobody is ever taken to drive faster than the day's limit. Why:
// percentiles are made only at the end (range_of), never by adding extremes.
#pragma once

#include <array>
#include <cstdint>

#include "loopwright/base/instant.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::pace {

struct Spell {
  std::int64_t likely_ms = 0;
  double variance_s2 = 0;
  Spell& operator+=(const Spell& more) {
    likely_ms += more.likely_ms, variance_s2 += more.variance_s2;
    return *this;
  }
  friend Spell operator+(Spell a, const Spell& b) { return a += b; }
};

/// 10th, 50th and 90th percentile in seconds.
struct Percentiles {
  double low = 0, likely = 0, high = 0;
};
/// Normal approximation: likely ∓ 1.2816 standard deviations, never below half of likely.
Percentiles percentiles_of(const Spell& spell);

struct Learner {
  int level = 3;        ///< 1 to 5, of the driver's record
  double factor = 1.0;  ///< calibration from this pupil's own drives, 0.8 to 1.6
};

class Pace {
 public:
  /// start decides the day's limits and whether junctions are at their peak.
  Pace(const road::Roads& roads, const Learner& learner, const Instant& start);

  /// Driving the whole stretch.
  [[nodiscard]] Spell along(StretchId stretch) const;
  /// Driving part of it; metres from the end it is entered by. Rules: 0 <= from_m <= to_m.
  [[nodiscard]] Spell along_part(StretchId stretch, double from_m, double to_m) const;
  /// Waiting and slowing between two stretches.
  [[nodiscard]] Spell at(const road::Turn& turn) const { return at(turn.control); }
  [[nodiscard]] Spell at(road::Control control) const;
  [[nodiscard]] double speed_mps(StretchId stretch) const;
  [[nodiscard]] road::LimitOnDay limit(StretchId stretch) const;

 private:
  /// A cap on the speed of pieces that carry a flag.
  struct FlagCap {
    std::uint32_t flag = 0;
    double mps = 0;
  };
  [[nodiscard]] double law_mps(const road::LimitFact& fact) const;
  [[nodiscard]] double road_mps(StretchId stretch) const;

  const road::Roads* roads_;
  road::LimitLaw law_;
  Date day_;
  double driving_share_ = 1;     ///< of what the road allows, that this learner drives
  double running_variance_ = 0;  ///< s² per s
  double narrow_m_ = 0, single_track_m_ = 0;
  double narrow_mps_ = 0, single_track_mps_ = 0, ring_lanes_mps_ = 0;
  std::array<Spell, road::control_count> delays_{};
  std::array<FlagCap, 4> flag_caps_{};
  std::array<double, static_cast<std::size_t>(road::RoadClass::road) + 1> class_mps_{};
  /// Speed of the limits that need no number of their own, on the day; so that a search asks the
  /// law's table once and not a million times.
  std::array<double, static_cast<std::size_t>(road::LimitRule::walk) + 1> rule_mps_{};
};

}  // namespace loopwright::pace
