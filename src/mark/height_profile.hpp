// Heights along a piece of road, and a little beyond its ends, as an elevation grid has them.
//
//   const HeightProfile profile(draft, roads, piece);
//   profile.slope_percent(0, 300);   // mean rise along the way, over these metres of it
//
// Rules: private to mark. Metres along count from the piece's first node; before it negative. A
// piece on a bridge or in a tunnel has no heights, and a profile ends before one: the grid shows
// the ground.
#pragma once

#include <optional>
#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

/// Slopes are told over no less, and as a rule over so much, of road: an elevation grid's single
/// heights are off by some metres (height_profile.cpp says what that comes to).
inline constexpr double least_slope_m = 200, usual_slope_m = 300;

class HeightProfile {
 public:
  /// By the draft's heights; roads are its own.
  HeightProfile(const Draft& draft, const road::Roads& roads, PieceId piece);

  /// Rise in per cent of the line that fits the heights between best; empty when fewer than
  /// `least_m` of these metres, or too few heights, are known.
  [[nodiscard]] std::optional<double> slope_percent(double from_m, double to_m,
                                                    double least_m = least_slope_m) const;
  /// Length of the piece itself.
  [[nodiscard]] double length_m() const { return length_m_; }

 private:
  struct Sample {
    double along_m = 0, height_m = 0;
  };
  std::vector<Sample> samples_;
  double length_m_ = 0;
};

}  // namespace loopwright::mark
