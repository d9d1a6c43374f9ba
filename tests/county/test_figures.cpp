#include <catch2/catch.hpp>
#include <sstream>

#include "county/figures.hpp"
#include "loopwright/base/error.hpp"
#include "support/scratch_folder.hpp"

using namespace loopwright;
using namespace loopwright::county;

namespace {

/// A map in OPL, gone at the end. 0.001 degrees of latitude are about 111 m.
class TinyMap {
 public:
  explicit TinyMap(const std::string& text) { test::write_bytes(folder_ / "tiny.opl", text); }
  [[nodiscard]] RoadMap read(const Box& box = {}) const {
    return read_road_map(folder_ / "tiny.opl", box);
  }

 private:
  test::ScratchFolder folder_;
};

Figure figure(const RoadMap& map, std::string_view name) {
  for (const Figure& f : figures_of(map)) {
    if (f.name == name) return f;
  }
  FAIL("no figure " << name);
  return {};
}

std::string node(int id, double lat, double lon, const std::string& tags = "") {
  std::ostringstream text;
  text << 'n' << id << " v1 T" << tags << " x" << lon << " y" << lat << '\n';
  return text.str();
}

// A cross of two streets; the one to the east is mapped as two ways, the one to the south is short
// and has a driveway.
const std::string cross_nodes = node(1, 54.300, 2.600) + node(2, 54.301, 2.600) +
                                node(3, 54.299, 2.600) + node(4, 54.300, 2.602) +
                                node(5, 54.300, 2.604) + node(6, 54.300, 2.598) +
                                node(7, 54.299, 2.601);
const std::string cross =
    cross_nodes + "w1 v1 Thighway=residential,name=A,maxspeed=30%20%mph Nn2,n1,n3\n" +
    "w2 v1 Thighway=primary,oneway=yes,lit=yes Nn6,n1,n4\n" + "w3 v1 Thighway=primary Nn4,n5\n" +
    "w4 v1 Thighway=service,service=driveway Nn3,n7\n" + "w5 v1 Thighway=footway Nn5,n7\n";

}  // namespace

TEST_CASE("a map without roads has figures, all nothing", "[county][figures]") {
  const TinyMap map("n1 v1 x2.6 y54.3\n");
  for (const Figure& f : figures_of(map.read())) CHECK(f.value == 0);
}

TEST_CASE("ways are counted by class, and paths for feet aren't", "[county][figures]") {
  const RoadMap map = TinyMap(cross).read();
  CHECK(map.ways.size() == 4);
  CHECK(figure(map, "ways, % primary").value == 50);
  CHECK(figure(map, "ways, % residential").count == 1);
  CHECK(figure(map, "ways, % service").value == 25);
  CHECK(figure(map, "roads, % with name").value == Approx(100.0 / 3));
  CHECK(figure(map, "roads, % with lit").count == 1);
}

TEST_CASE("points are counted by arms, with and without service roads", "[county][figures]") {
  const RoadMap map = TinyMap(cross).read();
  // 2, 3, 5 and 6 are ends; 4 joins two ways of one road; 1 is the crossroads.
  CHECK(figure(map, "points, % with 1 arms").count == 4);
  CHECK(figure(map, "points, % with 2* arms").count == 1);
  CHECK(figure(map, "points, % with 3 arms").count == 0);
  CHECK(figure(map, "points, % with 4 arms").count == 1);
  CHECK(figure(map, "dead ends per km").count == 4);
  // The driveway makes 3 a point of two arms, and 7 an end.
  CHECK(figure(map, "points, % with 1 arms, all").count == 4);
  CHECK(figure(map, "points, % with 2* arms, all").count == 2);
}

TEST_CASE("lengths and one-way shares are metres on the ground", "[county][figures]") {
  const RoadMap map = TinyMap(cross).read();
  CHECK(figure(map, "road length m, 90 %").value == Approx(222.6).margin(1));
  CHECK(figure(map, "road length m, 10 %").value == Approx(130.2).margin(1));
  CHECK(figure(map, "% of road that is one-way").value == Approx(260.5 / 613.4 * 100).margin(0.5));
}

