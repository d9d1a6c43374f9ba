// The tiles of a drawn town, read back with protozero's reader by the field numbers of the Vector Tile Specification
// 2.1. What whole maps' tiles hold another reader checks: tests/page/test_tiles.py.
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <protozero/pbf_reader.hpp>
#include <set>
#include <string>
#include <vector>

#include "loopwright/page/tiles.hpp"
#include "support/built_town.hpp"

namespace loopwright {
namespace {

using page::TileAddress;
using test::BuiltTown;

struct Feature {
  std::map<std::string, std::string> values;
  std::vector<std::pair<int, int>> points;
};
using Layers = std::map<std::string, std::vector<Feature>>;

std::string value_text(protozero::pbf_reader value) {
  std::string text;
  while (value.next()) {
    if (value.tag() == 1) {
      text = std::string(value.get_string());
    } else if (value.tag() == 6) {
      text = std::to_string(value.get_sint64());
    } else if (value.tag() == 7) {
      text = value.get_bool() ? "true" : "false";
    } else {
      value.skip();
    }
  }
  return text;
}

std::vector<std::pair<int, int>> points_of(const std::vector<std::uint32_t>& commands) {
  std::vector<std::pair<int, int>> points;
  int x = 0, y = 0;
  for (std::size_t k = 0; k < commands.size();) {
    const std::uint32_t times = commands[k++] >> 3U;
    for (std::uint32_t n = 0; n < times; ++n, k += 2) {
      x += protozero::decode_zigzag32(commands.at(k)),
          y += protozero::decode_zigzag32(commands.at(k + 1));
      points.emplace_back(x, y);
    }
  }
  return points;
}

Layers layers_of(const std::string& bytes) {
  Layers layers;
  protozero::pbf_reader tile(bytes);
  while (tile.next(3)) {
    protozero::pbf_reader layer = tile.get_message();
    std::string name;
    std::vector<std::string> keys, values;
    std::vector<std::vector<std::uint32_t>> tags, commands;
    while (layer.next()) {
      if (layer.tag() == 1) {
        name = std::string(layer.get_string());
      } else if (layer.tag() == 2) {
        protozero::pbf_reader feature = layer.get_message();
        tags.emplace_back(), commands.emplace_back();
        while (feature.next()) {
          if (feature.tag() != 2 && feature.tag() != 4) {
            feature.skip();
            continue;
          }
          std::vector<std::uint32_t>& into = feature.tag() == 2 ? tags.back() : commands.back();
          const auto range = feature.get_packed_uint32();
          into.assign(range.begin(), range.end());
        }
      } else if (layer.tag() == 3) {
        keys.emplace_back(layer.get_string());
      } else if (layer.tag() == 4) {
        values.push_back(value_text(layer.get_message()));
      } else {
        layer.skip();
      }
    }
    for (std::size_t f = 0; f < tags.size(); ++f) {
      Feature& feature = layers[name].emplace_back();
      for (std::size_t k = 0; k + 1 < tags[f].size(); k += 2)
        feature.values[keys.at(tags[f][k])] = values.at(tags[f][k + 1]);
      feature.points = points_of(commands[f]);
    }
  }
  return layers;
}

/// The tile of a zoom that holds a point (EPSG:3857).
TileAddress tile_of(Point at, int zoom) {
  const double side = std::ldexp(1.0, zoom), pi = std::acos(-1.0);
  const double y = (1 - std::asinh(std::tan(at.lat() * pi / 180)) / pi) / 2;
  return {zoom, static_cast<std::uint32_t>((at.lon() + 180) / 360 * side),
          static_cast<std::uint32_t>(y * side)};
}

class Shown {
 public:
  explicit Shown(std::string_view drawing) : town_(test::built_town(drawing)) {}
  [[nodiscard]] Layers at(char letter, int zoom, std::string_view time = "2026-11-30T09:00Z", int minutes = 0) const {
    const road::Roads roads = town_.roads();
    const Point at = roads.nodes[town_.node(letter).index()].at;
    const auto written = read_time(time);
    const Instant begin{civil_seconds(written->civil), 0};
    return layers_of(page::Tiles(roads).tile(tile_of(at, zoom), {begin, begin.plus_seconds(minutes * 60)}, test::setting_of(roads)));
  }

 private:
  BuiltTown town_;
};

constexpr std::string_view crossroads = R"(
      C
  A   B   D
      E
w1 ABD  highway=primary name=Mill_Street maxspeed="30 mph"
w2 CBE  highway=residential
w3 DF   highway=service service=driveway
              F
)";

TEST_CASE("a tile has the roads round it with their names", "[page]") {
  const Layers layers = Shown(crossroads).at('B', 16);
  std::set<std::string> ways;
  for (const Feature& road : layers.at("roads")) {
    ways.insert(road.values.at("way"));
    CHECK(road.points.size() >= 2);
    if (road.values.at("way") != "1") continue;
    CHECK(road.values.at("class") == "primary");
    CHECK(road.values.at("name") == "Mill Street");
    CHECK(road.values.at("drive") == "true");
  }
  CHECK(ways.contains("1"));
  CHECK(ways.contains("2"));
}

TEST_CASE("from far away only the larger roads are drawn", "[page]") {
  for (const Feature& road : Shown(crossroads).at('B', 9).at("roads"))
    CHECK(road.values.at("class") == "primary");
}

TEST_CASE("where nothing is, a tile has no bytes", "[page]") {
  const BuiltTown town = test::built_town(crossroads);
  const road::Roads roads = town.roads();
  CHECK(page::Tiles(roads).tile({16, 0, 0}, {}, test::setting_of(roads)).empty());
}

TEST_CASE("a bus lane's verdict is that of the whole lesson", "[page]") {
  const Shown town(R"town(
  A   B   C
w1 ABC  highway=primary oneway=yes lanes=2 lanes:bus:conditional="1 @ (Mo-Fr 07:00-10:00)"
w2 CA   highway=residential
)town");
  const auto verdict = [&](std::string_view time, int minutes = 0) {
    const Layers layers = town.at('A', 14, time, minutes);
    REQUIRE(layers.contains("bus_lanes"));
    return layers.at("bus_lanes").front().values.at("verdict");
  };
  CHECK(verdict("2026-11-30T09:00Z") == "in force");
  CHECK(verdict("2026-11-30T12:00Z") == "usable");
  CHECK(verdict("2026-11-30T06:50Z") == "usable");
  CHECK(verdict("2026-11-30T06:50Z", 60) == "check the plate");
}

TEST_CASE("there are no tiles beyond the zooms and the edge of the map", "[page]") {
  CHECK(page::is_tile({16, 65535, 65535}));
  CHECK_FALSE(page::is_tile({16, 65536, 0}));
  CHECK_FALSE(page::is_tile({16, 0, 65536}));
  CHECK_FALSE(page::is_tile({page::least_zoom - 1, 0, 0}));
  CHECK_FALSE(page::is_tile({page::most_zoom + 1, 0, 0}));
}

}  // namespace
}  // namespace loopwright
