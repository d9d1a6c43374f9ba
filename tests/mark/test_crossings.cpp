// Zebras and signal crossings. Sources: OSM wiki Key:crossing; Highway Code rules 195 to 199.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A road with points on it: b is 25 m from the junction j, c is 75 m, a is 100 m.
BuiltTown road_with(const std::string& lines, std::string_view highway = "tertiary") {
  return built_town(R"(
        N
.
W   a   jb c   E
w1 WajbcE highway=)" + std::string(highway) +
                        "\nw2 Nj highway=residential\n" + lines,
                    "GB-ENG");
}

const std::string zebra = " highway=crossing crossing=zebra\n";
const std::string pelican = " highway=crossing crossing=traffic_signals crossing_ref=pelican\n";

TEST_CASE("a road without crossings has none", "[mark][crossings]") {
  CHECK(places(road_with("na highway=crossing crossing=unmarked\n"), Kind::zebra).empty());
}

TEST_CASE("a zebra is passed in both directions", "[mark][crossings]") {
  const BuiltTown town = road_with("na" + zebra);
  CHECK(chances(town, Kind::zebra) == Texts{"Waj", "jaW"});
  CHECK(reasons(town, Kind::zebra) == Texts{"certain crossing=zebra na"});
}

TEST_CASE("a crossing that is only marked is an inferred zebra", "[mark][crossings]") {
  const BuiltTown town = road_with("na highway=crossing crossing=marked\n");
  CHECK(reasons(town, Kind::zebra) == Texts{"inferred crossing=marked na"});
}

TEST_CASE("a zebra on a one-way street is passed one way", "[mark][crossings]") {
  const BuiltTown town = built_town(R"(
W   a   E
    S
w1 WaE highway=tertiary oneway=yes
w2 ESW highway=tertiary
na highway=crossing crossing=zebra
)");
  CHECK(chances(town, Kind::zebra) == Texts{"WaE"});
}

TEST_CASE("two zebras on one road are two places", "[mark][crossings]") {
  CHECK(places(road_with("na" + zebra + "nb" + zebra), Kind::zebra) == Texts{"na", "nb"});
}

TEST_CASE("crossings on service roads have no legal force", "[mark][crossings]") {
  const BuiltTown town = road_with("na" + zebra + "nc" + pelican, "service");
  CHECK(places(town, Kind::zebra).empty());
  CHECK(places(town, Kind::signal_crossing).empty());
  CHECK(town.report.counted("crossings on service roads, without legal force") == 2);
}

TEST_CASE("a pelican is a signal crossing, passed in both directions", "[mark][crossings]") {
  const BuiltTown town = road_with("na" + pelican);
  CHECK(chances(town, Kind::signal_crossing) == Texts{"Waj", "jaW"});
  CHECK(reasons(town, Kind::signal_crossing) == Texts{"certain crossing_ref=pelican na"});
  CHECK(places(town, Kind::signals).empty());
  CHECK(places(town, Kind::zebra).empty());
}

TEST_CASE("a crossing and its stop lines are one signal crossing", "[mark][crossings]") {
  const BuiltTown town = built_town(draw_town(R"(
W     abc     E
w1 WabcE highway=tertiary
na highway=traffic_signals traffic_signals:direction=forward
nb highway=crossing crossing=traffic_signals
nc highway=traffic_signals traffic_signals:direction=backward
)",
                                              10),
                                    "GB-ENG");
  CHECK(places(town, Kind::signal_crossing) == Texts{"na"});
  CHECK(chances(town, Kind::signal_crossing) == Texts{"EcbaW", "WabcE"});
  CHECK(places(town, Kind::signals).empty());
}

TEST_CASE("a lit crossing 25 m from signals belongs to them", "[mark][crossings]") {
  const BuiltTown town = road_with("nj highway=traffic_signals\nnb" + pelican);
  CHECK(places(town, Kind::signals) == Texts{"nj"});
  CHECK(places(town, Kind::signal_crossing).empty());
  CHECK_THAT(chances(town, Kind::signals), Catch::VectorContains(std::string("WjbE ahead")));
}

TEST_CASE("a lit crossing 75 m from signals is a place of its own", "[mark][crossings]") {
  const BuiltTown town = road_with("nj highway=traffic_signals\nnc" + pelican);
  CHECK(places(town, Kind::signal_crossing) == Texts{"nc"});
}

TEST_CASE("a lit crossing near a junction doesn't make it a signalled one", "[mark][crossings]") {
  for (const std::string& tags :
       {pelican, std::string(" highway=traffic_signals crossing=traffic_signals\n"),
        std::string(" highway=traffic_signals traffic_signals=pedestrian_crossing\n")}) {
    const BuiltTown town = road_with("nb" + tags);
    CHECK(places(town, Kind::signals).empty());
    CHECK(chances(town, Kind::signal_crossing) == Texts{"Ebj", "jbE"});
    CHECK(places(town, Kind::emerge) == Texts{"nj"});
  }
}

}  // namespace
}  // namespace loopwright::test
