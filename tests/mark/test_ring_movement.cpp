// What an instructor calls a way through a roundabout. Source of the words: Highway Code rule 186
// (the first exit, the last ones, and those between); the angles are ours.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A ring of 60 m with six places for arms; P and Q lie 35 degrees off straight on from S; 10 m a
/// character. B is the end of a road that bends north behind the ring.
constexpr std::string_view ring = R"(
          N
.
    P           Q
.
                   B
.
.
        p n q
.
.
W      w     eb     E
.
.
          s
.
.
.
.
.
.
          S
w2 Ss highway=tertiary
)";

BuiltTown ring_town(const std::string& roads) {
  return built_town(
      draw_town(std::string(ring) + "w1 swpnqes highway=tertiary junction=roundabout\n" + roads,
                10),
      "GB-ENG");
}

/// The ways from the south arm in driving order: where to, the movement, the exit's number.
Texts from_south(const BuiltTown& town) {
  Texts all = chances(town, Kind::roundabout);
  std::erase_if(all, [](const std::string& text) { return text.front() != 'S'; });
  std::ranges::sort(all, {}, [](const std::string& text) { return text.find(' '); });
  for (std::string& text : all) text.erase(0, text.find(' ') - 1);
  return all;
}

}  // namespace

TEST_CASE("of three exits the one across the roundabout is ahead", "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w3 Ww highway=tertiary\n"
      "w4 Nn highway=tertiary\n"
      "w5 Ee highway=tertiary\n");
  CHECK(from_south(town) == Texts{"W left 1", "N ahead 2", "E right 3", "S round 4"});
}

TEST_CASE("an exit that bends straight on behind the roundabout is still a right turn",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w3 Ww highway=tertiary\n"
      "w4 Nn highway=tertiary\n"
      "w5 ebB highway=tertiary\n");
  CHECK_THAT(from_south(town), Catch::VectorContains(std::string("B right 3")));
}

TEST_CASE("where two exits fork ahead and there is no other, one is left and one right",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w3 Pp highway=tertiary\n"
      "w4 Qq highway=tertiary\n");
  CHECK(from_south(town) == Texts{"P left 1", "Q right 2", "S round 3"});
}

TEST_CASE("of two exits that fork ahead the last of all is right", "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w3 Ww highway=tertiary\n"
      "w4 Pp highway=tertiary\n"
      "w5 Qq highway=tertiary\n");
  CHECK(from_south(town) == Texts{"W left 1", "P ahead 2", "Q right 3", "S round 4"});
}

TEST_CASE("two exits that fork ahead between a left and a right one are both ahead",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w3 Ww highway=tertiary\n"
      "w4 Pp highway=tertiary\n"
      "w5 Qq highway=tertiary\n"
      "w6 Ee highway=tertiary\n");
  CHECK(from_south(town) == Texts{"W left 1", "P ahead 2", "Q ahead 3", "E right 4", "S round 5"});
}

TEST_CASE("beside an exit straight ahead, slanting ones are left and right",
          "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w3 Pp highway=tertiary\n"
      "w4 Nn highway=tertiary\n"
      "w5 Qq highway=tertiary\n");
  CHECK(from_south(town) == Texts{"P left 1", "N ahead 2", "Q right 3", "S round 4"});
}

TEST_CASE("a drive to a car park doesn't make the road beside it a turn", "[mark][roundabouts]") {
  const BuiltTown town = ring_town(
      "w3 Pp highway=tertiary\n"
      "w4 Nn highway=service\n");
  CHECK(from_south(town) == Texts{"P ahead 1", "N ahead", "S round 2"});
}

TEST_CASE("where one drives on the right, the first of two exits that fork ahead is right",
          "[mark][roundabouts]") {
  const BuiltTown town = built_town(draw_town(std::string(ring) + "w1 seqnpws highway=tertiary "
                                                                  "junction=roundabout\n"
                                                                  "w3 Ww highway=tertiary\n"
                                                                  "w4 Pp highway=tertiary\n"
                                                                  "w5 Qq highway=tertiary\n",
                                              10),
                                    "LI");
  CHECK(from_south(town) == Texts{"Q right 1", "P ahead 2", "W left 3", "S round 4"});
}

}  // namespace loopwright::test
