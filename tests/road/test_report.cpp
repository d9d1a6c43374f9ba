#include <catch2/catch.hpp>

#include "loopwright/road/report.hpp"

namespace loopwright::road {
namespace {

TEST_CASE("a new report has counted nothing", "[road]") {
  const Report report;
  CHECK(report.counts().empty());
  CHECK(report.oddities().empty());
  CHECK(report.counted("roundabouts") == 0);
}

TEST_CASE("counts add up, in the order they first came", "[road]") {
  Report report;
  report.count("roads");
  report.count("bus lanes", 3);
  report.count("roads", 2);
  report.count("fords", 0);
  REQUIRE(report.counts().size() == 3);
  CHECK(report.counts()[0] == std::pair<std::string, std::int64_t>{"roads", 3});
  CHECK(report.counts()[1].first == "bus lanes");
  CHECK(report.counted("bus lanes") == 3);
  CHECK(report.counted("fords") == 0);
}

TEST_CASE("each oddity is kept with its map object", "[road]") {
  Report report;
  report.odd({7, ObjectType::way, {}}, "ring drawn the wrong way round", "w7");
  report.odd({8, ObjectType::node, {}}, "number without a unit");
  REQUIRE(report.oddities().size() == 2);
  CHECK(report.oddities()[0].object == OsmObject{7, ObjectType::way, {}});
  CHECK(report.oddities()[0].what == "ring drawn the wrong way round");
  CHECK(report.oddities()[0].detail == "w7");
  CHECK(report.oddities()[1].detail.empty());
}

TEST_CASE("coverage adds up by sort of street and fact", "[road]") {
  Report report;
  report.cover("main roads", "a width", 100, 0);
  report.cover("main roads", "street lamps", 100, 100);
  report.cover("main roads", "a width", 50, 50);
  REQUIRE(report.coverage().size() == 2);
  CHECK(report.coverage()[0].fact == "a width");
  CHECK(report.coverage()[0].all_m == 150);
  CHECK(report.coverage()[0].told_m == 50);
}

}  // namespace
}  // namespace loopwright::road
