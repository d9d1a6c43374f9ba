#include "county/draw.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

using namespace loopwright::county;

namespace {

Drawing drawn(const std::string& text) {
  return draw(read_plan(text, "x.plan"), 7);
}

const Line& named(const Drawing& county, const std::string& name) {
  for (const Line& line : county.lines)
    if (line.tags.contains("name") && line.tags.at("name") == name) return line;
  FAIL("no line " << name);
  return county.lines.front();
}

bool has(const Line& line, Spot place) {
  return std::find(line.points.begin(), line.points.end(), place) != line.points.end();
}

const std::string cross_roads =
    "road West residential -200,0 200,0 first=closed last=turning_circle\n"
    "road North residential 0,-200 0,200 first=edge last=closed\n";

}  // namespace

TEST_CASE("roads that cross on one layer share a point", "[county]") {
  const Drawing county = drawn(cross_roads);
  CHECK(county.troubles.empty());
  CHECK(has(county.lines[0], spot(0, 0)));
  CHECK(has(county.lines[1], spot(0, 0)));
  CHECK(county.node_tags.at(spot(200, 0)).at("highway") == "turning_circle");
  CHECK_FALSE(county.node_tags.contains(spot(-200, 0)));
}

TEST_CASE("a bridge shares no point with the road below", "[county]") {
  const Drawing county = drawn(
      "road Low residential -200,0 200,0 first=closed last=closed\n"
      "road High residential 0,-200 0,200 first=closed last=closed layer=1 bridge=yes\n");
  CHECK(county.lines[0].points.size() == 2);
  CHECK(county.lines[1].points.size() == 2);
}

TEST_CASE("an end near a road is moved onto it, with its sign six metres before", "[county]") {
  const Drawing county = drawn(
      "road Main primary -200,0 200,0 first=edge last=edge\n"
      "road Side residential 50,25 50,200 first=give_way last=closed\n");
  CHECK(named(county, "Side").points.front() == spot(50, 0));
  CHECK(has(named(county, "Main"), spot(50, 0)));
  CHECK(county.node_tags.at(spot(50, 6)) ==
        Tags{{"direction", "backward"}, {"highway", "give_way"}});
}

TEST_CASE("an end that meets nothing is told, unless it is a dead end", "[county]") {
  CHECK(drawn("road Alone residential 0,0 90,0\n").troubles ==
        std::vector<std::string>{
            "line 1: Alone meets no road within 30 m of its end 0,0; move it, or write first= or "
            "last=turning_circle, closed or edge",
            "line 1: Alone meets no road within 30 m of its end 90,0; move it, or write first= or "
            "last=turning_circle, closed or edge"});
}

TEST_CASE("a road forks round an island at a ring: in on the left, out on the right", "[county]") {
  const Drawing county = drawn(
      "ring n 0,0 20 highway=primary signals=yes\n"
      "road East primary @n^ 150,0 300,0 last=edge lanes=2\n");
  REQUIRE(county.lines.size() == 4);
  const Line& in = county.lines[1];
  const Line& out = county.lines[2];
  CHECK(in.points.front() == spot(58, 0));
  CHECK(out.points.back() == spot(58, 0));
  CHECK(in.points.back().y() < 0);  // driven on the left: towards the west, left is south
  CHECK(out.points.front().y() > 0);
  CHECK(in.tags.at("oneway") == "yes");
  CHECK_FALSE(in.tags.contains("lanes"));
  const auto lights =
      std::count_if(county.node_tags.begin(), county.node_tags.end(), [](const auto& n) {
        return n.second.contains("highway") && n.second.at("highway") == "traffic_signals";
      });
  CHECK(lights == 2);  // at the way in, and on the ring before it
}

TEST_CASE("a ring is driven clockwise", "[county]") {
  const Drawing county = drawn("ring n 0,0 20 highway=primary\n");
  const Line& ring = county.lines.at(0);
  CHECK(ring.points.front() == ring.points.back());
  double turned = 0;
  for (std::size_t i = 2; i < ring.points.size(); ++i)
    turned += turn_at(ring.points[i - 2], ring.points[i - 1], ring.points[i]);
  CHECK(turned < 0);
}

