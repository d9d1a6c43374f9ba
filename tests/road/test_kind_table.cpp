#include <catch2/catch.hpp>

#include "loopwright/road/kind_table.hpp"

namespace loopwright::road {
namespace {

TEST_CASE("every kind has a hardness from 1 to 5 for every movement", "[road]") {
  for (std::size_t k = 0; k < kind_count; ++k) {
    for (const Movement m :
         {Movement::none, Movement::left, Movement::ahead, Movement::right, Movement::round}) {
      const int hardness = hardness_of(static_cast<Kind>(k), m);
      CHECK(hardness >= 1);
      CHECK(hardness <= 5);
    }
  }
}

// The trade's catalogue of practice features, column H (this project's judgement).
TEST_CASE("crossing oncoming traffic is harder than turning off on the near side", "[road]") {
  CHECK(hardness_of(Kind::turn_off, Movement::left) == 1);
  CHECK(hardness_of(Kind::turn_off, Movement::right) == 2);
  CHECK(hardness_of(Kind::emerge, Movement::left) == 2);
  CHECK(hardness_of(Kind::emerge, Movement::right) == 3);
  CHECK(hardness_of(Kind::signals, Movement::ahead) == 2);
  CHECK(hardness_of(Kind::signals, Movement::right) == 4);
}

TEST_CASE("roundabouts rise from mini to signals", "[road]") {
  CHECK(hardness_of(Kind::mini_roundabout, Movement::left) == 3);
  CHECK(hardness_of(Kind::roundabout, Movement::round) == 3);
  CHECK(hardness_of(Kind::multi_lane_roundabout, Movement::right) == 4);
  CHECK(hardness_of(Kind::signal_roundabout, Movement::right) == 5);
  CHECK(hardness_of(Kind::motorway, Movement::none) == 5);
}

TEST_CASE("a movement without a row of its own is as hard as its kind", "[road]") {
  CHECK(hardness_of(Kind::emerge, Movement::ahead) == kind_row(Kind::emerge).hardness);
}

TEST_CASE("what comes before a kind is never harder than it, and no kind leads back to itself",
          "[road]") {
  for (const KindRow& row : kind_rows()) {
    for (const Kind before : row.before) {
      CAPTURE(name(row.kind), name(before));
      CHECK(kind_row(before).hardness <= row.hardness);
    }
  }
  for (std::size_t k = 0; k < kind_count; ++k) {
    std::vector<Kind> next = kind_row(static_cast<Kind>(k)).before;
    for (std::size_t steps = 0; !next.empty(); ++steps) {
      REQUIRE(steps < 500);
      const Kind kind = next.back();
      next.pop_back();
      REQUIRE(kind != static_cast<Kind>(k));
      next.insert(next.end(), kind_row(kind).before.begin(), kind_row(kind).before.end());
    }
  }
}

TEST_CASE("only manoeuvres take minutes of their own", "[road]") {
  for (const Kind kind : all_kinds()) {
    CAPTURE(name(kind));
    CHECK((kind_row(kind).minutes > 0) == (form_of(kind) == KindForm::manoeuvre));
  }
}

}  // namespace
}  // namespace loopwright::road
