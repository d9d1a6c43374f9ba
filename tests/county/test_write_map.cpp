#include "county/write_map.hpp"

#include <catch2/catch.hpp>
#include <sstream>
#include <string>

#include "county/county_grid.hpp"
#include "county/draw.hpp"
#include "county/other_plan.hpp"
#include "loopwright/base/error.hpp"
#include "support/scratch_folder.hpp"

using namespace loopwright;
using namespace loopwright::county;

namespace {

Drawing drawn(const std::string& text) {
  return draw(read_plan(text, "x.plan"), 7);
}

std::string map_of(const Drawing& county) {
  const test::ScratchFolder folder;
  MapFile file(folder / "x.opl");
  file.add(county, {});
  file.finish();
  return test::read_bytes(folder / "x.opl");
}

int count(const std::string& text, const std::string& what) {
  int found = 0;
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1))
    ++found;
  return found;
}

}  // namespace

TEST_CASE("objects are numbered where no real map object lies, nodes first", "[county]") {
  const std::string map =
      map_of(drawn("origin 54.3 2.6\nroad A residential 0,0 90,0 first=closed last=closed\n"
                   "area 0,50 9,50 9,59 amenity=parking\nspot 5,5 shop=bakery\n"));
  CHECK(map.rfind("n9000000000001 v1", 0) == 0);
  CHECK(count(map, "x2.6 y54.3\n") == 1);
  CHECK(count(map,
              "\nw9100000000001 v1 dV t2026-11-12T09:00:00Z Thighway=residential,name=A "
              "Nn9000000000001,n9000000000002") == 1);
  CHECK(count(map, "Nn9000000000003,n9000000000004,n9000000000005,n9000000000003") == 1);
  CHECK(count(map, "n9000000000006 v1 dV t2026-11-12T09:00:00Z Tshop=bakery") == 1);
}

TEST_CASE("one plan and seed give the same bytes", "[county]") {
  const CountyGrid grid(54.3, 2.6, 4);
  const std::string text = other_plan(grid.plot(1), 5);
  CHECK(text == other_plan(grid.plot(1), 5));
  CHECK(text != other_plan(grid.plot(1), 6));
  const std::string plain = "road A residential 0,0 90,40 200,0 first=closed last=closed\n";
  CHECK(map_of(drawn(plain)) == map_of(drawn(plain)));
}

TEST_CASE("neighbours share the very point where their main roads meet", "[county]") {
  const CountyGrid grid(54.3, 2.6, 4);
  CHECK(grid.plot(0).exits[2] == spot(8500, 900));
  CHECK(grid.plot(0).exits[3] == spot(1150, 10150));
  const test::ScratchFolder folder;
  MapFile file(folder / "x.opl");
  for (const std::int64_t number : {0, 1, 2, 3}) {
    const Plot plot = grid.plot(number);
    Drawing county{.origin_lat = plot.origin_lat, .origin_lon = plot.origin_lon};
    const Spot middle = spot(0, 100);
    for (const Spot exit : plot.exits)
      county.lines.push_back({.points = {exit, middle}, .tags = {{"highway", "primary"}}});
    file.add(county, plot.place);
  }
  const Written written = file.finish();
  CHECK(written.joined == 4);
  CHECK(written.nodes == 4 * 5 - 4);
  const std::string map = test::read_bytes(folder / "x.opl");
  // The way west of county 1 begins at the point east of county 0.
  CHECK(count(map, "Nn9000009999992,n9000010000001") == 1);
  CHECK(count(map, "\nw9100030000001 ") == 1);
}

TEST_CASE("a side where the neighbour has no road is an end like others", "[county]") {
  const CountyGrid grid(54.3, 2.6, 2);
  const test::ScratchFolder folder;
  MapFile file(folder / "x.opl");
  const Plot plot = grid.plot(1);
  Drawing county{.origin_lat = plot.origin_lat, .origin_lon = plot.origin_lon};
  county.lines.push_back({.points = {plot.exits[0], spot(0, 0)}, .tags = {{"highway", "primary"}}});
  file.add(county, plot.place);
  CHECK(file.finish().joined == 0);
  CHECK(test::read_bytes(folder / "x.opl").rfind("n9000010000001 ", 0) == 0);
}

TEST_CASE("a map that can't be written leaves no file behind", "[county]") {
  const test::ScratchFolder folder;
  CHECK_THROWS_WITH(MapFile(folder / "x.osm"),
                    "a map is called FILE.osm.pbf or FILE.opl, not 'x.osm'");
  CHECK_THROWS_AS(MapFile(folder / "none" / "x.opl"), InputError);
  { MapFile given_up(folder / "x.opl"); }
  CHECK(std::filesystem::is_empty(folder.path()));
}

TEST_CASE("most plans made from seeds can be joined", "[county]") {
  const CountyGrid grid(54.3, 2.6, 9);
  int whole = 0;
  for (std::uint64_t seed = 0; seed < 20; ++seed) {
    std::string text;
    std::istringstream lines(other_plan(grid.plot(1 + static_cast<std::int64_t>(seed % 8)), seed));
    for (std::string line; std::getline(lines, line);) {
      const std::string command = line.substr(0, line.find(' '));
      if (command != "town" && command != "village" && command != "quarter" &&
          command != "infill" && command != "lanes")
        text += line + '\n';
    }
    if (drawn(text).troubles.empty()) ++whole;
  }
  CHECK(whole >= 8);
}
