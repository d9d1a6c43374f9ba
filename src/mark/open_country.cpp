// Road, drives and aisles left out, is summed by cells of some 200 m, each piece where its middle is.
// Open country has less than 6 km of it to the square kilometre, in the 5 by 5 cells round the
// middle of the piece. Lanes among fields have 1 to 5, docks and industrial estates 6 to 16, town
// centres 20 to 28 (seen in Newport; the limit is ours).
#include "open_country.hpp"

#include <cmath>
#include <numbers>

namespace loopwright::mark {
namespace {

constexpr double cell_lat_degrees = 0.002, cell_lon_degrees = 0.003;
constexpr std::int64_t reach = 2, columns = 1 << 20;
constexpr double metres_a_degree = 111'320;  // of latitude, and of longitude at the equator
constexpr double most_m_per_km2 = 6000;

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

double area_km2(Point at) {
  constexpr double across = 2 * reach + 1;
  const double high = across * cell_lat_degrees * metres_a_degree;
  const double wide =
      across * cell_lon_degrees * metres_a_degree * std::cos(at.lat() * std::numbers::pi / 180);
  return high * wide / 1e6;
}

}  // namespace

OpenCountry::OpenCountry(const road::Roads& roads) : roads_(&roads) {
  for (std::size_t p = 0; p < roads.pieces.size(); ++p) {
    metres_by_cell_[cell_of(middle_of(roads, PieceId{p})).key()] += roads.pieces[p].length_m;
  }
}

bool OpenCountry::holds(PieceId piece) const {
  const Point at = middle_of(*roads_, piece);
  const Cell middle = cell_of(at);
  double metres = 0;
  for (std::int64_t row = middle.row - reach; row <= middle.row + reach; ++row) {
    for (std::int64_t column = middle.column - reach; column <= middle.column + reach; ++column) {
      const auto cell = metres_by_cell_.find(Cell{row, column}.key());
      if (cell != metres_by_cell_.end()) metres += cell->second;
    }
  }
  return metres < most_m_per_km2 * area_km2(at);
}

}  // namespace loopwright::mark
