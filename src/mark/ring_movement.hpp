// What an instructor calls a way through a roundabout: left, ahead, right, or round.
//
//   const RingMovements movements(draft, roads, middle, arms);
//   movements.of(0, 2);   // from the first arm into the third
#pragma once

#include <vector>

#include "arms.hpp"

namespace loopwright::mark {

class RingMovements {
 public:
  RingMovements(const Draft& draft, const road::Roads& roads, Point middle,
                const std::vector<JunctionArm>& arms);

  /// Rules: one can enter by the first arm and leave by the second.
  [[nodiscard]] road::Movement of(std::size_t from, std::size_t to) const;

 private:
  /// How an arm lies round the middle, and how its road runs; compass degrees.
  struct Course {
    double place_deg = 0;    ///< from the middle to the arm, clear of the flare
    double coming_deg = 0;   ///< of a driver who comes in by it
    double leaving_deg = 0;  ///< of a driver who leaves by it
    bool counted = false;    ///< an exit the signs count
  };

  [[nodiscard]] double turn_deg(std::size_t from, std::size_t to) const;
  [[nodiscard]] std::vector<std::size_t> exits_from(std::size_t from) const;
  [[nodiscard]] bool gives_way_to_another(std::size_t from, std::size_t to) const;

  std::vector<Course> arms_;
  Side side_;
};

}  // namespace loopwright::mark
