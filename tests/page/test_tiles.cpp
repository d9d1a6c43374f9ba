// The tiles of a drawn town, read back with protozero's reader by the field numbers of the Vector Tile Specification
// 2.1. What whole maps' tiles hold another reader checks: tests/page/test_tiles.py.
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <protozero/pbf_reader.hpp>
#include <set>
#include <stdexcept>
#include <string>
#include <vector>

#include "loopwright/mark/noted.hpp"
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
  [[nodiscard]] Layers at(char letter, int zoom, std::string_view time = "2026-11-30T09:00Z",
                          int minutes = 0) const {
    const road::Roads roads = town_.roads();
    const Point at = roads.nodes[town_.node(letter).index()].at;
    const auto written = read_time(time);
    const Instant begin{civil_seconds(written->civil), 0};
    return layers_of(page::Tiles(roads).tile(
        tile_of(at, zoom), {begin, begin.plus_seconds(minutes * 60)}, test::setting_of(roads)));
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

/// The tile round a node as notes make the roads for a lesson.
Layers noted_at(const BuiltTown& town, char letter, std::vector<road::Note> notes,
                std::string_view time = "2026-11-30T09:00Z") {
  const road::Roads map = town.roads();
  const Instant begin{civil_seconds(read_time(time)->civil), 0};
  for (road::Note& note : notes) note.seen = {2026, 11, 1};
  const auto noted =
      mark::with_notes(map, notes, road::lesson_time(begin, 60, test::setting_of(map)));
  const Point at = map.nodes[town.node(letter).index()].at;
  return layers_of(
      page::Tiles(noted.roads(), map)
          .tile(tile_of(at, 16), {begin, begin.plus_seconds(3600)}, test::setting_of(map)));
}

const Feature& way(const Layers& layers, const std::string& number) {
  for (const Feature& road : layers.at("roads"))
    if (road.values.at("way") == number) return road;
  throw std::logic_error("no way/" + number);
}

TEST_CASE("what notes change of a road is in its tile, while the lesson lasts", "[page]") {
  const BuiltTown town = test::built_town(R"(
  A   B   C
w1 AB  highway=residential maxspeed="30 mph"
w2 BC  highway=residential maxspeed="30 mph"
)");
  const road::Roads map = town.roads();
  const auto middle = [&](char from, char to) {
    const Point a = map.nodes[town.node(from).index()].at, b = map.nodes[town.node(to).index()].at;
    return std::vector<Point>{{(a.lat_e7 + b.lat_e7) / 2, (a.lon_e7 + b.lon_e7) / 2}};
  };
  const road::Note never{
      .says = road::NoteKind::never, .line = middle('A', 'B'), .hours = "Mo-Fr 09:30-10:30"};
  const Layers shut = noted_at(town, 'B', {never});
  CHECK(way(shut, "1").values.at("shut") == "whole");
  CHECK(way(shut, "1").values.at("drive") == "false");
  CHECK_FALSE(way(shut, "2").values.contains("shut"));
  CHECK_FALSE(way(noted_at(town, 'B', {never}, "2026-11-28T09:00Z"), "1").values.contains("shut"));

  road::Note one_way{.says = road::NoteKind::never, .line = middle('A', 'B')};
  one_way.heading_deg = 90;
  CHECK(way(noted_at(town, 'B', {one_way}), "1").values.at("shut") == "one way");

  const Layers limited =
      noted_at(town, 'B',
               {{.says = road::NoteKind::limit, .line = middle('B', 'C'), .limit = 20},
                {.says = road::NoteKind::hump, .line = middle('B', 'C')}});
  CHECK(way(limited, "2").values.at("noted_limit") == "20 mph");
  CHECK_FALSE(way(limited, "1").values.contains("noted_limit"));
  for (const auto& [name, features] : noted_at(town, 'B', {}))
    for (const Feature& feature : features)
      for (const char* noted : {"shut", "noted_limit", "noted_humps", "noted"})
        CHECK_FALSE(feature.values.contains(noted));
}

TEST_CASE("a place that a note takes away isn't drawn, and one that it adds is", "[page]") {
  const BuiltTown town = test::built_town(R"(
    A       B       C       D
  w1 ABCD highway=tertiary
  nB highway=crossing crossing=zebra
  nC highway=crossing crossing=zebra
  )");
  const road::Roads map = town.roads();
  const auto at = [&](char letter) { return map.nodes[town.node(letter).index()].at; };
  const auto zebras = [&](const std::vector<road::Note>& notes) {
    std::vector<std::string> found;
    for (const Feature& place : noted_at(town, 'B', notes).at("places"))
      if (place.values.at("kind") == "zebra")
        found.emplace_back(place.values.contains("noted") ? "noted" : "mapped");
    return found;
  };
  const road::Note gone{
      .says = road::NoteKind::not_so, .line = {at('B')}, .kind = road::Kind::zebra};
  const std::vector<std::string> as_mapped = zebras({});
  CHECK(std::ranges::count(as_mapped, "noted") == 0);
  REQUIRE(std::ranges::count(as_mapped, "mapped") > 0);
  CHECK(std::ranges::count(zebras({gone}), "mapped") < std::ranges::count(as_mapped, "mapped"));

  const BuiltTown cross = test::built_town(crossroads);
  const Point middle = cross.roads().nodes[cross.node('B').index()].at;
  const Layers boxed = noted_at(
      cross, 'B',
      {{.says = road::NoteKind::practice, .line = {middle}, .kind = road::Kind::box_junction}});
  const auto is_box = [](const Feature& place) {
    return place.values.at("kind") == "box-junction";
  };
  const auto box = std::ranges::find_if(boxed.at("places"), is_box);
  REQUIRE(box != boxed.at("places").end());
  CHECK(box->values.at("noted") == "true");
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
