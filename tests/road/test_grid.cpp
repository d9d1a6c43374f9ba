#include <algorithm>
#include <catch2/catch.hpp>
#include <random>

#include "loopwright/road/roads.hpp"
#include "support/small_area.hpp"

namespace loopwright::road {
namespace {

using Pieces = std::vector<PieceId>;

TEST_CASE("no road is near where there is none", "[road]") {
  const Tables empty;
  CHECK(pieces_near(view_of(empty, {}), point_from_degrees(54.3, 2.6), 1000).empty());
  const test::SmallArea area;
  CHECK(pieces_near(area.roads(), point_from_degrees(53.3, 2.6), 150).empty());
}

TEST_CASE("a grid cell is a two-hundredth of a degree each way", "[road]") {
  const std::uint64_t cell = grid_cell(point_from_degrees(54.3001, 2.6001));
  CHECK(grid_cell(point_from_degrees(54.3049999, 2.6049999)) == cell);
  CHECK(grid_cell(point_from_degrees(54.3050001, 2.6001)) != cell);
  CHECK(grid_cell(point_from_degrees(54.3001, 2.6050001)) != cell);
}

TEST_CASE("a road is listed in every cell it crosses, once", "[road]") {
  CHECK(grid_cells_of({}).empty());
  const std::vector<Point> line{point_from_degrees(54.3001, 2.6001),
                                point_from_degrees(54.3001, 2.6149),
                                point_from_degrees(54.3002, 2.6001)};
  const auto cells = grid_cells_of(line);
  REQUIRE(cells.size() == 3);
  CHECK(std::is_sorted(cells.begin(), cells.end()));
  CHECK(cells[1] == grid_cell(point_from_degrees(54.3001, 2.6051)));
}

TEST_CASE("every road within reach is found, whatever the place", "[road]") {
  const test::SmallArea area;
  const Roads roads = area.roads();
  std::mt19937 random(2);  // seeded: the same places every time
  std::uniform_real_distribution<double> lat(54.28, 54.32);
  std::uniform_real_distribution<double> lon(2.58, 2.62);
  std::uniform_real_distribution<double> reach(1, 900);
  int found = 0;
  for (int i = 0; i < 2000; ++i) {
    const Point at = point_from_degrees(lat(random), lon(random));
    const double radius_m = reach(random);
    const Pieces near = pieces_near(roads, at, radius_m);
    REQUIRE(std::is_sorted(near.begin(), near.end()));
    REQUIRE(std::adjacent_find(near.begin(), near.end()) == near.end());
    for (std::size_t piece = 0; piece < roads.pieces.size(); ++piece) {
      const PieceId id{piece};
      if (nearest_on_line(roads.shape_of(id), at).off_m > radius_m) continue;
      REQUIRE(std::binary_search(near.begin(), near.end(), id));
      ++found;
    }
  }
  CHECK(found > 1000);
}

TEST_CASE("a road across the date line is near from the other side", "[road]") {
  const std::vector<Point> line{point_from_degrees(-16.8, 179.9990),
                                point_from_degrees(-16.8, 179.9999)};
  Tables tables;
  tables.pieces.resize(1);
  tables.pieces[0].shape_count = 2;
  tables.shape = line;
  for (const auto cell : grid_cells_of(line)) tables.grid.push_back({cell, PieceId{0}, 0});
  const Roads roads = view_of(tables, {});
  CHECK(pieces_near(roads, point_from_degrees(-16.8, -179.9999), 100) == Pieces{PieceId{0}});
}

}  // namespace
}  // namespace loopwright::road
