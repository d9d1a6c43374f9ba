// Heights between the points of elevation grids that lie beside and over each other.
//
// Rules: private to read. Grids are in degrees of WGS 84, their rows from north to south.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <vector>

#include "heights_module.hpp"
#include "loopwright/base/point.hpp"

namespace loopwright::read {

struct HeightGrid {
  GridShape shape;
  /// Heights of 2 columns and 2 rows from a cell on, row by row, NaN where there is none. Cells
  /// outside the grid are never asked for; a grid has at least 2 columns and 2 rows.
  std::function<std::array<float, 4>(int column, int row)> read_four;
};

class HeightGrids {
 public:
  void add(HeightGrid grid);
  /// Of the first grid that knows it.
  [[nodiscard]] std::optional<double> at(Point point) const;

 private:
  std::vector<HeightGrid> grids_;
  std::map<std::int64_t, std::vector<std::size_t>> by_degree_;  // grids that touch a square degree
};

}  // namespace loopwright::read
