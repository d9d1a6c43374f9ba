#include <catch2/catch.hpp>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::Movement;

TEST_CASE("every kind has a hardness from 1 to 5 for every movement", "[mark]") {
  for (std::size_t k = 0; k < road::kind_count; ++k) {
    for (const Movement m :
         {Movement::none, Movement::left, Movement::ahead, Movement::right, Movement::round}) {
      const int hardness = hardness_of(static_cast<Kind>(k), m);
      CHECK(hardness >= 1);
      CHECK(hardness <= 5);
    }
  }
}

// The trade's catalogue of practice features, column H (this project's judgement).
TEST_CASE("crossing oncoming traffic is harder than turning off on the near side", "[mark]") {
  CHECK(hardness_of(Kind::turn_off, Movement::left) == 1);
  CHECK(hardness_of(Kind::turn_off, Movement::right) == 2);
  CHECK(hardness_of(Kind::emerge, Movement::left) == 2);
  CHECK(hardness_of(Kind::emerge, Movement::right) == 3);
  CHECK(hardness_of(Kind::signals, Movement::ahead) == 2);
  CHECK(hardness_of(Kind::signals, Movement::right) == 4);
}

TEST_CASE("roundabouts rise from mini to signals", "[mark]") {
  CHECK(hardness_of(Kind::mini_roundabout, Movement::left) == 3);
  CHECK(hardness_of(Kind::roundabout, Movement::round) == 3);
  CHECK(hardness_of(Kind::multi_lane_roundabout, Movement::right) == 4);
  CHECK(hardness_of(Kind::signal_roundabout, Movement::right) == 5);
  CHECK(hardness_of(Kind::motorway, Movement::none) == 5);
}

TEST_CASE("up to 45 degrees is still ahead, and beyond 160 is back round", "[mark]") {
  CHECK(movement_of(0) == Movement::ahead);
  CHECK(movement_of(-45) == Movement::ahead);
  CHECK(movement_of(45) == Movement::ahead);
  CHECK(movement_of(-46) == Movement::left);
  CHECK(movement_of(46) == Movement::right);
  CHECK(movement_of(160) == Movement::right);
  CHECK(movement_of(161) == Movement::round);
  CHECK(movement_of(-180) == Movement::round);
}

}  // namespace
}  // namespace loopwright::mark
