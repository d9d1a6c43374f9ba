// The bearings at both ends of every stretch, each measured once.
//
//   const Bearings bearings(roads);   bearings.in_deg(from), bearings.out_deg(to)
//
// Rules: the same numbers as bearing_out_deg and bearing_in_deg (roads.hpp) give, of the roads as they were when it was
// made: pieces and their shapes must not change after.
// Why: building an area asks for each of them some ten times, and measuring one takes longer than what is asked of it.
#pragma once

#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::road {

class Bearings {
 public:
  Bearings() = default;
  /// Measures all of them, by two threads.
  explicit Bearings(const Roads& roads);

  [[nodiscard]] bool empty() const { return out_deg_.empty(); }
  [[nodiscard]] double out_deg(StretchId stretch) const { return out_deg_[stretch.index()]; }
  [[nodiscard]] double in_deg(StretchId stretch) const { return in_deg_[stretch.index()]; }

 private:
  std::vector<double> out_deg_, in_deg_;  // by stretch
};

}  // namespace loopwright::road
