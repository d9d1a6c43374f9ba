// Roundabouts, minis, lights, crossroads and level crossings in words. Exits are counted as the
// signs do (DEVELOPERS.md, "Kinds and passes"): public roads only, the one taken included.
#include <catch2/catch.hpp>

#include "say/said.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

const BuiltTown& streets() {
  static const BuiltTown town = town_of(crossing_streets, 100, "GB-ENG");
  return town;
}

constexpr std::string_view four_roads = R"(
          D
          |
  A   B   C    F
          |
          E
  w1 AB    highway=secondary ref=B9951 maxspeed="30 mph"
  w50 BCF   highway=secondary ref=B9951 maxspeed="30 mph"
  w2 DCE   highway=residential name=Mill_Orchard maxspeed="30 mph"
)";

}  // namespace

TEST_CASE("a roundabout is spoken by movement and exit", "[say]") {
  CHECK(said(streets(), "ABnpGCBA")[2] == "at the roundabout turn left, first exit");
  CHECK(said(streets(), "ABnpqJKGCBA")[2] ==
        "at the roundabout follow the road ahead, second exit");
  CHECK(said(streets(), "ABnpqrEAB")[2] == "at the roundabout turn right, third exit");
  CHECK(said(streets(), "ABnpqrnBA")[2] == "go all the way round the roundabout, fourth exit");
}

TEST_CASE("where one drives on the right, exits are counted the other way round", "[say]") {
  std::string drawing(crossing_streets);
  drawing.replace(drawing.find("npqrn"), 5, "nrqpn");
  drawing.erase(drawing.find("direction=clockwise"), 19);
  const BuiltTown town = town_of(drawing, 100, "LI");
  CHECK(said(town, "ABnrqpGCBA")[2] == "at the roundabout turn left, third exit");
  CHECK(said(town, "ABnrEAB")[2] == "at the roundabout turn right, first exit");
}

TEST_CASE("a mini-roundabout is spoken like a small roundabout", "[say]") {
  CHECK(said(streets(), "ABnpqJNOKGCBA")[3] ==
        "at the mini-roundabout follow the road ahead, second exit");
  CHECK(said(streets(), "ABnpqJIEAB")[3] == "at the mini-roundabout turn right, third exit");
}

TEST_CASE("lights ahead are not spoken of unless they were asked for", "[say]") {
  const BuiltTown town = town_of(std::string(four_roads) + "nC highway=traffic_signals", 100);
  CHECK(said_between(town, "ABCFCBA") == Texts{"turn the car round where it is safe"});
  CHECK(said_between(town, "ABCFCBA", {"signals:ahead=2"}) ==
        Texts{"at the lights follow the road ahead", "turn the car round where it is safe",
              "at the lights follow the road ahead"});
  CHECK(said_between(town, "ABCECBA") == Texts{"at the lights turn right",
                                               "turn the car round where it is safe",
                                               "at the lights turn left"});
}

TEST_CASE("a second set of lights is called the second", "[say]") {
  const BuiltTown town = town_of(R"(
               G         D
  A   B        H         C    F
               K         E
  w1 AB    highway=secondary ref=B9951 maxspeed="60 mph"
  w50 BHCF   highway=secondary ref=B9951 maxspeed="60 mph"
  w2 DCE   highway=residential name=Mill_Orchard
  w3 GHK   highway=residential name=Hay_Street
  nC highway=traffic_signals
  nH highway=traffic_signals
  )",
                                 25);
  CHECK(said_between(town, "ABHCECHBA")[0] == "at the second lights turn right");
}

TEST_CASE("lights that one is still amidst when the next are spoken of are counted", "[say]") {
  const BuiltTown town = town_of(R"(
                 G        D
  A   B         IH        C    F
                 K        E
  w1 AB    highway=secondary ref=B9951 maxspeed="36 mph"
  w50 BIHCF   highway=secondary ref=B9951 maxspeed="36 mph"
  w2 DCE   highway=residential name=Mill_Orchard
  w3 GHK   highway=residential name=Hay_Street
  nC highway=traffic_signals
  nI highway=traffic_signals
  nH highway=traffic_signals
  )",
                                 25);
  CHECK(said_between(town, "ABIHCECHIBA")[0] == "at the second lights turn right");
}

TEST_CASE("a crossing with lights before the lights is told apart from them", "[say]") {
  const BuiltTown town = town_of(R"(
                         D
  A   B        H         C    F
                         E
  w1 AB    highway=secondary ref=B9951 maxspeed="60 mph"
  w50 BHCF   highway=secondary ref=B9951 maxspeed="60 mph"
  w2 DCE   highway=residential name=Mill_Orchard
  nC highway=traffic_signals
  nH highway=crossing crossing=traffic_signals
  )",
                                 25);
  CHECK(said_between(town, "ABHCECHBA")[0] == "after the crossing, at the lights turn right");
}

TEST_CASE("crossroads are spoken of by name, ahead only when one gives way", "[say]") {
  const BuiltTown town = town_of(four_roads, 100);
  CHECK(said_between(town, "ABCECBA") == Texts{"at the crossroads turn right",
                                               "turn the car round where it is safe",
                                               "at the crossroads turn left"});
  CHECK(said_between(town, "ABCFCBA") == Texts{"turn the car round where it is safe"});
  const BuiltTown minor = town_of(R"(
          D
          |
  A   B   C    F
          |
          E
  w1 AB    highway=residential name=Mill_Orchard maxspeed="30 mph"
  w50 BCF   highway=residential name=Mill_Orchard maxspeed="30 mph"
  w2 DCE   highway=secondary ref=B9951 maxspeed="30 mph"
  )",
                                  100);
  CHECK(said_between(minor, "ABCFCBA")[0] == "at the crossroads follow the road ahead");
}

TEST_CASE("a level crossing has a row of its own, with its caution", "[say]") {
  const auto rows = rows_of(streets(), "ABnpGxHDCBA", {"level-crossing=1"});
  REQUIRE(rows.size() > 4);
  CHECK(rows[3].say == "level crossing ahead");
  CHECK(rows[3].briefs == Texts{"never stop on it: cross only when the far side is clear",
                                "close together: say these in one breath"});
  CHECK(rows[3].hardness == 4);
}

TEST_CASE("a zebra is a row only when it was asked for, else a hazard", "[say]") {
  const BuiltTown town = town_of(R"(
                    D
  A   B      Z      C
                    E
  w1 AB    highway=residential name=Lantern_Row maxspeed="30 mph"
  w50 BZC   highway=residential name=Lantern_Row maxspeed="30 mph"
  w2 DCE   highway=residential name=Mill_Orchard maxspeed="30 mph"
  nZ highway=crossing crossing=uncontrolled crossing:markings=zebra
  )",
                                 50);
  const auto rows = rows_of(town, "ABZCECZBA");
  CHECK(rows[0].hazards == Texts{"zebra"});
  CHECK(rows[0].hardness == 2);
  CHECK(said(town, "ABZCECZBA", {"zebra=2"})[1] == "zebra crossing ahead");
}

}  // namespace loopwright::test
