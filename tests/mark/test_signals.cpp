// Sources: OSM wiki Key:traffic_signals:direction; the size of a cluster is ours.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A crossroads with a point 20 m before it on each arm; 20 m a character.
constexpr std::string_view crossroads = R"(
      N
.
.
      n
W    wxe    E
      s
.
.
      S
w1 WwxeE highway=secondary
w2 NnxsS highway=tertiary
)";

BuiltTown crossroads_with(const std::string& lines) {
  return built_town(draw_town(std::string(crossroads) + lines, 20), "GB-ENG");
}

const Texts every_way_over_x = {"ExN right", "ExS left",  "ExW ahead", "NxE left",
                                "NxS ahead", "NxW right", "SxE right", "SxN ahead",
                                "SxW left",  "WxE ahead", "WxN left",  "WxS right"};

TEST_CASE("a junction without lights has no signals", "[mark][signals]") {
  CHECK(places(crossroads_with(""), Kind::signals).empty());
}

TEST_CASE("a light on the junction holds every way through but back", "[mark][signals]") {
  const BuiltTown town = crossroads_with("nx highway=traffic_signals\n");
  CHECK(chances(town, Kind::signals) == every_way_over_x);
  CHECK(reasons(town, Kind::signals) == Texts{"certain highway=traffic_signals nx"});
  CHECK(town.built.tables.places[0].arms == 4);
}

TEST_CASE("nobody emerges at lights, and a signalled crossroads is no plain one",
          "[mark][signals]") {
  const BuiltTown town = crossroads_with("nx highway=traffic_signals\n");
  for (const Kind kind : {Kind::emerge, Kind::turn_off, Kind::crossroads}) {
    CHECK(places(town, kind).empty());
  }
}

std::string lights(std::string_view letters, const std::string& tags = "") {
  std::string lines;
  for (const char letter : letters) {
    lines += std::string("n") + letter + " highway=traffic_signals" + tags + "\n";
  }
  return lines;
}

TEST_CASE("a light on each arm is one signalled junction, passed from outside to outside",
          "[mark][signals]") {
  const BuiltTown town = crossroads_with(lights("nesw"));
  CHECK(places(town, Kind::signals).size() == 1);
  CHECK(chances(town, Kind::signals) == Texts{"EexnN right", "EexsS left", "EexwW ahead",
                                              "NnxeE left", "NnxsS ahead", "NnxwW right",
                                              "SsxeE right", "SsxnN ahead", "SsxwW left",
                                              "WwxeE ahead", "WwxnN left", "WwxsS right"});
}

TEST_CASE("a light beside the road holds only those who have the junction before them",
          "[mark][signals]") {
  // Two of four arms: a signalled junction. Who comes from the others passes no light that faces.
  const BuiltTown town = crossroads_with(lights("we"));
  CHECK(chances(town, Kind::signals) ==
        Texts{"EexN right", "EexS left", "EexwW ahead", "WwxN left", "WwxS right", "WwxeE ahead"});
}

// Key:stop:direction speaks of the junction; a yard's drive is none to put a light up for (ours).
TEST_CASE("a light faces the street before it, though a yard's drive behind it is nearer",
          "[mark][signals]") {
  const BuiltTown town = built_town(draw_town(R"(
W     vw  x     E
          s
      P
          S
w1 WvwxE highway=secondary
w2 xsS highway=tertiary
w3 vP highway=service
nw highway=traffic_signals
ns highway=traffic_signals
)",
                                              10),
                                    "GB-ENG");
  const Texts all = chances(town, Kind::signals);
  CHECK_THAT(all, Catch::VectorContains(std::string("vwxE ahead")));
  CHECK_THAT(all, Catch::VectorContains(std::string("SsxE right")));
  CHECK_THAT(all, !Catch::VectorContains(std::string("Exwv ahead")));
}

TEST_CASE("a light tagged with a direction holds only that one", "[mark][signals]") {
  // w and e on way 1 drawn from west to east: both face eastbound traffic, e beyond the junction.
  const BuiltTown town = crossroads_with(lights("wns", " traffic_signals:direction=forward") +
                                         lights("e", " traffic_signals:direction=both"));
  const Texts all = chances(town, Kind::signals);
  CHECK_THAT(all, Catch::VectorContains(std::string("WwxeE ahead")));
  CHECK_THAT(all, Catch::VectorContains(std::string("NnxsS ahead")));
  CHECK_THAT(all, !Catch::VectorContains(std::string("SsxnN ahead")));
  CHECK(reasons(town, Kind::signals) == Texts{"certain highway=traffic_signals ne",
                                              "certain highway=traffic_signals nn",
                                              "certain highway=traffic_signals nw"});
}

TEST_CASE("one light near a junction of four roads doesn't make it signalled", "[mark][signals]") {
  const BuiltTown town = crossroads_with(lights("w"));
  CHECK(chances(town, Kind::signals) == Texts{"Wwx ahead"});
  CHECK(places(town, Kind::crossroads) == Texts{"nx"});
}

