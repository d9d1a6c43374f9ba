#include <catch2/catch.hpp>

#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;

TEST_CASE("an answer without loops that says why is true", "[proof]") {
  const BuiltTown town = lesson_town();
  wish::Answer answer = true_answer(town, "ABrstuLWZAB");
  answer.loops.clear();
  answer.shortfall.emplace().why = "no loop of 57 to 60 minutes was found";
  const proof::Proof proof = proof::prove(town.roads(), answer, setting_of(town.roads()));
  CHECK(proof.false_claim.value_or("") == "");
  CHECK(proof.loops == 0);
  CHECK(proof.claims > 0);
}

TEST_CASE("a true loop is believed, and its claims are counted", "[proof]") {
  const BuiltTown town = lesson_town();
  wish::Wish wish;
  wish.wants = {{road::Kind::roundabout, road::Movement::right, 1}};
  wish.avoids = {{road::Kind::signals}};
  wish.level_given = true;
  const proof::Proof proof = proof::prove(town.roads(), true_answer(town, "ABrstuLWZAB", wish),
                                           setting_of(town.roads()));
  CHECK(proof.false_claim.value_or("") == "");
  CHECK(proof.loops == 1);
  // Ten stretches with name, street, length, limit, three times, access and rules each, at least.
  CHECK(proof.claims > 10 * 9);
}

TEST_CASE("the lesson has the passes one sees in its drawing", "[proof]") {
  const BuiltTown town = lesson_town();
  const wish::Answer answer = true_answer(town, "ABrstuLWZAB");
  const auto has = [&](road::Kind kind, road::Movement movement, int exit, std::size_t first,
                       std::size_t last) {
    for (const wish::Pass& pass : answer.loops[0].passes)
      if (pass.kind == kind && pass.movement == movement && pass.exit == exit &&
          pass.first == first && pass.last == last)
        return true;
    return false;
  };
  using road::Kind;
  using road::Movement;
  CHECK(has(Kind::emerge, Movement::right, 0, 0, 1));
  CHECK(has(Kind::roundabout, Movement::right, 3, 1, 5));
  CHECK(has(Kind::level_crossing, Movement::none, 0, 5, 6));
  CHECK(has(Kind::zebra, Movement::none, 0, 7, 8));
  CHECK(has(Kind::narrow_road, Movement::none, 0, 7, 8));
  CHECK(has(Kind::bus_lane, Movement::none, 0, 6, 6));
}

TEST_CASE("drives that keep to every ban are believed", "[proof]") {
  const BuiltTown town = banned_town();
  // Round the north-west block; along Middle Street; from East Street by the only way on, back
  // north; down the one-way and out of a dead end; round the dead end of Stub Close;
  // round in front of the bollard.
  for (const char* letters :
       {"ADEBAD", "ADEFCBAD", "CFJIEFC", "DHPOPIEBADH", "ADRDA", "EFGKGFJIEF"}) {
    CAPTURE(letters);
    CHECK(falsehood(town, own_drive(town, letters)) == "");
  }
}

TEST_CASE("an end that isn't home is believed when the drive gets there", "[proof]") {
  const BuiltTown town = banned_town();
  wish::Answer answer = own_drive(town, "ADEFCB");
  CHECK(falsehood(town, answer) ==
        "loop 1: it ends 252.8 m from the place asked, more than 150.0 m");
  const road::Roads roads = town.roads();
  answer.wish.end = roads.nodes[town.node('B').index()].at;
  CHECK(falsehood(town, answer) == "");
}
