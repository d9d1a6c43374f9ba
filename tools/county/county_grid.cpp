#include "county/county_grid.hpp"

#include <cmath>

namespace loopwright::county {
namespace {

// Metres of the plan of the first county, Quillham's.
constexpr double side_m = 17000;
constexpr double west_m = -8500;
constexpr double south_m = -6850;
constexpr double road_y_m = 900;   // where main roads leave it to the east and west
constexpr double road_x_m = 1150;  // and to the north and south

}  // namespace

CountyGrid::CountyGrid(double home_lat, double home_lon, std::int64_t count)
    : home_(home_lat, home_lon),
      home_lat_(home_lat),
      home_lon_(home_lon),
      columns_(std::llround(std::ceil(std::sqrt(static_cast<double>(count))))) {}

Plot CountyGrid::plot(std::int64_t number) const {
  const std::int64_t column = number % columns_;
  const std::int64_t row = number / columns_;
  // Degrees of a place that is so many metres east and north of the square's corner, as at home.
  const auto lon = [&](double x) {
    return home_.lon(west_m + static_cast<double>(column) * side_m + x);
  };
  const auto lat = [&](double y) {
    return home_.lat(south_m + static_cast<double>(row) * side_m + y);
  };
  Plot plot{.number = number,
            .origin_lat = number == 0 ? home_lat_ : lat(side_m / 2),
            .origin_lon = number == 0 ? home_lon_ : lon(side_m / 2)};
  const Projection own(plot.origin_lat, plot.origin_lon);
  plot.half_x_m = (own.x_m(lon(side_m)) - own.x_m(lon(0))) / 2;
  plot.half_y_m = (own.y_m(lat(side_m)) - own.y_m(lat(0))) / 2;
  const double y = own.y_m(lat(road_y_m - south_m));
  const double x = own.x_m(lon(road_x_m - west_m));
  plot.exits = {spot(own.x_m(lon(0)), y), spot(x, own.y_m(lat(0))), spot(own.x_m(lon(side_m)), y),
                spot(x, own.y_m(lat(side_m)))};
  plot.place.number = number;
  for (const Side side : {Side::west, Side::south, Side::east, Side::north})
    plot.place.borders[plot.exits[static_cast<std::size_t>(side)]] = side;
  if (column > 0) plot.place.beyond[Side::west] = number - 1;
  if (row > 0) plot.place.beyond[Side::south] = number - columns_;
  return plot;
}

}  // namespace loopwright::county
