// Outlines as RFC 7946 and the polygon files of map extracts write them.
#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/file/outline_file.hpp"

namespace loopwright::file {
namespace {

using Rings = std::vector<Ring>;

const std::vector<Point> triangle{
    {543000000, 26000000}, {543000000, 26100000}, {543100000, 26000000}};
const Rings closed_triangle{Ring{{triangle[0], triangle[1], triangle[2], triangle[0]}}};

constexpr std::string_view geometry =
    R"({"type":"Polygon","coordinates":[[[2.6,54.3],[2.61,54.3],[2.6,54.31,12.5],[2.6,54.3]]]})";

TEST_CASE("a polygon of GeoJSON is read alone, as a feature and in collections", "[file]") {
  CHECK(read_outline(geometry, "a.geojson") == closed_triangle);
  const std::string feature =
      R"({"type":"Feature","properties":null,"geometry":)" + std::string(geometry) + "}";
  CHECK(read_outline(feature, "a.json") == closed_triangle);
  const std::string two =
      R"({"type":"FeatureCollection","features":[)" + feature + "," + feature + "]}";
  CHECK(read_outline(two, "a.json").size() == 2);
}

TEST_CASE("several polygons and their holes are rings", "[file]") {
  constexpr std::string_view several = R"({"type":"MultiPolygon","coordinates":[
    [[[0,0],[9,0],[9,9],[0,0]], [[5,1],[6,1],[6,2],[5,1]]],
    [[[20,0],[21,0],[21,1],[20,0]]]]})";
  const Rings rings = read_outline(several, "a.geojson");
  REQUIRE(rings.size() == 3);
  CHECK(rings[1].points[1] == Point{10000000, 60000000});
  CHECK(rings[0].role == Ring::Role::area);
  CHECK(rings[1].role == Ring::Role::hole);
  CHECK(rings[2].role == Ring::Role::area);
}

TEST_CASE("a polygon file has sections of longitude and latitude", "[file]") {
  constexpr std::string_view poly =
      "somewhere\n1\n\t2.6E+00\t5.43E+01\n   2.61 54.3\n\n 2.6   54.31\r\nEND\n"
      "!2\n 2.601 54.301\n 2.602 54.301\n 2.601 54.302\nEND\nEND\n";
  const Rings rings = read_outline(poly, "a.poly");
  REQUIRE(rings.size() == 2);
  CHECK(rings[0] == Ring{triangle});
  CHECK(rings[1].points[0] == Point{543010000, 26010000});
  CHECK(rings[1].role == Ring::Role::hole);
}

TEST_CASE("what is no outline is refused with where and why", "[file]") {
  const auto refused = [](std::string_view text, std::string_view name) {
    try {
      read_outline(text, name);
    } catch (const InputError& error) {
      return std::string(error.what());
    }
    return std::string("taken");
  };
  CHECK(refused("", "a.geojson") ==
        "a.geojson: is no JSON at byte 1; an outline is GeoJSON or a .poly file");
  CHECK(refused(R"({"type":"LineString","coordinates":[]})", "a.json") ==
        "a.json: /type: expected \"Polygon\" or \"MultiPolygon\", perhaps in a Feature or a "
        "FeatureCollection, found \"LineString\"");
  CHECK(refused(R"({"type":"Polygon","coordinates":[[[1,2],[1,2]]]})", "a.json")
            .starts_with("a.json: /coordinates/0: expected a ring of four positions or more"));
  CHECK(refused(R"({"type":"Polygon","coordinates":[[[1,95],[1,2],[2,2],[1,95]]]})", "a.json")
            .starts_with("a.json: /coordinates/0/0/1: expected"));
  CHECK(refused(R"({"type":"FeatureCollection","features":[]})", "a.json") ==
        "a.json: holds no outline");
  std::string deep, closing;
  for (int k = 0; k < 100'000; ++k)
    deep += R"({"type":"FeatureCollection","features":[)", closing += "]}";
  CHECK(refused(deep + closing, "a.json") == "a.json: its collections lie too deep in each other");
  CHECK(refused("a\n1\n 2.6 54.3\nEND\nEND\n", "a.poly") ==
        "a.poly:4: expected three positions or more before END");
  CHECK(refused("a\n1\n 2.6 north\nEND\nEND\n", "a.poly") ==
        "a.poly:3: expected longitude and latitude in degrees, parted by a blank");
  CHECK(refused("a\n1\n 2.6 54.3\n", "a.poly") ==
        "a.poly:4: expected that a position or END comes; it ends here");
  CHECK(refused("a\nEND\n", "a.poly") == "a.poly: holds no outline");
  CHECK(refused("a\n!1\n 2.6 54.3\n 2.7 54.3\n 2.7 54.4\nEND\nEND\n", "a.poly") ==
        "a.poly: holds no outline");
  CHECK(refused("a", "a.shp") ==
        "a.shp: an outline is a file that ends in .geojson, .json or .poly");
}

}  // namespace
}  // namespace loopwright::file