TEST_CASE("a ring of two ways is one roundabout, lights and tracks near together are one",
          "[county][figures]") {
  const TinyMap map(
      node(1, 54.300, 2.600) + node(2, 54.3002, 2.6002) + node(3, 54.300, 2.6004) +
      node(4, 54.3003, 2.6004, "highway=traffic_signals") +
      node(5, 54.3005, 2.6004, "highway=traffic_signals") +
      node(6, 54.3030, 2.6004, "railway=level_crossing") +
      node(7, 54.30304, 2.6004, "railway=level_crossing") +
      node(8, 54.3040, 2.6004, "highway=mini_roundabout") +
      node(9, 54.3050, 2.6004, "highway=crossing,crossing=zebra") +
      node(10, 54.3060, 2.6004, "highway=crossing,crossing_ref=puffin,crossing:markings=zebra") +
      "w1 v1 Thighway=primary,junction=roundabout Nn1,n2,n3\n" +
      "w2 v1 Thighway=primary,junction=roundabout Nn3,n1\n" +
      "w3 v1 Thighway=primary Nn3,n4,n5,n6,n7,n8,n9,n10\n" +
      "r1 v1 Ttype=restriction,restriction=no_u_turn Mw3@from,n3@via,w1@to\n" +
      "r2 v1 Ttype=restriction,restriction=no_u_turn Mw99@from,n3@via,w1@to\n");
  const RoadMap roads = map.read();
  CHECK(figure(roads, "roundabouts per 100 km").count == 1);
  CHECK(figure(roads, "signalled junctions per 100 km").count == 1);
  CHECK(figure(roads, "level crossings per 100 km").count == 1);
  CHECK(figure(roads, "mini-roundabouts per 100 km").count == 1);
  CHECK(figure(roads, "zebras per 100 km").count == 1);
  CHECK(figure(roads, "signal crossings per 100 km").count == 1);
  CHECK(figure(roads, "turn bans per 100 km").count == 1);
  CHECK(figure(roads, "% of road that is one-way").value > 5);
}

TEST_CASE("ways that leave the box are left out and counted", "[county][figures]") {
  const RoadMap map = TinyMap(cross).read(*read_box("54.2,2.5,54.4,2.603"));
  CHECK(map.ways.size() == 3);
  CHECK(map.left_out == 1);
  CHECK_FALSE(read_box("54.2,2.5,54.1,2.6"));
  CHECK_FALSE(read_box("54.2,2.5,54.4"));
}

TEST_CASE("what is beyond a factor of two is marked until it has a reason", "[county][figures]") {
  const std::vector<Figure> a{
      {"km of road", 900, 0, {}}, {"zebras", 4.2, 1, 21}, {"minis", 3, 1, 9}};
  const std::vector<Figure> b{
      {"km of road", 100, 0, {}}, {"zebras", 2.0, 1, 10}, {"minis", 2, 1, 6}};
  std::ostringstream bare, explained;
  CHECK(print_comparison(bare, a, b, {}) == 1);
  CHECK(bare.str().find("4.2 (21)        2.0 (10)       2.10 !") != std::string::npos);
  CHECK(print_comparison(explained, a, b, read_reasons("# why\nzebras | more are drawn\n")) == 0);
  CHECK(explained.str().find("because more are drawn") != std::string::npos);
  CHECK(alike({"x", 0, 1, {}}, {"x", 0, 1, {}}));
  CHECK_FALSE(alike({"x", 0.1, 1, {}}, {"x", 0, 1, {}}));
}

TEST_CASE("bad files and bad reasons are named", "[county][figures]") {
  CHECK_THROWS_WITH(read_road_map("/nowhere/a.opl", {}),
                    "/nowhere/a.opl: there is no such file; name an extract (.osm.pbf or .opl)");
  CHECK_THROWS_WITH(read_reasons("zebras | a\nminis"),
                    "line 2: write a reason as \"figure | reason\"");
  CHECK_THROWS_AS(TinyMap("nonsense\n").read(), InputError);
}
