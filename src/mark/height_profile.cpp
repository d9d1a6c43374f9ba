// Method:
// 1. The line of the piece is lengthened at both ends by up to 150 m of the road straight on
//    (road_line.cpp), but over no bridge and through no tunnel.
// 2. Every 30 m (the spacing of a one-second grid's heights) the source is asked.
// 3. A slope is that of the straight line which fits the heights best (least squares).
// Error: single heights of radar grids are wrong by 5 to 10 m, of which some 3 m differ from one to
// the next (from memory; the rest moves a whole hillside). Eleven heights over 300 m then leave the
// slope uncertain by 3 / sqrt(sum of squared distances) = 1 %, seven over 200 m by 2 %; single
// heights 100 m apart would be off by 4 %, and make hills on flat land. A hill shorter than that is
// told too flat, never too steep. More than 35 % is no road: a cliff beside it, or two grids that
// don't fit together; then nothing is known.
#include "height_profile.hpp"

#include <algorithm>
#include <cmath>

#include "road_line.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::piece_flag;

constexpr double height_every_m = 30, beyond_m = 150;
constexpr double least_share_known = 0.75, most_percent = 35;

bool off_the_ground(const road::Piece& piece) {
  return (piece.flags & (flag::bridge | flag::tunnel)) != 0;
}

}  // namespace

HeightProfile::HeightProfile(const Draft& draft, const road::Roads& roads, PieceId piece) {
  const road::Piece& row = roads.pieces[piece.index()];
  length_m_ = row.length_m;
  if (!draft.heights || off_the_ground(row)) return;
  const RoadLine line = road_line(draft, roads, piece, {beyond_m, flag::bridge | flag::tunnel});
  walk_evenly(line.points, height_every_m, [&](double along_m, Point at) {
    if (const auto height = draft.heights(at))
      samples_.push_back({along_m - line.before_m, *height});
  });
}

std::optional<double> HeightProfile::slope_percent(double from_m, double to_m,
                                                   double least_m) const {
  const auto first = std::ranges::lower_bound(samples_, from_m - 0.5, {}, &Sample::along_m);
  const auto end = std::ranges::upper_bound(samples_, to_m + 0.5, {}, &Sample::along_m);
  const auto count = static_cast<double>(end - first);
  if (count < 3) return std::nullopt;
  const double covered_m = std::prev(end)->along_m - first->along_m;
  if (covered_m < least_m - height_every_m) return std::nullopt;
  if (count < least_share_known * covered_m / height_every_m) return std::nullopt;
  double mean_along = 0, mean_height = 0;
  for (auto at = first; at != end; ++at) {
    mean_along += at->along_m / count, mean_height += at->height_m / count;
  }
  double with_height = 0, with_itself = 0;
  for (auto at = first; at != end; ++at) {
    const double off = at->along_m - mean_along;
    with_height += off * (at->height_m - mean_height), with_itself += off * off;
  }
  const double percent = 100 * with_height / with_itself;
  return std::abs(percent) <= most_percent ? std::optional(percent) : std::nullopt;
}

}  // namespace loopwright::mark
