// Houses are kept by cells of about 100 m, so that looking for those beside a road costs no more on
// a larger map. Of a house drawn as a building, the middle counts. Numbers less than 3 m apart along
// a road (ours) are flats of one house.
#include "houses.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

namespace loopwright::mark {
namespace {

// A cell is 0.001 degree high (111 m) and 0.002 wide: at least 40 m up to 80 degrees of latitude.
constexpr std::int64_t cell_height_e7 = 10'000, cell_width_e7 = 20'000, columns = 1 << 20;
constexpr double one_house_m = 3;

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

/// Keys of the cells round the points of a line, and between them.
std::set<std::int64_t> cells_round(std::span<const Point> line) {
  std::set<std::int64_t> keys;
  const auto add_round = [&](Cell middle) {
    for (std::int64_t row = -1; row <= 1; ++row) {
      for (std::int64_t column = -1; column <= 1; ++column) {
        keys.insert(Cell{middle.row + row, middle.column + column}.key());
      }
    }
  };
  constexpr double every_m = 50;
  for (std::size_t i = 0; i < line.size(); ++i) {
    add_round(cell_of(line[i]));
    if (i + 1 == line.size()) break;
    const std::span<const Point> leg = line.subspan(i, 2);
    for (double at = every_m; at < distance_m(leg[0], leg[1]); at += every_m) {
      add_round(cell_of(point_along(leg, at)));
    }
  }
  return keys;
}

bool lies_left(std::span<const Point> line, const Foot& foot, Point house) {
  const double heading =
      bearing_deg(point_along(line, foot.along_m - 1), point_along(line, foot.along_m + 1));
  return heading_change_deg(heading, bearing_deg(foot.at, house)) < 0;
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
  std::vector<HouseBeside> found;
  for (const std::int64_t key : cells_round(line)) {
    for (const House& house : std::ranges::equal_range(houses_, key, {}, &House::cell)) {
      const std::string_view street = house.feature->tags.get("addr:street");
      if (!near.street.empty() && !street.empty() && street != near.street) continue;
      const Foot foot = nearest_on_line(line, house.feature->at);
      if (foot.off_m > near.within_m) continue;
      found.push_back({foot.along_m, lies_left(line, foot, house.feature->at)});
    }
  }
  std::ranges::sort(found, {}, [](const HouseBeside& h) { return std::tuple(h.left, h.along_m); });
  const auto rest = std::ranges::unique(found, [](const HouseBeside& a, const HouseBeside& b) {
    return a.left == b.left && std::abs(a.along_m - b.along_m) < one_house_m;
  });
  found.erase(rest.begin(), rest.end());
  return found;
}

}  // namespace loopwright::mark
