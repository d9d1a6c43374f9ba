#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include "loopwright/file/loop_file.hpp"
#include "support/built_town.hpp"

namespace loopwright {
namespace {

TEST_CASE("a report of nothing is a whole report", "[file]") {
  CHECK(file::write_report({}, {}) ==
        "{\n \"format\": \"loopwright-report\",\n \"version\": 1,\n \"counts\": {},\n"
        " \"found\": [],\n \"coverage\": [],\n \"oddities\": []\n}\n");
}

TEST_CASE("a build report lists counts, coverage and every oddity with its map object", "[file]") {
  road::Report report;
  report.count("roundabouts", 3);
  report.count("level crossings");
  report.cover("main roads", "a width", 1000, 250.4);
  report.odd({7, ObjectType::relation}, "turn restriction without a to", "type=restriction");
  CHECK(file::write_report({}, report) == R"json({
 "format": "loopwright-report",
 "version": 1,
 "counts": {
  "roundabouts": 3,
  "level crossings": 1
 },
 "found": [],
 "coverage": [
  {
   "streets": "main roads",
   "fact": "a width",
   "metres": 1000,
   "metres_told": 250
  }
 ],
 "oddities": [
  {
   "type": "relation",
   "id": 7,
   "what": "turn restriction without a to",
   "detail": "type=restriction"
  }
 ]
}
)json");
}

TEST_CASE("a build report names the object and the tag of everything found", "[file]") {
  const test::BuiltTown town = test::built_town(R"(
    A    z    B
  w1 AzB highway=tertiary
  nz     highway=crossing crossing=zebra
  )");
  const auto report = nlohmann::json::parse(file::write_report(town.roads(), town.report));
  const auto zebra = std::ranges::find_if(
      report["found"], [](const auto& found) { return found["kind"] == "zebra"; });
  REQUIRE(zebra != report["found"].end());
  CHECK((*zebra)["object"] == "node/126");
  CHECK((*zebra)["tag"] == "crossing=zebra");
  CHECK((*zebra)["confidence"] == "certain");
}

}  // namespace
}  // namespace loopwright
