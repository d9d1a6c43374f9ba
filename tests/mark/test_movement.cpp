#include <catch2/catch.hpp>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {
namespace {

using road::Movement;

TEST_CASE("up to 45 degrees is still ahead, and beyond 160 is back round", "[road]") {
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
