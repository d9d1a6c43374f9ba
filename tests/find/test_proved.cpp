// What the search finds is written, read again and proved by code of its own, from doors in the
// middle of streets and at their very corners.
#include <catch2/catch.hpp>

#include "find/answer_of.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/proof/proof.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {

namespace {

const BuiltTown& streets() {
  static const BuiltTown town = built_town(draw_town(crossing_streets, 100), "GB-ENG");
  return town;
}

Point corner(char letter) {
  const road::Roads roads = streets().roads();
  return roads.nodes[streets().node(letter).index()].at;
}

/// The false claim of the loops found for a wish, or "" when all holds.
std::string false_claim(const wish::Wish& wish) {
  const road::Roads roads = streets().roads();
  auto found = find::find_loops(roads, wish, {});
  const wish::Answer answer = test::answer_of(roads, wish, std::move(found));
  const wish::Answer read = file::read_answer(file::write_answer(answer), "drawn.json");
  return proof::prove(roads, read, {}).false_claim.value_or("");
}

wish::Wish wish_from(Point home, std::initializer_list<std::string_view> wants) {
  wish::Wish wish;
  wish.home = home;
  wish.start = {1795878000, 0};
  wish.minutes = 15;
  wish.alternatives = 2;
  for (const std::string_view want : wants) wish.wants.push_back(wish::read_want(want));
  return wish;
}

}  // namespace

TEST_CASE("loops from every corner of the town agree with the map's rules", "[find]") {
  for (const char letter : std::string("ABCDEGHIJKLMNOP"))
    CHECK(false_claim(wish_from(corner(letter), {"roundabout=1"})) == "");
}

TEST_CASE("loops to another end, and as many as fit, agree with the map's rules", "[find]") {
  for (const char letter : std::string("CKP")) {
    wish::Wish wish = wish_from(corner('A'), {"roundabout=max", "level-crossing=1"});
    wish.end = corner(letter);
    CHECK(false_claim(wish) == "");
  }
}

TEST_CASE("times are by the learner's own pace, and proved by no other", "[find]") {
  const road::Roads roads = streets().roads();
  wish::Wish wish = wish_from(corner('A'), {"roundabout=1"});
  wish.alternatives = 1;
  wish.pace = 1.25;
  CHECK(false_claim(wish) == "");
  wish::Answer answer = test::answer_of(roads, wish, find::find_loops(roads, wish, {}));
  REQUIRE(answer.loops.size() == 1);
  answer.wish.pace = wish::usual_pace;
  const std::string other = proof::prove(roads, answer, {}).false_claim.value_or("");
  CHECK(other.find("likely time") != std::string::npos);
}

TEST_CASE("a shortfall agrees with the loops beside it", "[find]") {
  CHECK(false_claim(wish_from(corner('M'), {"zebra=2", "mini-roundabout=9"})) == "");
}

TEST_CASE("what is wanted by one movement and avoided by another is no contradiction", "[find]") {
  wish::Wish wish = wish_from(corner('A'), {"emerge:right=1"});
  wish.avoids = {wish::read_avoid("emerge:right")};
  const auto barred = find::find_loops(streets().roads(), wish, {});
  REQUIRE(barred.shortfall);
  CHECK(barred.shortfall->why == "emerge:right is wanted and avoided by the same wish");
  CHECK(false_claim(wish) == "");
  wish.avoids = {wish::read_avoid("emerge:left"), wish::read_avoid("roundabout:right")};
  const auto found = find::find_loops(streets().roads(), wish, {});
  CHECK((!found.shortfall || !found.shortfall->why.ends_with("by the same wish")));
  CHECK(false_claim(wish) == "");
}

TEST_CASE("what is wanted and avoided by one wish is told", "[find]") {
  wish::Wish wish = wish_from(corner('A'), {"level-crossing=1"});
  wish.avoids = {{road::Kind::level_crossing}};
  const auto found = find::find_loops(streets().roads(), wish, {});
  REQUIRE(found.shortfall);
  CHECK(found.shortfall->why == "level-crossing is wanted and avoided by the same wish");
  CHECK(false_claim(wish) == "");
}

TEST_CASE("an end too far for the minutes is told with the time it takes", "[find]") {
  wish::Wish wish = wish_from(corner('A'), {});
  wish.end = corner('P');
  wish.minutes = 1;
  const auto found = find::find_loops(streets().roads(), wish, {});
  REQUIRE(found.shortfall);
  CHECK(found.loops.empty());
  CHECK(found.shortfall->why.starts_with("the drive to the end alone takes "));
  CHECK(*found.shortfall->least_minutes > 1);
}

}  // namespace loopwright::test
