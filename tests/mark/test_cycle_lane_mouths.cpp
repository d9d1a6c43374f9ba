// Cycle lanes across a side road's mouth. Sources: OSM wiki Key:cycleway; Highway Code rule H3.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A main road drawn from west to east; the side road lies to its south, on its right.
BuiltTown tee(const std::string& main, std::string_view region = "GB-ENG") {
  return built_town("W   j   E\n.\n.\n    S\nw1 WjE highway=secondary " + main +
                        "\nw2 Sj highway=residential\nw3 EW highway=secondary\n",
                    region);
}

const Texts every_turn = {"EjS left", "SjE right", "SjW left", "WjS right"};

TEST_CASE("a main road without a cycle lane has none across the mouth", "[mark][cycle_mouth]") {
  CHECK(places(tee(""), Kind::cycle_lane_mouth).empty());
  CHECK(places(tee("cycleway=no"), Kind::cycle_lane_mouth).empty());
}

TEST_CASE("a cycle lane on the side road's side is crossed by every turn", "[mark][cycle_mouth]") {
  const BuiltTown town = tee("cycleway:right=lane");
  CHECK(chances(town, Kind::cycle_lane_mouth) == every_turn);
  CHECK(reasons(town, Kind::cycle_lane_mouth) == Texts{"certain cycleway:right=lane w1"});
}

TEST_CASE("a cycle lane on both sides is crossed at the mouth", "[mark][cycle_mouth]") {
  CHECK(chances(tee("cycleway=lane"), Kind::cycle_lane_mouth) == every_turn);
  CHECK(chances(tee("cycleway:both=track"), Kind::cycle_lane_mouth) == every_turn);
}

TEST_CASE("a cycle track mapped as its own way is only inferred to cross", "[mark][cycle_mouth]") {
  CHECK(reasons(tee("cycleway:right=separate"), Kind::cycle_lane_mouth) ==
        Texts{"inferred cycleway:right=separate w1"});
}

TEST_CASE("on a one-way road the cycle lane is on the near side", "[mark][cycle_mouth]") {
  CHECK(places(tee("oneway=yes cycleway=lane"), Kind::cycle_lane_mouth).empty());
  CHECK(chances(tee("oneway=yes cycleway=lane", "LI"), Kind::cycle_lane_mouth) ==
        Texts{"SjE right", "WjS right"});
  CHECK(chances(tee("oneway=yes cycleway=opposite_lane"), Kind::cycle_lane_mouth) ==
        Texts{"SjE right", "WjS right"});
}

TEST_CASE("a crossing for cyclists close to the mouth is crossed too", "[mark][cycle_mouth]") {
  const std::string drawing = R"(
W         j         E
          c
.
.
.
          S
w1 WjE highway=secondary
w2 Scj highway=residential
nc highway=crossing crossing=unmarked )";
  const auto with = [&](const std::string& tag) {
    return built_town(draw_town(drawing + tag + "\n", 12), "GB-ENG");
  };
  CHECK(chances(with("bicycle=designated"), Kind::cycle_lane_mouth) == every_turn);
  CHECK(reasons(with("bicycle=designated"), Kind::cycle_lane_mouth) ==
        Texts{"certain bicycle=designated nc"});
  CHECK(places(with("bicycle=yes"), Kind::cycle_lane_mouth).empty());
}

TEST_CASE("a cycle lane on the other side of the road isn't crossed", "[mark][cycle_mouth]") {
  CHECK(places(tee("cycleway:left=lane"), Kind::cycle_lane_mouth).empty());
}

TEST_CASE("lanes shared with cars or buses are no cycle lanes", "[mark][cycle_mouth]") {
  CHECK(places(tee("cycleway:right=shared_lane"), Kind::cycle_lane_mouth).empty());
  CHECK(places(tee("cycleway:right=share_busway"), Kind::cycle_lane_mouth).empty());
}

TEST_CASE("a cycle lane that begins at the junction isn't crossed", "[mark][cycle_mouth]") {
  const BuiltTown town = built_town(R"(
W   j   E
.
.
    S
w1 Wj highway=secondary
w3 jE highway=secondary cycleway:right=lane
w2 Sj highway=residential
)");
  CHECK(places(town, Kind::cycle_lane_mouth).empty());
}

}  // namespace
}  // namespace loopwright::test
