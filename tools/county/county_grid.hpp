// Many counties side by side: squares of 17 km, the first in the south-west corner.
//
//   const CountyGrid grid(54.3, 2.6, 8);  const Plot plot = grid.plot(3);
//
// Rules: main roads leave a county at one point of each side, at the same place of the side for all,
// so that neighbours meet there. Rows and columns are steps of equal degrees; further north a square
// has fewer metres from west to east, and its roads are drawn in its own metres.
// Why: the plan's county isn't a square round its origin; the numbers are those of Quillham.
#pragma once

#include <array>
#include <cstdint>

#include "county/projection.hpp"
#include "county/write_map.hpp"

namespace loopwright::county {

/// One square of the grid. Spots are metres of its own plan.
struct Plot {
  std::int64_t number = 0;
  double origin_lat = 0;  ///< of its own plan: the middle of the square, but for the first
  double origin_lon = 0;
  double half_x_m = 0;  ///< from the middle to its sides
  double half_y_m = 0;
  std::array<Spot, 4> exits{};  ///< by Side
  CountyPlace place{};          ///< what the map file needs to know
};

class CountyGrid {
 public:
  /// Rules: count > 0; the origin is that of the plan of the first county.
  CountyGrid(double home_lat, double home_lon, std::int64_t count);
  [[nodiscard]] Plot plot(std::int64_t number) const;

 private:
  Projection home_;
  double home_lat_, home_lon_;
  std::int64_t columns_;
};

}  // namespace loopwright::county
