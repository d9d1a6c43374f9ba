// 1. Inside: bands of latitudes, about as many as there are edges, each with the edges that touch it, so that a point is
//    asked of few. An edge counts for latitudes from its lower end on, its upper end left out, so that a point level
//    with a corner is counted once. High edges touch many bands: there are fewer then.
// 2. Seen: the earth is laid out in cells somewhat larger than what is seen beyond the outline; along each edge, a
//    sixteenth of a cell at a time, the cell and its eight neighbours are noted.
#include "loopwright/read/outline.hpp"

#include <algorithm>
#include <cmath>

#include "loopwright/base/error.hpp"

namespace loopwright::read {
namespace {

constexpr std::int32_t cell_lat_e7 = 200'000;  // 0.02 degrees: 2211 m at least (WGS 84)
constexpr double steps_a_cell = 16;  // 2000 m and a half step of 70 m stay within a neighbour
constexpr std::int64_t half_round_e7 = 1'800'000'000;

/// How far a degree of longitude shrinks at most, as whole units of a cell. Polewards of 85 degrees it isn't followed.
std::int32_t cell_lon_at(std::int32_t farthest_lat_e7) {
  constexpr double farthest = 85 * 1e7, radians = 1e-7 * 3.14159265358979323846 / 180;
  return static_cast<std::int32_t>(
      std::ceil(cell_lat_e7 / std::cos(std::min<double>(farthest_lat_e7, farthest) * radians)));
}

/// Whether the line from the point to the east crosses the edge. Products are below 2^63.
bool crosses(Point at, Point a, Point b) {
  if ((a.lat_e7 > at.lat_e7) == (b.lat_e7 > at.lat_e7)) return false;
  if (a.lat_e7 > b.lat_e7) std::swap(a, b);
  const std::int64_t up = std::int64_t{b.lat_e7} - a.lat_e7;
  const std::int64_t east = std::int64_t{b.lon_e7} - a.lon_e7;
  return (std::int64_t{at.lon_e7} - a.lon_e7) * up < east * (std::int64_t{at.lat_e7} - a.lat_e7);
}

void check(const std::vector<Ring>& rings) {
  if (std::ranges::find(rings, Ring::Role::area, &Ring::role) == rings.end())
    throw InputError("an outline has one ring at least");
  for (const Ring& ring : rings) {
    const auto [west, east] = std::ranges::minmax(ring.points, {}, &Point::lon_e7);
    if (std::int64_t{east.lon_e7} - west.lon_e7 >= half_round_e7)
      throw InputError("an outline reaches half round the earth; give one that is smaller");
  }
}

}  // namespace

Outline::Outline(const std::vector<Ring>& rings) : south_e7_(INT32_MAX), north_e7_(INT32_MIN) {
  check(rings);
  std::vector<Edge> edges;
  for (const Ring& ring : rings) {
    const auto number = static_cast<std::uint32_t>(hole_.size());
    hole_.push_back(ring.role == Ring::Role::hole);
    const std::vector<Point>& line = ring.points;
    for (std::size_t k = 0; k < line.size(); ++k) {
      south_e7_ = std::min(south_e7_, line[k].lat_e7);
      north_e7_ = std::max(north_e7_, line[k].lat_e7);
      edges.push_back({line[k], line[(k + 1) % line.size()], number});
    }
  }
  cell_lon_e7_ = cell_lon_at(std::max(std::abs(south_e7_), std::abs(north_e7_)));
  lay_out_bands(edges);
  for (const Edge& edge : edges) see_along(edge);
  std::ranges::sort(cells_);
  cells_.erase(std::unique(cells_.begin(), cells_.end()), cells_.end());
}

std::size_t Outline::band_of(std::int32_t lat_e7) const {
  return static_cast<std::size_t>((std::int64_t{lat_e7} - south_e7_) / band_e7_);
}

/// Step 1.
void Outline::lay_out_bands(const std::vector<Edge>& edges) {
  constexpr std::int64_t most_bands = 1 << 16,
                         most_each = 4;  // bands that an edge touches, on average
  const std::int64_t height = std::int64_t{north_e7_} - south_e7_ + 1;
  std::int64_t heights = 0;
  for (const Edge& edge : edges) heights += std::abs(std::int64_t{edge.b.lat_e7} - edge.a.lat_e7);
  const auto count = static_cast<std::int64_t>(edges.size());
  const std::int64_t bands = std::min(most_bands, count);
  band_e7_ = std::max({height / bands + 1, heights / (most_each * count), std::int64_t{1}});
  std::vector<std::vector<Edge>> rows(band_of(north_e7_) + 1);
  for (const Edge& edge : edges) {
    const auto [low, high] = std::minmax({band_of(edge.a.lat_e7), band_of(edge.b.lat_e7)});
    for (std::size_t band = low; band <= high; ++band) rows[band].push_back(edge);
  }
  for (const std::vector<Edge>& row : rows) {
    first_.push_back(static_cast<std::uint32_t>(edges_.size()));
    edges_.insert(edges_.end(), row.begin(), row.end());
  }
  first_.push_back(static_cast<std::uint32_t>(edges_.size()));
}

std::int64_t Outline::row_of(std::int32_t lat_e7) const {
  const std::int64_t north = std::int64_t{lat_e7} - south_e7_;
  return north < 0 ? -1 - (-north - 1) / cell_lat_e7 : north / cell_lat_e7;
}

std::uint64_t Outline::cell_of(Point at) const {
  const auto row = static_cast<std::uint32_t>(row_of(at.lat_e7));
  const std::int64_t from_west = std::int64_t{at.lon_e7} + half_round_e7;
  return std::uint64_t{row} << 32U | static_cast<std::uint32_t>(from_west / cell_lon_e7_);
}

/// Step 2.
void Outline::see_along(const Edge& edge) {
  const double lat = edge.b.lat_e7 - double{0} - edge.a.lat_e7;
  const double lon = edge.b.lon_e7 - double{0} - edge.a.lon_e7;
  const double cells = std::max(std::abs(lat) / cell_lat_e7, std::abs(lon) / cell_lon_e7_);
  const auto steps = std::max(1LL, std::llround(std::ceil(steps_a_cell * cells)));
  for (long long k = 0; k <= steps; ++k) {
    const double part = static_cast<double>(k) / static_cast<double>(steps);
    see_around({static_cast<std::int32_t>(edge.a.lat_e7 + part * lat),
                static_cast<std::int32_t>(edge.a.lon_e7 + part * lon)});
  }
}

void Outline::see_around(Point at) {
  const std::uint64_t cell = cell_of(at);
  for (const std::int64_t row : {-1, 0, 1})
    for (const std::int64_t column : {-1, 0, 1}) {
      const auto there = static_cast<std::uint32_t>(static_cast<std::int64_t>(cell >> 32U) + row);
      const auto next =
          std::uint64_t{there} << 32U |
          static_cast<std::uint32_t>(static_cast<std::int64_t>(cell & UINT32_MAX) + column);
      if (cells_.empty() || cells_.back() != next) cells_.push_back(next);
    }
}

bool Outline::contains(Point at) const {
  if (at.lat_e7 < south_e7_ || at.lat_e7 > north_e7_) return false;
  const std::size_t band = band_of(at.lat_e7);
  int areas = 0;  // that it is in, less the holes
  for (std::uint32_t next = first_[band]; next < first_[band + 1];) {
    const std::uint32_t ring = edges_[next].ring;
    bool in_ring = false;
    for (; next < first_[band + 1] && edges_[next].ring == ring; ++next)
      in_ring ^= crosses(at, edges_[next].a, edges_[next].b);
    if (in_ring) areas += hole_[ring] ? -1 : 1;
  }
  return areas > 0;
}

bool Outline::sees(Point at) const {
  return contains(at) || std::ranges::binary_search(cells_, cell_of(at));
}

}  // namespace loopwright::read
