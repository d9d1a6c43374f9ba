// A small county drawn, written, built and held against its own truth.
#include <catch2/catch.hpp>
#include <sstream>

#include "county/check.hpp"
#include "county/draw.hpp"
#include "county/write_map.hpp"
#include "loopwright/read/build.hpp"
#include "support/scratch_folder.hpp"

using namespace loopwright;
using namespace loopwright::county;
using road::Kind;

namespace {

const std::string village =
    "origin 54.3 2.6\n"
    "ring r 0,0 22 highway=primary lanes=1 maxspeed=\"40 mph\"\n"
    "road North primary @r^ 0,500 last=edge maxspeed=\"40 mph\"\n"
    "road East primary @r^ 600,0 last=edge maxspeed=\"40 mph\"\n"
    "road West primary @r^ -600,0 last=edge maxspeed=\"40 mph\"\n"
    "road Row residential 300,0 300,260 last=turning_circle maxspeed=\"20 mph\" maxspeed:type=sign "
    "width=4.5\n"
    "road Lane residential -300,0 -300,-300 last=turning_circle lit=yes\n"
    "at 450,0 highway=crossing crossing=zebra\n"
    "at -300,-150 traffic_calming=hump\n";

struct Built {
  read::Built map;
  Truth truth;
  [[nodiscard]] road::Roads roads() const { return road::view_of(map.tables, map.info); }
};

Built built() {
  const test::ScratchFolder folder;
  const Drawing county = draw(read_plan(village, "village.plan"), 1);
  REQUIRE(county.troubles.empty());
  MapFile file(folder / "village.opl");
  file.add(county, {});
  file.finish();
  road::Report report;
  read::BuildOptions options;
  options.region = *find_region("GB-ENG");
  return {read::build_area(folder / "village.opl", options, report, {}), truth_of(county)};
}

std::size_t missed(const Truth& truth, const Built& build, Kind kind) {
  Verdict verdict = check(truth, build.roads());
  return verdict.of(kind).missed;
}

}  // namespace

TEST_CASE("what a plan plants is found, and nothing else", "[county][truth]") {
  const Built build = built();
  Verdict verdict = check(build.truth, build.roads());
  std::ostringstream table;
  print(table, verdict, 9);
  INFO(table.str());
  CHECK(verdict.clean());
  for (const Kind kind :
       {Kind::roundabout, Kind::zebra, Kind::calming, Kind::emerge, Kind::narrow_mouth})
    CHECK(verdict.of(kind).found >= 1);
  CHECK(verdict.of(Kind::twenty_limit).found == 2);
}

TEST_CASE("what a build lacks is missed", "[county][truth]") {
  const Built build = built();
  Truth truth = build.truth;
  const Point nowhere = point_from_degrees(54.31, 2.61);
  truth.places.push_back({Duty::must, road::bit(Kind::zebra), nowhere, 25, ""});
  truth.runs.push_back(
      {Duty::must, road::bit(Kind::one_way), Course::along, "", truth.runs[0].way, 80});
  truth.runs.push_back(
      {Duty::must, road::bit(Kind::bus_lane), Course::along, "", truth.runs[0].way, 80});
  CHECK(missed(truth, build, Kind::zebra) == 1);
  CHECK(missed(truth, build, Kind::one_way) == 1);
  CHECK(missed(truth, build, Kind::bus_lane) == 1);
}

TEST_CASE("arms and movements that differ are missed", "[county][truth]") {
  const Built build = built();
  Truth truth = build.truth;
  for (TruePlace& row : truth.places) {
    if (row.duty == Duty::must && row.kinds == road::bit(Kind::roundabout)) row.says = "arms=5";
    if (row.duty == Duty::must && row.kinds == road::bit(Kind::emerge)) row.says = "moves=round";
  }
  CHECK(missed(truth, build, Kind::roundabout) == 1);
  CHECK(missed(truth, build, Kind::emerge) >= 1);
}

TEST_CASE("what no row has is false", "[county][truth]") {
  const Built build = built();
  Verdict verdict = check(Truth{}, build.roads());
  CHECK_FALSE(verdict.clean());
  CHECK(verdict.of(Kind::zebra).wrong == 1);
  CHECK(verdict.of(Kind::twenty_limit).wrong == 2);
  CHECK(verdict.of(Kind::roundabout).wrong == 1);
  std::ostringstream table;
  print(table, verdict, 1);
  CHECK(table.str().find("zebra: false at 54.3") != std::string::npos);
}
