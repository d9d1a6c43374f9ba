// How two lines of a county come to share points.
//
//   const Spot place = add_point(road, foot.segment, foot.at);   // now a point of the road
//   for (const Spot shared : cross(road, other)) …
//
// Rules: a line keeps its shape but for a centimetre where a point is put in; where a point near by is
// taken instead, the other line bends to it.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "county/drawing.hpp"

namespace loopwright::county {

inline constexpr double join_m = 30;  ///< an end this near to a road is meant to meet it
inline constexpr double merge_m = 9;  ///< a join this near to a point that is there uses that point

/// Puts a place into a segment of a line, or takes the end of the segment that is nearer than
/// `merge`; returns which point of the line it is now. Rules: segment + 1 < points.size().
Spot add_point(Line& line, std::size_t segment, Spot place, double merge = merge_m);

/// Gives two lines a common point wherever they cross; returns these points. Rules: two lines.
std::vector<Spot> cross(Line& line, Line& other, double merge = merge_m);

/// Whether a point of the line is just there.
bool holds(const Line& line, Spot place);

/// The nearest of some lines to a place, with the foot on it; the earlier one when equal, nothing
/// when there are no lines. Rules: `among` are indices into county.lines.
struct Near {
  std::size_t line = 0;
  Foot foot;
};
std::optional<Near> nearest_of(const Drawing& county, std::span<const std::size_t> among,
                               Spot place);

/// Layer of a line by its tags; 0 when they name none.
int layer_of(const Tags& tags);

}  // namespace loopwright::county
