// Emerging, turning off and crossroads. Source for signs: OSM wiki Key:stop:direction.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A T-junction whose stem comes from the south, with a point g 25 m before it.
BuiltTown tee(const std::string& through, const std::string& stem, const std::string& more = "",
              std::string_view region = "GB-ENG") {
  return built_town(std::string(R"(
W   j   E
    g
.
.
    S
w1 WjE highway=)") + through +
                        "\nw2 Sgj highway=" + stem + "\n" + more,
                    region);
}

TEST_CASE("a road without side roads has no junctions", "[mark][junctions]") {
  const BuiltTown town = built_town("W   E\nw1 WE highway=tertiary\n");
  for (const Kind kind : {Kind::emerge, Kind::turn_off, Kind::crossroads}) {
    CHECK(places(town, kind).empty());
  }
}

TEST_CASE("out of a smaller road one emerges left and right, and into it one turns off",
          "[mark][junctions]") {
  const BuiltTown town = tee("secondary", "residential");
  CHECK(chances(town, Kind::emerge) == Texts{"SjE right", "SjW left"});
  CHECK(chances(town, Kind::turn_off) == Texts{"EjS left", "WjS right"});
  CHECK(reasons(town, Kind::emerge) ==
        Texts{"inferred highway=residential meets highway=secondary nj"});
  CHECK(chances(town, Kind::crossroads).empty());
}

TEST_CASE("of three roads of one class, the one that ends at the straight two is smaller",
          "[mark][junctions]") {
  const BuiltTown town = tee("residential", "residential");
  CHECK(chances(town, Kind::emerge) == Texts{"SjE right", "SjW left"});
  CHECK(reasons(town, Kind::emerge) ==
        Texts{"inferred highway=residential ends at a straight road nj"});
}

TEST_CASE("a give way sign makes it certain, whatever the classes", "[mark][junctions]") {
  const BuiltTown town = tee("residential", "secondary", "ng highway=give_way\n");
  CHECK(chances(town, Kind::emerge) == Texts{"gjE right", "gjW left"});
  CHECK(reasons(town, Kind::emerge) == Texts{"certain highway=give_way ng"});
  CHECK(reasons(town, Kind::turn_off) == Texts{"certain highway=give_way ng"});
}

TEST_CASE("a sign that faces the other way is not this junction's", "[mark][junctions]") {
  const BuiltTown town = tee("residential", "residential", "ng highway=stop direction=backward\n");
  CHECK(reasons(town, Kind::emerge) ==
        Texts{"inferred highway=residential ends at a straight road nj"});
}

TEST_CASE("three equal roads that fork say nothing", "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
A       B
.
    j
.
.
    S
w1 Aj highway=residential
w2 Bj highway=residential
w3 Sj highway=residential
)");
  CHECK(places(town, Kind::emerge).empty());
  CHECK(places(town, Kind::turn_off).empty());
}

TEST_CASE("a private or service road makes no junction", "[mark][junctions]") {
  CHECK(places(tee("secondary", "service"), Kind::turn_off).empty());
  CHECK(places(tee("secondary", "residential access=private"), Kind::turn_off).empty());
}

TEST_CASE("a one-way street out of which nobody comes is turned into only", "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
W   j   E
.
.
S   T
w1 WjE highway=tertiary
w2 jT highway=residential oneway=yes
w3 TSW highway=residential
)");
  CHECK(chances(town, Kind::turn_off) == Texts{"EjT left", "WjT right"});
  CHECK(chances(town, Kind::emerge).empty());
}

TEST_CASE("a slip that runs in nearly straight is no emerging", "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
W       j       E
S               T
w1 WjE highway=secondary oneway=yes
w2 Sj highway=secondary_link oneway=yes
w3 ETSW highway=secondary
)");
  CHECK(places(town, Kind::emerge).empty());
  CHECK(places(town, Kind::turn_off).empty());
}

