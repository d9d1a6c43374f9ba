// Which places of a loop get a picture, and in which order.
#include <catch2/catch.hpp>

#include "draw/driven.hpp"
#include "support/honest_loop.hpp"

namespace loopwright::test {

TEST_CASE("a loop without junctions of note has no pictures", "[draw]") {
  const BuiltTown town = built_town(R"(
  A  B  C
     D
   w1 ABC highway=residential
   w2 BD highway=residential
)");
  const wish::Loop loop = driven(town, "AB");
  CHECK(draw::worth_sketching(town.roads(), loop).empty());
}

TEST_CASE("each way through a place once, the hardest first", "[draw]") {
  // Round the block twice: lights at B, a mini at C.
  const BuiltTown town = built_town(R"(
     P   Q
  A  B   C  R
     D   E
     T   U
   w1 ABCR highway=tertiary
   w2 PBDT highway=residential
   w3 QCEU highway=residential
   w4 DE highway=residential
   nB highway=traffic_signals
   nC highway=mini_roundabout
)");
  const wish::Answer answer = honest_answer(town, "DBCEDBCED");
  const wish::Loop& loop = answer.loops[0];
  const auto places = draw::worth_sketching(town.roads(), loop);
  REQUIRE(places.size() == 2);
  const auto ends_at = [&](draw::At at) {
    return town.roads().to_node(loop.stretches[at.entry].stretch);
  };
  // Lights to the right are harder (4) than a mini (3): src/rules/kinds.txt.
  CHECK(ends_at(places[0]) == town.node('B'));
  CHECK(ends_at(places[1]) == town.node('C'));
}

TEST_CASE("what the instructor drives needs no picture", "[draw]") {
  const BuiltTown town = built_town(R"(
     P   Q
  A  B   C  R
   w1 ABCR highway=tertiary
   w2 PB highway=residential
   w3 QC highway=residential
   nB highway=traffic_signals
   nC highway=mini_roundabout
)");
  wish::Loop loop = honest_answer(town, "ABCR").loops[0];
  CHECK(draw::worth_sketching(town.roads(), loop).size() == 2);
  // The learner drives from the road between B and C on.
  loop.practice = {1, loop.stretches.size() - 1};
  const auto places = draw::worth_sketching(town.roads(), loop);
  REQUIRE(places.size() == 1);
  CHECK(town.roads().to_node(loop.stretches[places[0].entry].stretch) == town.node('C'));
}

}  // namespace loopwright::test
