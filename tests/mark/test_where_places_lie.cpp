// Every kind of place lies where the map says what it is; the thing stands at node A each time, the first of the
// town. The tags: OSM wiki, as in the kinds' own tests.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

struct Case {
  Kind kind;
  std::string lines;
};

constexpr std::string_view cross = R"(
    N
.
.
W   A   E
.
.
    S
)";

std::string roads_with(const std::string& west, const std::string& more) {
  return "w1 WA highway=primary " + west + "\nw2 AE highway=primary\nw3 NAS highway=residential\n" +
         more;
}

double metres_from_a(const BuiltTown& town, Kind kind) {
  const auto& all = town.built.tables.places;
  const auto place = std::ranges::find(all, kind, &road::Place::kind);
  if (place == all.end()) throw std::invalid_argument("there is no such place");
  return distance_m(place->at, town.roads().nodes[town.node('A').index()].at);
}

}  // namespace

TEST_CASE("a place at a crossroads lies there", "[mark][places]") {
  const std::string light = "nA highway=traffic_signals\n";
  for (const auto& [kind, lines] : {
           Case{Kind::crossroads, roads_with("", "")},
           Case{Kind::signals, roads_with("", light)},
           Case{Kind::box_junction,
                roads_with("", "nA highway=traffic_signals box_junction=yes\n")},
           Case{Kind::filter_lane, roads_with("turn:lanes:forward=left|through;right", light)},
           Case{Kind::mini_roundabout, roads_with("", "nA highway=mini_roundabout\n")},
       }) {
    CAPTURE(lines);
    CHECK(metres_from_a(built_town(std::string(cross) + lines), kind) < 1);
  }
}

TEST_CASE("a place on a road lies there", "[mark][places]") {
  for (const auto& [kind, lines] : {
           Case{Kind::calming, "nA traffic_calming=hump\n"},
           Case{Kind::zebra, "nA highway=crossing crossing=zebra\n"},
           Case{Kind::signal_crossing, "nA highway=crossing crossing=traffic_signals\n"},
           Case{Kind::pinch_point, "nA traffic_calming=choker\n"},
           Case{Kind::ford, "nA ford=yes\n"},
           Case{Kind::level_crossing, "nA railway=level_crossing\nw8 NAS railway=rail\n"},
           Case{Kind::tram_crossing, "w8 NAS railway=tram\n"},
       }) {
    CAPTURE(lines);
    CHECK(metres_from_a(
              built_town("    N\n.\nW   A   E\n.\n    S\nw1 WAE highway=tertiary\n" + lines),
              kind) < 1);
  }
}

TEST_CASE("lanes merge and a limit changes where the road's parts meet", "[mark][places]") {
  const auto halves = [](const std::string& west, const std::string& east) {
    return built_town("W   A   E\nw1 WA highway=primary " + west + "\nw2 AE highway=primary " +
                      east + "\n");
  };
  CHECK(metres_from_a(halves("maxspeed=\"30 mph\"", "maxspeed=\"40 mph\""), Kind::limit_change) <
        1);
  CHECK(metres_from_a(halves("lanes=3 lanes:forward=2 lanes:backward=1",
                             "lanes=2 lanes:forward=1 lanes:backward=1"),
                      Kind::lanes_merge) < 1);
}

TEST_CASE("a roundabout lies in its middle, a staggered junction between its side roads",
          "[mark][places]") {
  const BuiltTown ring = built_town(draw_town("     N\n.\n     a\nW   d   b  E\n     c\n.\n     S\n"
                                              "w1 abcda highway=tertiary junction=roundabout\n"
                                              "w2 Na highway=tertiary\nw3 Eb highway=tertiary\n"
                                              "w4 Sc highway=tertiary\nw5 Wd highway=tertiary\n",
                                              20),
                                    "GB-ENG");
  const auto middle_of = [](const BuiltTown& town, std::string_view ends) {
    const road::Roads roads = town.roads();
    const Point a = roads.nodes[town.node(ends[0]).index()].at;
    const Point b = roads.nodes[town.node(ends[1]).index()].at;
    return Point{a.lat_e7 / 2 + b.lat_e7 / 2, a.lon_e7 / 2 + b.lon_e7 / 2};
  };
  const auto place_of = [](const BuiltTown& town, Kind kind) {
    return *std::ranges::find(town.built.tables.places, kind, &road::Place::kind);
  };
  CHECK(distance_m(place_of(ring, Kind::roundabout).at, middle_of(ring, "db")) < 10);
  CHECK(place_of(ring, Kind::roundabout).arms == 4);
  const BuiltTown staggered = built_town(
      "    N\n.\n.\nW   ab   E\n.\n.\n     S\nw1 WabE highway=secondary\n"
      "w2 Na highway=residential\nw3 Sb highway=residential\n");
  CHECK(distance_m(place_of(staggered, Kind::staggered_junction).at, middle_of(staggered, "ab")) <
        1);
  CHECK(place_of(staggered, Kind::staggered_junction).arms == 4);
}

// What the report counts is what the tables hold.
TEST_CASE("the report counts what was marked", "[mark][places]") {
  const BuiltTown town = built_town(R"town(
    N
.
W   A   E   F   G   H
.
    S
w1 WA highway=primary maxspeed=30_mph
w2 AE highway=primary dual_carriageway=yes busway:left=lane
w3 NAS highway=residential maxspeed=20_mph
w4 EF highway=residential access=private
w5 FG highway=residential access=destination
w6 GH highway=residential maxspeed=30_mph
w8 SE highway=residential oneway=yes
w7 HN highway=tertiary motor_vehicle:conditional="no @ (Mo-Fr 08:00-09:00)"
nA highway=traffic_signals
)town");
  const auto& tables = town.built.tables;
  const auto pieces = [&](std::uint32_t flag) {
    return std::ranges::count_if(tables.pieces,
                                 [&](const road::Piece& p) { return (p.flags & flag) != 0; });
  };
  namespace flag = road::piece_flag;
  CHECK(pieces(flag::one_way) == 1);
  CHECK(town.report.counted("pieces: one-way") == 1);
  CHECK(town.report.counted("pieces: dual carriageway by tag") == pieces(flag::dual));
  CHECK(town.report.counted("pieces: quiet streets") == pieces(flag::quiet));
  CHECK(pieces(flag::quiet) > 0);
  CHECK(town.report.counted("pieces: not open to cars") == 1);
  CHECK(town.report.counted("pieces: for access only") == 1);
  CHECK(town.report.counted("bus lanes") == std::ssize(tables.bus_lanes));
  CHECK(std::ssize(tables.bus_lanes) > 0);
  CHECK(town.report.counted("limit changes") ==
        std::ranges::count(tables.places, Kind::limit_change, &road::Place::kind));
  CHECK(town.report.counted("places: signals") == 1);
  CHECK(town.report.counted("ways through: signals") ==
        std::ranges::count(tables.chances, Kind::signals, &road::Chance::kind));
  CHECK(town.report.counted("directions open to cars by the hour") == 2);
  CHECK(town.report.counted("directions through bus gates, by the hour") == 0);
  const std::int64_t limits = town.report.counted("speed limits: certain") +
                              town.report.counted("speed limits: inferred") +
                              town.report.counted("speed limits: check");
  CHECK(limits == std::ssize(tables.stretches));
}

}  // namespace loopwright::test
