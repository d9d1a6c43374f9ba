#include "page/tile_grid.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace loopwright::page {
namespace {

constexpr double pi = std::numbers::pi;
// Where the square map ends: atan(sinh(pi)), and one unit inside of 180 degrees.
constexpr double most_lat = 85.0511287, most_lon = 179.9999999;

double side_of(int zoom) {
  return std::ldexp(1.0, zoom);
}

}  // namespace

Spot spot_in(const TileAddress& tile, Point at) {
  const double lat = std::clamp(at.lat(), -most_lat, most_lat) * pi / 180;
  const double x = (at.lon() + 180) / 360;
  const double y = (1 - std::asinh(std::tan(lat)) / pi) / 2;
  return {(x * side_of(tile.zoom) - tile.column) * tile_extent,
          (y * side_of(tile.zoom) - tile.row) * tile_extent};
}

Point middle_of(const TileAddress& tile) {
  return box_of(tile, -tile_extent / 2.0).south_west;  // cut by half a side all round: a point
}

road::Box box_of(const TileAddress& tile, double margin) {
  const auto lon = [&](double column) {
    return std::clamp(column / side_of(tile.zoom) * 360 - 180, -most_lon, most_lon);
  };
  const auto lat = [&](double row) {
    return std::clamp(std::atan(std::sinh(pi * (1 - 2 * row / side_of(tile.zoom)))) * 180 / pi,
                      -most_lat, most_lat);
  };
  const double more = margin / tile_extent;
  return {point_from_degrees(lat(tile.row + 1 + more), lon(tile.column - more)),
          point_from_degrees(lat(tile.row - more), lon(tile.column + 1 + more))};
}

}  // namespace loopwright::page