TEST_CASE("a crossing of two carriageways is one signalled junction", "[mark][signals]") {
  const BuiltTown town = built_town(draw_town(R"(
      N
.
.
W     x     E
V     y     F
.
.
      S
w1 WxE highway=primary oneway=yes name=Mill_Road
w2 FyV highway=primary oneway=yes name=Mill_Road
w3 NxyS highway=tertiary
w4 WV highway=primary
w5 EF highway=primary
nx highway=traffic_signals
ny highway=traffic_signals
)",
                                              20),
                                    "GB-ENG");
  CHECK(places(town, Kind::signals) == Texts{"nx"});
  CHECK(chances(town, Kind::signals) == Texts{"FyS left", "FyV ahead", "FyxN right", "NxE left",
                                              "NxyS ahead", "NxyV right", "SyV left", "SyxE right",
                                              "SyxN ahead", "WxE ahead", "WxN left", "WxyS right"});
}

TEST_CASE("nobody turns back through the gap of a dual carriageway at lights", "[mark][signals]") {
  const BuiltTown town = built_town(draw_town(R"(
W     x     E
V     y     F
.
.
      S
w1 WxE highway=primary oneway=yes name=Mill_Road
w2 FyV highway=primary oneway=yes name=Mill_Road
w3 xyS highway=tertiary
w4 WV highway=primary
w5 EF highway=primary
nx highway=traffic_signals
ny highway=traffic_signals
)",
                                              20),
                                    "GB-ENG");
  CHECK_THAT(chances(town, Kind::signals), !Catch::VectorContains(std::string("WxyV right")));
  CHECK_FALSE(town.drives("WxyV"));
}

TEST_CASE("lights on a road without a junction are passed ahead", "[mark][signals]") {
  const BuiltTown town = built_town(R"(
W   a     E
w1 WaE highway=secondary
na highway=traffic_signals
)");
  CHECK(chances(town, Kind::signals) == Texts{"EaW ahead", "WaE ahead"});
}

TEST_CASE("where a road parts into its two carriageways, lights hold no junction",
          "[mark][signals]") {
  const BuiltTown town = built_town(R"(
               A
W     b
               B
w1 Wb highway=primary name=Mill_Road
w2 bA highway=primary oneway=yes name=Mill_Road
w3 Bb highway=primary oneway=yes name=Mill_Road
w4 BA highway=primary
nb highway=traffic_signals
)");
  CHECK(chances(town, Kind::signals) == Texts{"BbW ahead", "WbA ahead"});
}

TEST_CASE("lights of a level crossing are no signals", "[mark][signals]") {
  const BuiltTown town = built_town(draw_town(R"(
   R
W  lx  E
   Q
w1 WlxE highway=secondary
w2 RxQ railway=rail
nx railway=level_crossing
nl highway=traffic_signals
)",
                                              20),
                                    "GB-ENG");
  CHECK(places(town, Kind::signals).empty());
  CHECK(town.report.counted("lights of roundabouts, minis and level crossings") == 1);
  CHECK(places(town, Kind::level_crossing) == Texts{"nx"});
}

TEST_CASE("flashing lights and those of a fire station are no signals", "[mark][signals]") {
  CHECK(
      places(crossroads_with("nx highway=traffic_signals traffic_signals=blinker\n"), Kind::signals)
          .empty());
  CHECK(places(crossroads_with("nx highway=traffic_signals traffic_signals=emergency\n"),
               Kind::signals)
            .empty());
}

TEST_CASE("the place of a signalled junction is its middle, also when lights stand before it",
          "[mark][signals]") {
  const BuiltTown town = crossroads_with(lights("wesn"));
  const auto& all = town.built.tables.places;
  const auto place = std::ranges::find(all, Kind::signals, &road::Place::kind);
  REQUIRE(place != all.end());
  const road::Roads roads = town.roads();
  CHECK(distance_m(place->at, roads.nodes[town.node('x').index()].at) < 5);
}

TEST_CASE("a crossing with lights belongs to lights near it, not to lights far along the road",
          "[mark][signals]") {
  const auto groups = [](int metres) {
    const std::string gap(static_cast<std::size_t>(metres / 10 - 1), ' ');
    const BuiltTown town = built_town(draw_town("W        a" + gap + "b" + gap +
                                                    "c        E\nw1 WabcE highway=secondary\n"
                                                    "na highway=traffic_signals\n"
                                                    "nb highway=crossing crossing=traffic_signals\n"
                                                    "nc highway=traffic_signals\n",
                                                10),
                                      "GB-ENG");
    std::string all;
    for (const Kind kind : {Kind::signals, Kind::signal_crossing})
      for (const std::string& place : places(town, kind)) all += place + " ";
    return all;
  };
  // The light at a is the crossing's own.
  CHECK(groups(30) == "nc na ");
  CHECK(groups(200) == "na nc nb ");
}

}  // namespace
}  // namespace loopwright::test
