// Method:
// 1. A grid's cell has its height in its middle. Between the middles of four cells the height is
//    bilinear; beyond the outermost middles, up to the grid's edge, that of the edge holds.
// 2. A hole (NaN) in any of the four that has a share leaves the point unknown to that grid: filling
//    holes from their rim would make hills.
// 3. Grids are listed by the square degrees they touch, so that many of them cost no more.
#include "height_grids.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace loopwright::read {
namespace {

constexpr std::int64_t lon_degrees = 1000;  // more than there are
constexpr double tiny_share = 1e-9;

std::int64_t degree_of(std::int64_t lat, std::int64_t lon) {
  return lat * lon_degrees + lon;
}

std::int64_t whole(double degrees) {
  return static_cast<std::int64_t>(std::floor(degrees));
}

/// A place between cells: the cell before it and the share of the one after.
struct Between {
  int cell = 0;
  double share = 0;
};

std::optional<Between> between(double cells_from_edge, int count) {
  if (!(cells_from_edge >= 0) || cells_from_edge > count) return std::nullopt;
  const double from_middle = std::clamp(cells_from_edge - 0.5, 0.0, count - 1.0);
  const int cell = std::min(static_cast<int>(from_middle), count - 2);
  return Between{cell, from_middle - cell};
}

std::optional<double> height_in(const HeightGrid& grid, Point point) {
  const GridShape& shape = grid.shape;
  const auto column = between((point.lon() - shape.west) / shape.step_lon, shape.columns);
  const auto row = between((shape.north - point.lat()) / shape.step_lat, shape.rows);
  if (!column || !row) return std::nullopt;
  const std::array<float, 4> four = grid.read_four(column->cell, row->cell);
  const std::array<double, 4> shares{(1 - row->share) * (1 - column->share),
                                     (1 - row->share) * column->share,
                                     row->share * (1 - column->share), row->share * column->share};
  double height = 0;
  for (std::size_t i = 0; i < four.size(); ++i) {
    if (shares[i] < tiny_share) continue;
    if (std::isnan(four[i])) return std::nullopt;
    height += shares[i] * static_cast<double>(four[i]);
  }
  return height;
}

}  // namespace

void HeightGrids::add(HeightGrid grid) {
  const GridShape& shape = grid.shape;
  const double south = shape.north - shape.rows * shape.step_lat;
  const double east = shape.west + shape.columns * shape.step_lon;
  for (std::int64_t lat = whole(south); lat <= whole(shape.north); ++lat) {
    for (std::int64_t lon = whole(shape.west); lon <= whole(east); ++lon) {
      by_degree_[degree_of(lat, lon)].push_back(grids_.size());
    }
  }
  grids_.push_back(std::move(grid));
}

std::optional<double> HeightGrids::at(Point point) const {
  const auto found = by_degree_.find(degree_of(whole(point.lat()), whole(point.lon())));
  if (found == by_degree_.end()) return std::nullopt;
  for (const std::size_t grid : found->second) {
    if (const auto height = height_in(grids_[grid], point)) return height;
  }
  return std::nullopt;
}

}  // namespace loopwright::read
