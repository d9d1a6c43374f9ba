// Method: columns are sorted, so look-ups are binary searches for a run of equal keys. The grid has
// one entry for each piece in each cell its shape may touch; a search looks at the cells within
// reach of its point. Bearings are taken over the first 15 m, which no wobble of a kerb line
// spoils, nor a drive that joins two metres from the corner.
#include "loopwright/road/roads.hpp"
#include "loopwright/base/equal_rows.hpp"
#include "loopwright/base/in_parts.hpp"
#include "loopwright/base/point_between.hpp"
#include "loopwright/road/bearings.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

#include "road/grid.hpp"

namespace loopwright::road {
namespace {

constexpr double bearing_reach_m = 15;

constexpr std::int64_t cell_columns = 3'600'000'000 / cell_e7;  // round the earth
constexpr std::int64_t cell_rows = 1'800'000'000 / cell_e7 + 1;

std::int64_t row_of(std::int64_t lat_e7) {
  return (lat_e7 + 900'000'000) / cell_e7;
}
std::int64_t column_of(std::int64_t lon_e7) {
  return (lon_e7 + 1'800'000'000) / cell_e7 % cell_columns;
}
std::uint64_t cell_at(std::int64_t row, std::int64_t column) {
  return static_cast<std::uint64_t>(row * cell_columns + column);
}

void sort_and_drop_repeats(auto& values) {
  std::sort(values.begin(), values.end());
  values.erase(std::unique(values.begin(), values.end()), values.end());
}

/// The run of rows whose key equals `key`; the rows are ordered by it.
template <class Row, class Key, class KeyOf>
std::span<const Row> rows_with(std::span<const Row> rows, const Key& key, KeyOf key_of) {
  return equal_rows(rows, key, key_of);
}

/// Half of a window, in 1e-7 degree.
struct Reach {
  std::int64_t lat_e7 = 0, lon_e7 = 0;
};

/// True when the box round a shape touches the window round a point.
bool box_comes_near(std::span<const Point> shape, Point at, const Reach& reach) {
  constexpr std::int64_t turn_e7 = 3'600'000'000;
  std::int64_t south = turn_e7, north = -turn_e7, west = turn_e7, east = -turn_e7;
  for (const Point point : shape) {
    const std::int64_t lat = std::int64_t{point.lat_e7} - at.lat_e7;
    std::int64_t lon = std::int64_t{point.lon_e7} - at.lon_e7;
    if (lon > turn_e7 / 2) lon -= turn_e7;
    if (lon < -turn_e7 / 2) lon += turn_e7;
    south = std::min(south, lat), north = std::max(north, lat);
    west = std::min(west, lon), east = std::max(east, lon);
  }
  return south <= reach.lat_e7 && north >= -reach.lat_e7 && west <= reach.lon_e7 &&
         east >= -reach.lon_e7;
}

/// From one longitude to another, the second no smaller; east of 180 degrees where it goes over that meridian.
struct Longitudes {
  std::int64_t west = 0, east = 0;
};

void add_cells_of_row(std::int64_t row, const Longitudes& part, std::vector<std::uint64_t>& cells) {
  const auto column_before_wrap = [](std::int64_t lon_e7) {
    return (lon_e7 + 1'800'000'000 + 3'600'000'000) / cell_e7;
  };
  const std::int64_t last = column_before_wrap(part.east);
  for (std::int64_t column = column_before_wrap(part.west); column <= last; ++column) {
    const std::uint64_t cell = cell_at(row, column % cell_columns);
    if (cells.empty() || cells.back() != cell) cells.push_back(cell);
  }
}

/// Where a line lies that passes a row of cells, with a cell more on both sides for what is rounded.
Longitudes part_in_row(Point a, Point b, std::int64_t row) {
  const double up = static_cast<double>(std::int64_t{b.lat_e7} - a.lat_e7);
  const auto east = static_cast<double>(lon_difference_e7(a, b));
  const auto lon_at = [&](std::int64_t lat_e7) {
    const double share = static_cast<double>(lat_e7 - a.lat_e7) / up;
    return a.lon_e7 + std::llround(east * std::clamp(share, 0.0, 1.0));
  };
  const std::int64_t south = row * cell_e7 - 900'000'000;
  const auto [first, last] = std::minmax({lon_at(south), lon_at(south + cell_e7)});
  return {first - cell_e7, last + cell_e7};
}

/// All cells of the box round a leg between two points of a shape; of a long one, whose box may be half an ocean, those about it.
void add_cells_of_leg(Point a, Point b, std::vector<std::uint64_t>& cells) {
  constexpr std::int64_t long_e7 = 8 * cell_e7;
  const auto [south, north] = std::minmax(a.lat_e7, b.lat_e7);
  const auto [west, east] =
      std::minmax({std::int64_t{a.lon_e7}, a.lon_e7 + lon_difference_e7(a, b)});
  const std::int64_t last_row = row_of(north);
  const bool is_long = std::int64_t{north} - south > long_e7 && east - west > long_e7;
  for (std::int64_t row = row_of(south); row <= last_row; ++row)
    add_cells_of_row(row, is_long ? part_in_row(a, b, row) : Longitudes{west, east}, cells);
}

enum class End { first, last };

/// The point so many metres inside a shape, from one of its ends.
Point inside(std::span<const Point> shape, End end, double metres) {
  const auto at = [&](std::size_t i) {
    return end == End::first ? shape[i] : shape[shape.size() - 1 - i];
  };
  if (metres <= 0) return at(0);
  for (std::size_t i = 1; i < shape.size(); ++i) {
    const double segment_m = distance_m(at(i - 1), at(i));
    if (metres < segment_m) return point_between(at(i - 1), at(i), metres / segment_m);
    metres -= segment_m;
  }
  return at(shape.size() - 1);
}

/// The point so many metres along a stretch.
Point point_on(const Roads& roads, StretchId stretch, double metres) {
  return inside(roads.shape_of(stretch.piece()), stretch.against() ? End::last : End::first,
                metres);
}

Point start_of(const Roads& roads, StretchId stretch) {
  return point_on(roads, stretch, 0);
}

/// How a road goes on beyond the end of a stretch where no other joins, but drives and service roads beside a bigger one;
/// none elsewhere: at a corner it may turn.
StretchId beyond_drives(const Roads& roads, StretchId stretch) {
  const auto is_service = [&](StretchId s) {
    return roads.piece(s).road_class == RoadClass::service;
  };
  StretchId next;
  for (const StretchId s : roads.leaving(roads.to_node(stretch))) {
    if (s == stretch.back() || (is_service(s) && !is_service(stretch))) continue;
    if (next.known()) return {};
    next = s;
  }
  return next;
}

/// Where a road is clear of the node it leaves.
Point clear_of(const Roads& roads, StretchId leaving) {
  double left_m = bearing_reach_m;
  // A map has no road of so many pieces in so few metres.
  constexpr int most_pieces = 15;
  for (int pieces = 1;; ++pieces) {
    const double length_m = roads.piece(leaving).length_m;
    const StretchId next =
        length_m < left_m && pieces < most_pieces ? beyond_drives(roads, leaving) : StretchId{};
    if (!next.known()) return point_on(roads, leaving, left_m);
    left_m -= length_m, leaving = next;
  }
}

}  // namespace

LimitLaw law_of(const AreaInfo& info) {
  const auto written = read_time(info.map_timestamp);
  return {info.region, written ? std::optional(written->civil.date) : std::nullopt};
}

std::span<const Chance> Roads::chances_from(StretchId entry) const {
  return rows_with(chances, entry, &Chance::entry);
}

std::span<const RunFact> Roads::run_facts_of(StretchId s) const {
  return rows_with(run_facts, s, &RunFact::stretch);
}

std::span<const BusLane> Roads::bus_lanes_of(PieceId p) const {
  return rows_with(bus_lanes, p, &BusLane::piece);
}

std::span<const TimedRule> Roads::timed_rules_of(StretchId s) const {
  return rows_with(timed_rules, s, &TimedRule::stretch);
}

std::span<const PullUp> Roads::pull_ups_of(StretchId s) const {
  return rows_with(pull_ups, s, &PullUp::stretch);
}

std::span<const KerbBan> Roads::kerb_bans_of(StretchId s) const {
  return rows_with(kerb_bans, s, &KerbBan::stretch);
}

std::span<const SignedTo> Roads::signs_of(StretchId s) const {
  return rows_with(signs, s, &SignedTo::stretch);
}

std::span<const LaneMarks> Roads::lane_marks_of(StretchId s) const {
  return rows_with(lane_marks, s, &LaneMarks::stretch);
}

std::span<const Landmark> Roads::landmarks_in(std::uint64_t cell) const {
  return rows_with(landmarks, cell, &Landmark::cell);
}

Roads view_of(const Tables& t, AreaInfo info) {
  Columns<View> v;
  v.nodes = t.nodes, v.pieces = t.pieces, v.stretches = t.stretches, v.shape = t.shape;
  v.node_first = t.node_first, v.node_out = t.node_out, v.copies = t.copies;
  v.turn_first = t.turn_first, v.turns = t.turns, v.places = t.places, v.arms = t.arms;
  v.chances = t.chances, v.chance_path = t.chance_path, v.run_facts = t.run_facts;
  v.place_node_first = t.place_node_first, v.place_nodes = t.place_nodes;
  v.place_piece_first = t.place_piece_first, v.place_pieces = t.place_pieces;
  v.turn_rules = t.turn_rules, v.rule_path = t.rule_path, v.timed_rules = t.timed_rules;
  v.idle_rules = t.idle_rules;
  v.bus_lanes = t.bus_lanes, v.pull_ups = t.pull_ups, v.kerb_bans = t.kerb_bans;
  v.signs = t.signs, v.lane_marks = t.lane_marks, v.landmarks = t.landmarks;
  v.addresses = t.addresses, v.named_spots = t.named_spots, v.place_index = t.place_index;
  v.grid = t.grid, v.text_first = t.text_first, v.text_bytes = t.text_bytes;
  return {v, std::move(info)};
}

double bearing_out_deg(const Roads& roads, StretchId stretch) {
  return bearing_deg(start_of(roads, stretch), clear_of(roads, stretch));
}

double bearing_in_deg(const Roads& roads, StretchId stretch) {
  return bearing_deg(clear_of(roads, stretch.back()), start_of(roads, stretch.back()));
}

Bearings::Bearings(const Roads& roads)
    : out_deg_(roads.stretch_count()), in_deg_(roads.stretch_count()) {
  in_parts(roads.stretch_count(), [&](std::size_t first, std::size_t end) {
    for (std::size_t row = first; row < end; ++row) {
      const StretchId away{row};
      const Point node = start_of(roads, away), clear = clear_of(roads, away);
      out_deg_[row] = bearing_deg(node, clear);
      in_deg_[away.back().index()] = bearing_deg(clear, node);
    }
  });
}

std::uint64_t grid_cell(Point at) {
  return cell_at(row_of(at.lat_e7), column_of(at.lon_e7));
}

std::vector<std::uint64_t> grid_cells_of(std::span<const Point> shape) {
  std::vector<std::uint64_t> cells;
  for (std::size_t i = 0; i < shape.size(); ++i)
    add_cells_of_leg(shape[i == 0 ? 0 : i - 1], shape[i], cells);
  if (cells.size() < 2) return cells;  // most roads: all of it lies in one
  sort_and_drop_repeats(cells);
  return cells;
}

std::vector<PieceId> pieces_near(const Roads& roads, Point at, double radius_m) {
  // Least metres of a degree of latitude on the ellipsoid: 110,574 at the equator (WGS 84).
  const double lat_reach = radius_m / 110'574 * 1e7;
  const double lon_reach = lat_reach / std::max(0.01, std::cos(at.lat() * std::numbers::pi / 180));
  const std::int64_t lat_e7 = std::llround(lat_reach) + 1, lon_e7 = std::llround(lon_reach) + 1;
  const std::int64_t first_row = row_of(at.lat_e7 - lat_e7), last_row = row_of(at.lat_e7 + lat_e7);
  // Not yet wrapped round the earth: the window may reach over its back.
  const auto column_before_wrap = [](std::int64_t lon) {
    return (lon + 1'800'000'000 + 3'600'000'000) / cell_e7 - cell_columns;
  };
  const std::int64_t first_column = column_before_wrap(at.lon_e7 - lon_e7);
  const std::int64_t columns = std::min<std::int64_t>(
      column_before_wrap(at.lon_e7 + lon_e7) - first_column + 1, cell_columns);
  std::vector<PieceId> found;
  for (std::int64_t row = std::max<std::int64_t>(first_row, 0);
       row <= std::min<std::int64_t>(last_row, cell_rows - 1); ++row) {
    for (std::int64_t step = 0; step < columns; ++step) {
      const std::int64_t column = (first_column + step + 2 * cell_columns) % cell_columns;
      for (const GridEntry& entry : rows_with(roads.grid, cell_at(row, column), &GridEntry::cell)) {
        if (box_comes_near(roads.shape_of(entry.piece), at, {lat_e7, lon_e7})) {
          found.push_back(entry.piece);
        }
      }
    }
  }
  sort_and_drop_repeats(found);
  return found;
}

}  // namespace loopwright::road
