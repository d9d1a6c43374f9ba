// The places to pull up that the area has along a loop, and when the loop is at each.
//
// Rules: the drive's parts and times hold. The near kerb as driven; one stops at the middle.
#pragma once

#include <vector>

#include "proof/checks.hpp"

namespace loopwright::proof {

struct Kerb {
  std::size_t row = 0;
  const road::PullUp* place = nullptr;
  double at_m = 0;    ///< of the stretch, from where it is entered
  Taken taken;        ///< driving to there, and the stops before it
  int claimed = -1;   ///< row of the loop's pull_ups that is here; -1: none
  double stay_s = 0;  ///< how long the loop plans to stop here
};

class Kerbs {
 public:
  explicit Kerbs(const Drive& drive);
  /// In driving order.
  [[nodiscard]] const std::vector<Kerb>& all() const { return kerbs_; }
  /// The kerb of a claim; null when the area has no such place on the part that is driven.
  [[nodiscard]] const Kerb* of(std::size_t claim) const;
  [[nodiscard]] bool usable(const Kerb& kerb, double stay_s) const;
  /// Likely seconds to it since the start, stops counted.
  [[nodiscard]] static double there_s(const Kerb& kerb);
  /// … to the beginning of a row; for the number of rows to the end.
  [[nodiscard]] double row_s(std::size_t row) const;
  /// Likely driving from a kerb to the beginning of a row.
  [[nodiscard]] double driving_s(const Kerb& kerb, std::size_t row) const;

 private:
  const Drive& drive_;
  std::vector<Taken> before_;
  std::vector<Kerb> kerbs_;
};

}  // namespace loopwright::proof
