// From a file to columns in one go.
#include <catch2/catch.hpp>

#include "loopwright/base/point_between.hpp"
#include "loopwright/read/build.hpp"
#include "support/scratch_folder.hpp"

namespace loopwright::read {
namespace {

// A crossing with a ban, a roundabout of two ways, a level crossing and lights.
const std::vector<std::string> town = {
    "n1 v1 x2.600 y54.300",
    "n2 v1 x2.602 y54.300 Thighway=traffic_signals",
    "n3 v1 x2.604 y54.300",
    "n4 v1 x2.602 y54.302",
    "n5 v1 x2.606 y54.300",
    "n6 v1 x2.607 y54.301",
    "n7 v1 x2.608 y54.300",
    "n8 v1 x2.607 y54.299",
    "n9 v1 x2.612 y54.300",
    "n10 v1 x2.603 y54.300 Trailway=level_crossing",
    "n11 v1 x2.603 y54.298",
    "w20 v1 Thighway=primary,maxspeed=30%20%mph Nn1,n2",
    "w21 v1 Thighway=primary,maxspeed=40%20%mph Nn2,n10,n3,n5",
    "w22 v1 Thighway=residential,lanes=1 Nn2,n4",
    "w23 v1 Thighway=primary,junction=roundabout Nn5,n6,n7",
    "w24 v1 Thighway=primary,junction=roundabout Nn7,n8,n5",
    "w25 v1 Thighway=primary Nn7,n9",
    "w26 v1 Trailway=rail Nn10,n11",
    "r30 v1 Ttype=restriction,restriction=no_left_turn Mw20@from,n2@via,w22@to",
    "r31 v1 Ttype=route,route=bus Mw21@,w20@"};

struct FromText {
  Built built;
  road::Report report;
};

FromText build(const std::vector<std::string>& lines) {
  const test::ScratchFolder folder;
  std::string text;
  for (const std::string& line : lines) text += line + "\n";
  test::write_bytes(folder / "town.opl", text);
  FromText result;
  BuildOptions options;
  options.region = find_region("GB-WLS").value();
  result.built = build_area(folder / "town.opl", options, result.report, {});
  return result;
}

std::vector<std::string> bytes_of(const road::Tables& tables) {
  std::vector<std::string> all;
  road::for_each_column(tables, [&](const char* name, const auto& column) {
    const auto bytes = std::as_bytes(std::span(column));
    all.push_back(std::string(name) + ": " +
                  std::string(reinterpret_cast<const char*>(bytes.data()), bytes.size()));
  });
  return all;
}

}  // namespace

TEST_CASE("an extract becomes an area that knows its file, region and zone", "[read]") {
  const FromText made = build(town);
  CHECK(made.built.info.source_file == "town.opl");
  CHECK(made.built.info.region.code == "GB-WLS");
  CHECK(made.built.info.zone == "Europe/London");
  CHECK_FALSE(made.built.info.motorways);
  CHECK(made.report.counted("roads") == 6);
  CHECK(made.built.tables.turn_rules.size() == 1);
  CHECK(made.built.tables.places.size() > 2);
}

TEST_CASE("the order of objects in the file makes no difference to any column", "[read]") {
  const FromText forwards = build(town);
  std::vector<std::string> lines(town.rbegin(), town.rend());
  const FromText backwards = build(lines);
  CHECK(bytes_of(backwards.built.tables) == bytes_of(forwards.built.tables));
  std::rotate(lines.begin(), lines.begin() + 7, lines.end());
  const FromText mixed = build(lines);
  CHECK(bytes_of(mixed.built.tables) == bytes_of(forwards.built.tables));
  CHECK(mixed.report.counts() == forwards.report.counts());
}

TEST_CASE("an object listed twice changes nothing but its count", "[read]") {
  std::vector<std::string> lines = town;
  lines.push_back(town[12]);
  const FromText made = build(lines);
  CHECK(bytes_of(made.built.tables) == bytes_of(build(town).built.tables));
  CHECK(made.report.counted("objects left out: their id came before") == 1);
}

TEST_CASE("a point that was moved over land and sea costs no more than another", "[read]") {
  // One of the ends of a side road, and a corner of a school, are where no road of the town is.
  std::vector<std::string> lines = town;
  lines.insert(lines.end(), {"n900 x2.6001 y54.3001", "n901 x-60 y-20", "n902 x2.601 y54.3",
                             "n903 x2.602 y54.301", "w900 Thighway=service Nn1,n900,n901",
                             "w901 Tamenity=school Nn900,n902,n903,n901,n900",
                             "w902 Trailway=tram Nn902,n901,n903"});
  const FromText made = build(lines);
  CHECK(made.report.counted("roads") == 7);
  // Cells of 1/200 degree: some 15,000 rows and 12,500 columns between the two, three or four cells a row.
  CHECK(made.built.tables.grid.size() < 100'000);
  const auto roads = road::view_of(made.built.tables, made.built.info);
  const auto far = road::pieces_near(roads, point_from_degrees(-20, -60), 100);
  CHECK(far.size() == 1);
  // Halfway in latitude and longitude, as shapes are joined.
  const Point middle =
      point_between(point_from_degrees(54.3001, 2.6001), point_from_degrees(-20, -60), 0.5);
  CHECK(road::pieces_near(roads, middle, 100) == far);
}

TEST_CASE("points that lie upon each other don't lead a walk round and round", "[read]") {
  // A road to the north ends at a ring of two points at one place, and another at two ways between two such points.
  std::vector<std::string> lines = town;
  lines.insert(
      lines.end(),
      {"n900 x2.6 y54.3003", "n901 x2.6 y54.3003", "w900 Thighway=residential Nn1,n900",
       "w901 Thighway=residential Nn900,n901,n900", "n910 x2.6 y54.2997", "n911 x2.6 y54.2997",
       "w910 Thighway=residential Nn1,n910", "w911 Thighway=residential,bridge=yes Nn910,n911",
       "w912 Thighway=residential Nn911,n910"});
  CHECK(build(lines).report.counted("roads") == 11);
}

TEST_CASE("an extract of private roads alone is refused", "[read]") {
  CHECK_THROWS_WITH(
      build({"n1 x2.6 y54.3", "n2 x2.61 y54.3", "w1 Thighway=service,access=private Nn1,n2"}),
      Catch::EndsWith("town.opl: holds no road a learner may drive; choose another "
                      "extract"));
}

}  // namespace loopwright::read
