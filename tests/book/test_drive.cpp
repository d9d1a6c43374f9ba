#include <catch2/catch.hpp>

#include "loopwright/book/drive.hpp"
#include "support/long_street.hpp"

namespace loopwright::book {
namespace {

using test::out_and_back;
using test::wish_at_door;
using Town = test::LongStreet;

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

TEST_CASE("a road along which signs lead is practised only where finding the way was asked for",
          "[book][drive]") {
  wish::Loop loop = out_and_back();
  const std::size_t before = passes_of(loop).size();
  wish::Pass pass;
  pass.kind = road::Kind::independent_stretch;
  pass.first = 1, pass.last = 2;
  loop.passes.push_back(pass);
  CHECK(passes_of(loop).size() == before);
  loop.independent.push_back({.first = 2, .last = 3, .follow = "Stavely", .directions = {}});
  CHECK(passes_of(loop).size() == before + 1);
  loop.independent.clear();
  loop.met.push_back({wish::read_want("independent-stretch=1"), 1});
  CHECK(passes_of(loop).size() == before + 1);
}

TEST_CASE("a pass keeps its kind, hardness and the place on the map", "[book][drive]") {
  CHECK(passes_of(out_and_back()).at(0) == LessonPass{{road::Kind::zebra}, 2, "node/5"});
}

}  // namespace
}  // namespace loopwright::book
