// The drive of a loop as one line on a map's paper, corner to corner.
//
//   const Way way = way_of(roads, loop, frame, rings);   way.line[way.end_of(3)]
//
// Rules: points stand close (way_step) and each knows its stretch. Where the loop comes back against
// its own direction the line is moved to the side one drives on; through small rings it goes round
// them as they are drawn. Stretches that hold the door are no part of it.
#pragma once

#include <cstddef>
#include <vector>

#include "draw/lines.hpp"
#include "draw/rings.hpp"
#include "loopwright/draw/overview.hpp"

namespace loopwright::draw {

inline constexpr double way_step = 0.6;

struct Way {
  Line line;                           ///< at least one point
  std::vector<std::size_t> stretches;  ///< of each point; ascending
  std::vector<double> along;           ///< of each point, millimetres from the first

  /// The last point of a stretch; the first or last of the line for the door's own.
  [[nodiscard]] std::size_t end_of(std::size_t stretch) const;
  [[nodiscard]] double length() const { return along.back(); }
  [[nodiscard]] Spot spot_at(double length) const;
  /// Of length 1, in the driving direction.
  [[nodiscard]] Spot direction_at(double length) const;
  [[nodiscard]] std::size_t point_at(double length) const;
  [[nodiscard]] Line part(double from, double to) const;
};

Way way_of(const road::Roads& roads, const wish::Loop& loop, const MapFrame& frame,
           const std::vector<Ring>& rings);

}  // namespace loopwright::draw
