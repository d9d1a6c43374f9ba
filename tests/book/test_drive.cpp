#include <catch2/catch.hpp>

#include "loopwright/book/drive.hpp"

namespace loopwright::book {
namespace {

constexpr double day = 54.3;

/// A street of three pieces, 700 m each, that leads away from the door; the middle one is no quiet street.
struct Town {
  Town() {
    for (int n = 0; n < 4; ++n) {
      const Point at =
          point_from_degrees(day, 2.6 + n * 0.01077);  // 700 m of longitude at 54.3 degrees
      road::Node node;
      node.osm_id = 10 - n;
      node.at = at;
      tables.nodes.push_back(node);
      tables.shape.push_back(at);
      if (n < 3) tables.shape.push_back(point_from_degrees(day, 2.6 + (n + 1) * 0.01077));
    }
    for (std::size_t n = 0; n < 3; ++n) {
      road::Piece piece;
      piece.way = 7;
      piece.a = NodeId{n};
      piece.b = NodeId{n + 1};
      piece.shape_first = static_cast<std::uint32_t>(2 * n);
      piece.shape_count = 2;
      piece.flags = n == 1 ? 0 : road::piece_flag::quiet;
      tables.pieces.push_back(piece);
      tables.stretches.resize(tables.stretches.size() + 2);
    }
  }
  road::Tables tables;
  [[nodiscard]] road::Roads roads() const { return road::view_of(tables, {}); }
};

/// Out along all three pieces and back again, a minute each.
wish::Loop out_and_back() {
  wish::Loop loop;
  for (std::size_t n = 0; n < 6; ++n) {
    wish::LoopStretch row;
    row.stretch = StretchId{PieceId{n < 3 ? n : 5 - n}, n >= 3};
    row.arrive_s.likely = 60.0 * static_cast<double>(n);
    loop.stretches.push_back(row);
  }
  loop.seconds.likely = 360;
  for (const std::size_t at : {1U, 4U}) {
    wish::Pass pass;
    pass.kind = road::Kind::zebra;
    pass.first = pass.last = at;
    pass.hardness = 2;
    pass.source = {5, ObjectType::node};
    loop.passes.push_back(pass);
  }
  return loop;
}

wish::Wish wish_at_door() {
  wish::Wish wish;
  wish.home = point_from_degrees(day, 2.6);
  return wish;
}

TEST_CASE("quiet streets of a drive are told with how often, and whether near the door",
          "[book][drive]") {
  const Town town;
  CHECK(streets_of(town.roads(), wish_at_door(), out_and_back()) ==
        std::vector<StreetDriven>{{7, 7, 8, 2, false}, {7, 9, 10, 2, true}});
}

TEST_CASE("what the instructor drives isn't the learner's", "[book][drive]") {
  const Town town;
  wish::Loop loop = out_and_back();
  loop.practice = {{2, 3}};
  CHECK(streets_of(town.roads(), wish_at_door(), loop) ==
        std::vector<StreetDriven>{{7, 7, 8, 2, false}});
  CHECK(passes_of(loop).empty());
  loop.practice = {{0, 3}};
  CHECK(passes_of(loop).size() == 1);
}

TEST_CASE("minutes add up by sort of road", "[book][drive]") {
  const Town town;
  const auto roads = roads_of(town.roads(), out_and_back());
  REQUIRE(roads.size() == 2);
  CHECK((roads[0].name == "quiet" && roads[0].minutes == 4));
  CHECK((roads[1].name == "town" && roads[1].minutes == 2));
}

TEST_CASE("minutes add up by speed limit, each unit for itself", "[book][drive]") {
  wish::Loop loop = out_and_back();
  for (std::size_t n = 0; n < 6; ++n)
    loop.stretches[n].limit = {n < 3 ? 30 : 20, n == 5 ? SpeedUnit::kmh : SpeedUnit::mph};
  CHECK(limits_of(loop) == std::vector<Plan::Limit>{{20, SpeedUnit::mph, 2},
                                                    {30, SpeedUnit::mph, 3},
                                                    {20, SpeedUnit::kmh, 1}});
  loop.practice = {{0, 2}};
  CHECK(limits_of(loop) == std::vector<Plan::Limit>{{30, SpeedUnit::mph, 3}});
}

TEST_CASE("a pass keeps its kind, hardness and the place on the map", "[book][drive]") {
  CHECK(passes_of(out_and_back()).at(0) == LessonPass{{road::Kind::zebra}, 2, "node/5"});
}

}  // namespace
}  // namespace loopwright::book
