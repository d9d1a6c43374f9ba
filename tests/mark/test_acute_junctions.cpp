// Turning by 120 degrees or more. The angle is the trade's usage, no published source draws a line.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A side road that meets a straight one from the south-west at about 21 degrees.
BuiltTown slanting(const std::string& minor) {
  return built_town(R"(
W       j       E
.
.
S
w1 WjE highway=secondary
w2 Sj highway=)" + minor +
                    "\n");
}

TEST_CASE("at a square junction nothing is acute", "[mark][acute]") {
  const BuiltTown town = built_town(R"(
W   j   E
.
.
    S
w1 WjE highway=secondary
w2 Sj highway=residential
)");
  CHECK(places(town, Kind::acute_junction).empty());
}

TEST_CASE("turning back into a road that slants away is an acute turn", "[mark][acute]") {
  const BuiltTown town = slanting("residential");
  CHECK(chances(town, Kind::acute_junction) == Texts{"SjW left", "WjS right"});
  CHECK(reasons(town, Kind::acute_junction) ==
        Texts{"inferred roads meet at 60 degrees or less nj"});
  CHECK(places(town, Kind::acute_junction) == Texts{"nj"});
}

TEST_CASE("an acute turn is emerging or turning off as well", "[mark][acute]") {
  const BuiltTown town = slanting("residential");
  CHECK(chances(town, Kind::emerge) == Texts{"SjE right", "SjW left"});
  CHECK(chances(town, Kind::turn_off) == Texts{"EjS left", "WjS right"});
}

TEST_CASE("a road that swings round before it meets the other isn't acute", "[mark][acute]") {
  const BuiltTown town = built_town(R"(
W       j       E
        .
        g
S
w1 WjE highway=secondary
w2 Sgj highway=residential
)");
  CHECK(places(town, Kind::acute_junction).empty());
  CHECK(chances(town, Kind::emerge) == Texts{"SjE right", "SjW left"});
}

TEST_CASE("driving round a loop at a street's end again is no turn", "[mark][acute]") {
  const BuiltTown town = built_town(R"(
S   j   b

        c
w1 Sj highway=residential
w2 jbcj highway=residential
)");
  CHECK(places(town, Kind::acute_junction).empty());
}

TEST_CASE("roads that meet at 63 degrees aren't acute", "[mark][acute]") {
  const BuiltTown town = built_town(R"(
W   j   E
.
.
.
  S
w1 WjE highway=secondary
w2 Sj highway=residential
)");
  CHECK(places(town, Kind::acute_junction).empty());
}

TEST_CASE("nobody turns back out of a slip road", "[mark][acute]") {
  CHECK(places(slanting("secondary_link"), Kind::acute_junction).empty());
}

TEST_CASE("where one drives on the right an acute turn is the same turn", "[mark][acute]") {
  const BuiltTown town = built_town(R"(
W       j       E
.
.
S
w1 WjE highway=secondary
w2 Sj highway=residential
)",
                                    "LI");
  CHECK(chances(town, Kind::acute_junction) == Texts{"SjW left", "WjS right"});
}

TEST_CASE("every acute junction is found, behind square ones too", "[mark][acute]") {
  const BuiltTown town = built_town(R"(
A   B           C   D
.
.
    T       R
w1 ABCD highway=secondary
w2 TB highway=residential
w3 RC highway=residential
)");
  CHECK(chances(town, Kind::acute_junction) == Texts{"BCR right", "RCB left"});
}

}  // namespace
}  // namespace loopwright::test
