// Houses are kept by cells of about 100 m, so that looking for those beside a road costs no more on
// a larger map. Of a house drawn as a building, the middle counts. Numbers less than 3 m apart along
// a road (ours) are flats of one house.
#include "houses.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <tuple>

namespace loopwright::mark {
namespace {

// A cell is 0.001 degree high (111 m) and 0.002 wide.
constexpr std::int64_t cell_height_e7 = 10'000, cell_width_e7 = 20'000, columns = 1 << 20;
constexpr double one_house_m = 3;
constexpr double least_metres_a_degree = 110'574;  // of latitude, at the equator (WGS 84)

struct Cell {
  std::int64_t row = 0, column = 0;
  [[nodiscard]] std::int64_t key() const { return row * columns + column; }
};

std::int64_t floored(std::int64_t value, std::int64_t by) {
  return value >= 0 ? value / by : -((by - 1 - value) / by);
}

Cell cell_of(Point at) {
  return {floored(at.lat_e7, cell_height_e7), floored(at.lon_e7, cell_width_e7)};
}

/// What lies between two corners, in 1e-7 degree.
struct Box {
  Point low, high;
  [[nodiscard]] bool holds(Point at) const {
    return at.lat_e7 >= low.lat_e7 && at.lat_e7 <= high.lat_e7 && at.lon_e7 >= low.lon_e7 &&
           at.lon_e7 <= high.lon_e7;
  }
};

Box box_round(std::span<const Point> line, double within_m) {
  const double lat_degrees = within_m / least_metres_a_degree;
  const double lon_degrees =
      lat_degrees / std::max(0.01, std::cos(line.front().lat() * std::numbers::pi / 180));
  const auto lat_e7 = static_cast<std::int32_t>(lat_degrees * 1e7);
  const auto lon_e7 = static_cast<std::int32_t>(lon_degrees * 1e7);
  Box box{line.front(), line.front()};
  for (const Point at : line) {
    box.low = {std::min(box.low.lat_e7, at.lat_e7), std::min(box.low.lon_e7, at.lon_e7)};
    box.high = {std::max(box.high.lat_e7, at.lat_e7), std::max(box.high.lon_e7, at.lon_e7)};
  }
  return {{box.low.lat_e7 - lat_e7, box.low.lon_e7 - lon_e7},
          {box.high.lat_e7 + lat_e7, box.high.lon_e7 + lon_e7}};
}

/// Which side of the line: the sign of an area, which is the same whatever a degree measures.
bool lies_left(std::span<const Point> line, const Foot& foot, Point house) {
  const Point from = point_along(line, foot.along_m - 1), to = point_along(line, foot.along_m + 1);
  const auto lat = [&](Point p) { return std::int64_t{p.lat_e7} - from.lat_e7; };
  const auto lon = [&](Point p) { return std::int64_t{p.lon_e7} - from.lon_e7; };
  return lon(to) * lat(house) - lat(to) * lon(house) > 0;
}

}  // namespace

Houses::Houses(const RawMap& raw) {
  for (const RawFeature& feature : raw.features) {
    const bool numbered =
        feature.tags.has("addr:housenumber") || feature.tags.has("addr:housename");
    if (numbered) houses_.push_back({cell_of(feature.at).key(), &feature});
  }
  std::ranges::stable_sort(houses_, {}, &House::cell);
}

std::vector<HouseBeside> Houses::beside(std::span<const Point> line, Near near) const {
  std::vector<const RawFeature*> in_box;
  const Box box = box_round(line, near.within_m);
  const Cell low = cell_of(box.low), high = cell_of(box.high);
  for (std::int64_t row = low.row; row <= high.row; ++row) {
    const auto first =
        std::ranges::lower_bound(houses_, Cell{row, low.column}.key(), {}, &House::cell);
    const auto end =
        std::ranges::upper_bound(houses_, Cell{row, high.column}.key(), {}, &House::cell);
    for (auto house = first; house < end; ++house) {
      if (box.holds(house->feature->at)) in_box.push_back(house->feature);
    }
  }
  if (static_cast<double>(in_box.size()) < near.at_least) return {};
  std::vector<HouseBeside> found;
  for (const RawFeature* house : in_box) {
    const std::string_view street = house->tags.get("addr:street");
    if (!near.street.empty() && !street.empty() && street != near.street) continue;
    const Foot foot = nearest_on_line(line, house->at);
    if (foot.off_m > near.within_m) continue;
    found.push_back({foot.along_m, lies_left(line, foot, house->at)});
  }
  std::ranges::sort(found, {}, [](const HouseBeside& h) { return std::tuple(h.left, h.along_m); });
  const auto one_house = [](const HouseBeside& a, const HouseBeside& b) {
    return a.left == b.left && std::abs(a.along_m - b.along_m) < one_house_m;
  };
  found.erase(std::unique(found.begin(), found.end(), one_house), found.end());
  return found;
}

}  // namespace loopwright::mark
