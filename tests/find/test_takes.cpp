// Streets and junctions that a wish takes. Definition: DEVELOPERS.md, "Taking".
#include <catch2/catch.hpp>

#include "find/answer_of.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/proof/proof.hpp"
#include "loopwright/wish/not_taken.hpp"
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

Point middle(char from, char to) {
  const Point a = corner(from), b = corner(to);
  return {(a.lat_e7 + b.lat_e7) / 2, (a.lon_e7 + b.lon_e7) / 2};
}

wish::Wish wish_taking(std::initializer_list<wish::Take> takes,
                       std::initializer_list<std::string_view> wants, int minutes = 15) {
  wish::Wish wish;
  wish.home = middle('A', 'B');
  wish.start = {1795878000, 0};
  wish.minutes = minutes;
  wish.takes = takes;
  for (const std::string_view want : wants) wish.wants.push_back(wish::read_want(want));
  return wish;
}

/// Found, written and read again.
wish::Answer answer_to(const wish::Wish& wish) {
  const road::Roads roads = streets().roads();
  return file::read_answer(
      file::write_answer(test::answer_of(roads, wish, find::find_loops(roads, wish, {}))),
      "drawn.json");
}

std::string false_claim(const wish::Answer& answer) {
  return proof::prove(streets().roads(), answer, {}).false_claim.value_or("");
}

bool drives_on(const wish::Loop& loop, std::string_view street) {
  return std::ranges::any_of(
      loop.stretches, [&](const wish::LoopStretch& stretch) { return stretch.street == street; });
}

const wish::Take fold_lane{"Fold Lane", middle('K', 'L')};
const wish::Take south_street{"South Street", middle('N', 'O')};

}  // namespace

TEST_CASE("every loop takes a street that is to be taken", "[find][take]") {
  for (const std::string_view want : {"roundabout=1", "roundabout=max", "emerge:right=2"})
    for (const wish::Take& take : {fold_lane, south_street}) {
      wish::Wish wish = wish_taking({take}, {want}, 20);
      wish.alternatives = 2;
      const wish::Answer answer = answer_to(wish);
      CAPTURE(want, take.name);
      CHECK(!answer.shortfall);
      REQUIRE(!answer.loops.empty());
      for (const wish::Loop& loop : answer.loops) CHECK(drives_on(loop, take.name));
      CHECK(answer.wish.takes == wish.takes);
      CHECK(false_claim(answer) == "");
    }
}

TEST_CASE("a loop goes through a junction that is to be taken, and takes several", "[find][take]") {
  const wish::Wish wish =
      wish_taking({{"the corner", corner('O')}, fold_lane}, {"roundabout=1"}, 20);
  const wish::Answer answer = answer_to(wish);
  REQUIRE(answer.loops.size() == 1);
  CHECK(!answer.shortfall);
  CHECK(drives_on(answer.loops[0], "Fold Lane"));
  CHECK(false_claim(answer) == "");
}

TEST_CASE("what can't be taken in the minutes is told", "[find][take]") {
  const wish::Answer answer = answer_to(wish_taking({south_street}, {}, 4));
  REQUIRE(answer.shortfall);
  CHECK(answer.shortfall->not_taken == std::vector<std::string>{"South Street"});
  CHECK(answer.shortfall->why.find("South Street") != std::string::npos);
  CHECK(false_claim(answer) == "");
}

TEST_CASE("each that isn't taken is told with its own reason", "[find][take]") {
  wish::Wish wish = wish_taking({south_street, fold_lane}, {"roundabout=9"}, 4);
  wish.keep_offs = {{"the lane", {fold_lane.at}}};
  const wish::Answer answer = answer_to(wish);
  REQUIRE(answer.shortfall);
  CHECK(answer.shortfall->not_taken == std::vector<std::string>{"South Street", "Fold Lane"});
  const std::string& why = answer.shortfall->why;
  const std::size_t begins = why.find(wish::not_taken_because);
  REQUIRE(begins != std::string::npos);
  CHECK(why.find("'South Street': there and home takes ", begins) != std::string::npos);
  CHECK(why.find(" of 4 minutes", begins) != std::string::npos);
  CHECK(why.ends_with(
      "'Fold Lane': kept off, or only to be reached through what is: --keep-off 'the lane'"));
  CHECK(false_claim(answer) == "");
}

TEST_CASE("a loop that doesn't take it, or is said not to and does, is refused", "[find][take]") {
  wish::Wish wish = wish_taking({}, {"roundabout=1"});
  wish.keep_offs = {{south_street.name, {south_street.at}}};
  wish::Answer answer = answer_to(wish);
  REQUIRE(answer.loops.size() == 1);
  answer.wish.takes = {south_street};
  CHECK(false_claim(answer).find("doesn't take 'South Street'") != std::string::npos);

  wish::Answer taking = answer_to(wish_taking({fold_lane}, {"roundabout=1"}, 20));
  REQUIRE(taking.loops.size() == 1);
  taking.shortfall.emplace();
  taking.shortfall->why = "none";
  taking.shortfall->not_taken = {"Fold Lane"};
  CHECK(false_claim(taking).find("'Fold Lane' is taken") != std::string::npos);
}

}  // namespace loopwright::test
