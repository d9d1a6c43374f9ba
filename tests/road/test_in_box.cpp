#include <algorithm>
#include <catch2/catch.hpp>

#include "loopwright/base/dice.hpp"
#include "loopwright/road/in_box.hpp"
#include "support/built_town.hpp"
#include "support/random_town.hpp"

namespace loopwright {
namespace {

/// Some point of it lies in the box.
bool has_point_in(std::span<const Point> shape, const road::Box& box) {
  return std::ranges::any_of(shape, [&](Point at) {
    return at.lat_e7 >= box.south_west.lat_e7 && at.lat_e7 <= box.north_east.lat_e7 &&
           at.lon_e7 >= box.south_west.lon_e7 && at.lon_e7 <= box.north_east.lon_e7;
  });
}

TEST_CASE("every road with a point in the box is found, each once", "[road]") {
  for (std::uint64_t seed = 1; seed <= 20; ++seed) {
    Dice dice(seed);
    const test::BuiltTown town =
        test::built_town(test::draw_town(test::random_town(dice), 300), "GB-ENG");
    const road::Roads roads = town.roads();
    for (int box_number = 0; box_number < 20; ++box_number) {
      const Point corner = roads.nodes[dice.below(roads.nodes.size())].at;
      const auto span = static_cast<std::int32_t>(1 + dice.below(200'000));
      const road::Box box{corner, {corner.lat_e7 + span, corner.lon_e7 + span}};
      const std::vector<PieceId> found = road::pieces_in(roads, box);
      CHECK(std::ranges::adjacent_find(found, std::greater_equal<>()) == found.end());
      for (std::size_t row = 0; row < roads.pieces.size(); ++row)
        if (has_point_in(roads.shape_of(PieceId{row}), box))
          CHECK(std::ranges::binary_search(found, PieceId{row}));
    }
  }
}

TEST_CASE("a box touches a run of cells for each row, from the south", "[road]") {
  const Point south_west = point_from_degrees(54.3001, 2.6001),
              north_east = point_from_degrees(54.3101, 2.6101);
  const auto runs = road::cell_runs({south_west, north_east});
  REQUIRE(runs.size() == 3);
  CHECK(runs.front().west == road::grid_cell(south_west));
  CHECK(runs.back().east == road::grid_cell(north_east));
  for (const road::CellRun& run : runs) CHECK(run.east - run.west == 2);
}

}  // namespace
}  // namespace loopwright
