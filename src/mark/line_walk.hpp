// The points of a line at metres that never fall: walks the line once, however often it is asked.
//
//   LineWalk walk(line);
//   for (double at_m = 0; at_m < end_m; at_m += 5) use(walk.at(at_m));
//
// Rules: private to mark. The same points as point_along() gives, which begins at the line's start each
// time: on a road of many thousand points that is too slow.
#pragma once

#include <cstddef>
#include <span>

#include "loopwright/base/point_between.hpp"

namespace loopwright::mark {

class LineWalk {
 public:
  /// A line of at least two points, which must outlive the walk.
  explicit LineWalk(std::span<const Point> line) : line_(line) {}

  /// The point `along_m` metres from the line's start, clamped to its ends. Not less than last time,
  /// unless before the start.
  Point at(double along_m) {
    while (first_ + 2 < line_.size()) {
      if (leg_m_ < 0) leg_m_ = distance_m(line_[first_], line_[first_ + 1]);
      if (along_m < before_m_ + leg_m_) break;
      before_m_ += leg_m_;
      leg_m_ = -1;
      ++first_;
    }
    return on_leg(along_m - before_m_);
  }

 private:
  Point on_leg(double along_m) {
    if (along_m <= 0) return line_[first_];
    if (leg_m_ < 0) leg_m_ = distance_m(line_[first_], line_[first_ + 1]);
    if (along_m >= leg_m_) return line_[first_ + 1];
    return point_between(line_[first_], line_[first_ + 1], along_m / leg_m_);
  }

  std::span<const Point> line_;
  std::size_t first_ = 0;  // of the leg it is on
  double before_m_ = 0;    // from the line's start to that leg's
  double leg_m_ = -1;      // of the leg it is on; below 0: not yet measured
};

}  // namespace loopwright::mark
