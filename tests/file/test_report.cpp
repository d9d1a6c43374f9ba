#include <catch2/catch.hpp>

#include "loopwright/file/loop_file.hpp"

namespace loopwright {
namespace {

TEST_CASE("a report of nothing is a whole report", "[file]") {
  CHECK(file::write_report({}) ==
        "{\n \"format\": \"loopwright-report\",\n \"version\": 1,\n \"counts\": {},\n"
        " \"oddities\": []\n}\n");
}

TEST_CASE("a build report lists counts and every oddity with its map object", "[file]") {
  road::Report report;
  report.count("roundabouts", 3);
  report.count("level crossings");
  report.odd({7, ObjectType::relation}, "turn restriction without a to", "type=restriction");
  CHECK(file::write_report(report) == R"json({
 "format": "loopwright-report",
 "version": 1,
 "counts": {
  "roundabouts": 3,
  "level crossings": 1
 },
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

}  // namespace
}  // namespace loopwright
