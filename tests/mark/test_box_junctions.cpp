// Boxes of yellow lines; no tag for them is settled. Source of the rule: Highway Code rule 174.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

BuiltTown cross(const std::string& lines) {
  return built_town(R"(
    N
.
.
W   x   E
.
.
    S
w1 WxE highway=primary
w3 NxS highway=residential
)" + lines);
}

TEST_CASE("a plain crossroads has no box", "[mark][box]") {
  CHECK(places(cross(""), Kind::box_junction).empty());
}

TEST_CASE("a box on the junction is passed in every movement", "[mark][box]") {
  for (const std::string tag :
       {"box_junction=yes", "road_marking=box_junction", "junction=yellow_box"}) {
    const BuiltTown town = cross("nx highway=traffic_signals " + tag + "\n");
    CHECK(chances(town, Kind::box_junction).size() == 12);
    CHECK(chances(town, Kind::box_junction)[0] == "ExN right");
    CHECK(reasons(town, Kind::box_junction) == Texts{"certain " + tag + " nx"});
  }
}

TEST_CASE("a box before a fire station is driven over ahead", "[mark][box]") {
  const BuiltTown town = built_town(
      "W   b\n.\n.\n.\n    E\nw1 WbE highway=primary\n"
      "nb road_marking=box_junction\n");
  CHECK(chances(town, Kind::box_junction) == Texts{"EbW ahead", "WbE ahead"});
}

TEST_CASE("a box drawn on the road between two side roads is one place", "[mark][box]") {
  const BuiltTown town = built_town(R"(
    N
.
.
W   ab   E
.
.
     S
w1 Wa highway=primary
w2 ab highway=primary box_junction=yes
w3 bE highway=primary
w4 Na highway=residential
w5 Sb highway=residential
)");
  CHECK(places(town, Kind::box_junction) == Texts{"w2"});
  CHECK(chances(town, Kind::box_junction) ==
        Texts{"EbS left", "EbaN right", "EbaW ahead", "NaW right", "NabE left", "NabS ahead",
              "SbE right", "SbaN ahead", "SbaW left", "WaN left", "WabE ahead", "WabS right"});
}

TEST_CASE("junction=yes on a node is no box", "[mark][box]") {
  CHECK(places(cross("nx junction=yes name=Mill_Cross\n"), Kind::box_junction).empty());
  CHECK(places(cross("nx box_junction=no\n"), Kind::box_junction).empty());
}

}  // namespace
}  // namespace loopwright::test
