// Road is summed by cells of some 200 m, each piece where its middle is; asked for are the cells
// round the one that holds the middle of a piece.
#include "road_density.hpp"

#include <cmath>
#include <numbers>

namespace loopwright::mark {
namespace {

constexpr double cell_lat_degrees = 0.002, cell_lon_degrees = 0.003;
constexpr std::int64_t columns = 1 << 20;
constexpr double metres_a_degree = 111'320;  // of latitude, and of longitude at the equator

struct Cell {
  std::int64_t row = 0, column = 0;
  [[nodiscard]] std::int64_t key() const { return row * columns + column; }
};

Cell cell_of(Point at) {
  return {static_cast<std::int64_t>(std::floor(at.lat() / cell_lat_degrees)),
          static_cast<std::int64_t>(std::floor(at.lon() / cell_lon_degrees))};
}

Point middle_of(const road::Roads& roads, PieceId piece) {
  const auto shape = roads.shape_of(piece);
  return shape[shape.size() / 2];
}

double area_km2(Point at, std::int64_t reach) {
  const auto across = static_cast<double>(2 * reach + 1);
  const double high = across * cell_lat_degrees * metres_a_degree;
  const double wide =
      across * cell_lon_degrees * metres_a_degree * std::cos(at.lat() * std::numbers::pi / 180);
  return high * wide / 1e6;
}

}  // namespace

RoadDensity::RoadDensity(const road::Roads& roads, int reach, const Counts& counts)
    : roads_(&roads), reach_(reach) {
  for (std::size_t p = 0; p < roads.pieces.size(); ++p) {
    if (!counts(PieceId{p})) continue;
    metres_by_cell_[cell_of(middle_of(roads, PieceId{p})).key()] += roads.pieces[p].length_m;
  }
}

double RoadDensity::m_per_km2(PieceId piece) const {
  const Point at = middle_of(*roads_, piece);
  const Cell middle = cell_of(at);
  double metres = 0;
  for (std::int64_t row = middle.row - reach_; row <= middle.row + reach_; ++row) {
    for (std::int64_t column = middle.column - reach_; column <= middle.column + reach_; ++column) {
      const auto cell = metres_by_cell_.find(Cell{row, column}.key());
      if (cell != metres_by_cell_.end()) metres += cell->second;
    }
  }
  return metres / area_km2(at, reach_);
}

}  // namespace loopwright::mark