TEST_CASE("the smaller arm of a Y is turned into and out of, by the side it lies on",
          "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
W       j       E
.
.
                S
w1 WjE highway=secondary
w2 jS highway=residential
)");
  CHECK(chances(town, Kind::turn_off) == Texts{"EjS left", "WjS right"});
  CHECK(chances(town, Kind::emerge) == Texts{"SjE right", "SjW left"});
}

TEST_CASE("where the main road bends, going straight on is turning off", "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
A   j   C
.
.
    B
w1 AjB highway=secondary
w2 jC highway=residential
)");
  CHECK(chances(town, Kind::turn_off) == Texts{"AjC left", "BjC right"});
  CHECK(chances(town, Kind::emerge) == Texts{"CjA right", "CjB left"});
}

TEST_CASE("a banned turn is no chance", "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
W   j   E
.
.
    S
w1 Wj highway=secondary
w2 jE highway=secondary
w3 Sj highway=residential
r1 no_right_turn from=w3 via=j to=w2
)");
  CHECK(chances(town, Kind::emerge) == Texts{"SjW left"});
  CHECK(chances(town, Kind::turn_off) == Texts{"EjS left", "WjS right"});
}

TEST_CASE("beside one carriageway of a dual carriageway one emerges and turns off left",
          "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
      N
.
.
W     x     E
V           F
w1 WxE highway=primary oneway=yes dual_carriageway=yes
w2 FV highway=primary oneway=yes dual_carriageway=yes
w3 Nx highway=residential
w5 WV highway=primary
w6 FE highway=primary
)");
  CHECK(chances(town, Kind::emerge) == Texts{"NxE left"});
  CHECK(chances(town, Kind::turn_off) == Texts{"WxN left"});
}

TEST_CASE("a T-junction on a dual carriageway with a gap is no crossroads", "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
      N
.
.
W     x     E
V     y     F
w1 WxE highway=primary oneway=yes dual_carriageway=yes
w2 FyV highway=primary oneway=yes dual_carriageway=yes
w3 Nx highway=residential
w4 xy highway=residential
w5 WV highway=primary
w6 FE highway=primary
)");
  CHECK(places(town, Kind::crossroads).empty());
  CHECK(chances(town, Kind::emerge) == Texts{"NxE left", "xyV right"});
  CHECK(chances(town, Kind::turn_off) == Texts{"Fyx right", "WxN left"});
}

TEST_CASE("four roads are a crossroads in every movement", "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
    N
.
.
W   x   E
.
.
    S
w1 WxE highway=tertiary
w2 NxS highway=residential
)");
  CHECK(chances(town, Kind::crossroads) == Texts{"ExN right", "ExS left", "ExW ahead", "NxE left",
                                                 "NxS ahead", "NxW right", "SxE right", "SxN ahead",
                                                 "SxW left", "WxE ahead", "WxN left", "WxS right"});
  CHECK(reasons(town, Kind::crossroads) == Texts{"inferred four roads meet nx"});
  CHECK(places(town, Kind::emerge).empty());
  const auto& all = town.built.tables.places;
  CHECK(std::ranges::find(all, Kind::crossroads, &road::Place::kind)->arms == 4);
}

TEST_CASE("a give way sign makes a crossroads certain", "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
    N
.
.
W   x   E
    g
.
    S
w1 WxE highway=residential
w2 NxgS highway=residential
ng highway=give_way
)");
  CHECK(reasons(town, Kind::crossroads) == Texts{"certain highway=give_way ng"});
}

TEST_CASE("three roads and a drive are no crossroads", "[mark][junctions]") {
  const BuiltTown town = built_town(R"(
    N
.
.
W   x   E
.
.
    S
w1 WxE highway=tertiary
w2 Sx highway=residential
w3 Nx highway=service
)");
  CHECK(places(town, Kind::crossroads).empty());
  CHECK(chances(town, Kind::emerge) == Texts{"SxE right", "SxW left"});
}

}  // namespace
}  // namespace loopwright::test