TEST_CASE("a dual carriageway is two one-way roads, each on the left of the middle", "[county]") {
  const Drawing county = drawn(
      "ring a 0,0 30 highway=primary\nring b 1000,0 30 highway=primary\n"
      "dual Way primary @a 200,0 500,0 800,0 @b\n");
  REQUIRE(county.lines.size() == 4);
  CHECK(has(county.lines[2], spot(500, 7)));  // eastward: left is north
  CHECK(has(county.lines[3], spot(500, -7)));
  CHECK(county.lines[3].points.front().x() > 900);
}

TEST_CASE("a dual carriageway may part from a road and leave the map", "[county]") {
  const Drawing county = drawn(
      "road Old primary -300,0 0,0 first=edge\n"
      "dual New primary 0,0 200,0 400,0 600,0 last=edge\n");
  CHECK(county.troubles.empty());
  CHECK(county.lines[1].points.front() == spot(0, 0));
  CHECK(county.lines[1].points.back() == spot(600, 7));
  CHECK(county.lines[2].points.front() == spot(600, -7));
  CHECK(county.lines[2].points.back() == spot(0, 0));
}

TEST_CASE("a railway crosses a road only where the plan has a crossing", "[county]") {
  const std::string plan =
      "road Mill residential -200,0 200,0 first=closed last=closed\nrail 1 0,-300 0,300\n";
  CHECK(drawn(plan).troubles == std::vector<std::string>{"line 1: Mill crosses the railway at 0,0; "
                                                         "write a crossing there, or a bridge"});
  const Drawing county = drawn(plan + "crossing 5,5 crossing:barrier=half\n");
  CHECK(county.troubles.empty());
  CHECK(county.node_tags.at(spot(0, 0)) ==
        Tags{{"crossing:barrier", "half"}, {"railway", "level_crossing"}});
  CHECK(drawn(plan + "crossing 5,5\ncrossing 150,150\n").troubles ==
        std::vector<std::string>{
            "line 4: no railway or water crosses a road within 40 m of 150,150"});
}

TEST_CASE("a river needs a bridge or a ford, a stream passes under", "[county]") {
  const std::string road = "road Mill residential -200,0 200,0 first=closed last=closed\n";
  CHECK(drawn(road + "water Osk 12 0,-300 0,300\n").troubles.size() == 1);
  CHECK(drawn(road + "water - 3 0,-300 0,300\n").lines[0].points.size() == 2);
  const Drawing county = drawn(road + "water - 3 0,-300 0,300\ncrossing 0,0 depth=0.2\n");
  CHECK(county.node_tags.at(spot(0, 0)) == Tags{{"depth", "0.2"}, {"ford", "yes"}});
  CHECK(has(county.lines[0], spot(0, 0)));
}

TEST_CASE("a tram runs in the roads of a name, or crosses roads on its own", "[county]") {
  const Drawing county = drawn(cross_roads + "tram West\ntram 100,-50 100,50\n");
  CHECK(county.troubles.empty());
  const Line& along = county.lines.back();
  CHECK(along.kind == LineKind::tram);
  CHECK(along.points == county.lines[0].points);
  CHECK(county.node_tags.at(spot(100, 0)).at("railway") == "tram_level_crossing");
}

TEST_CASE("signs, controls, houses and stops stand on and beside the nearest road", "[county]") {
  const Drawing county =
      drawn(cross_roads +
            "at 50,5 traffic_calming=hump\njunction 3,3 highway=mini_roundabout\n"
            "houses West 20 addr:postcode=\"QM1 1AA\"\nstop Inn -50,3 back\n");
  CHECK(county.troubles.empty());
  CHECK(county.node_tags.at(spot(50, 0)).at("traffic_calming") == "hump");
  CHECK(county.node_tags.at(spot(0, 0)).at("highway") == "mini_roundabout");
  CHECK(county.lone.at(0).at == spot(-188, 9));
  CHECK(county.lone.at(0).tags.at("addr:housenumber") == "1");
  CHECK(county.lone.at(1).at == spot(-188, -9));
  CHECK(county.lone.back().at == spot(-50, -5));
}

TEST_CASE("what a sign, control, stop or house belongs to must be near", "[county]") {
  CHECK(drawn(cross_roads +
              "at 150,150 a=b\njunction 100,0 a=b\nstop Inn 150,150 bus\nhouses East 9\n")
            .troubles ==
        std::vector<std::string>{"line 3: there is no road within 30 m of 150,150",
                                 "line 4: there is no junction within 30 m of 100,0",
                                 "line 5: there is no road within 30 m of 150,150",
                                 "line 6: there is no street 'East' with room for houses"});
}
