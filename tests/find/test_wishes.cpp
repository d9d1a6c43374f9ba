// What a wish may say beyond kinds and minutes: what is welcome, joined, kept off, spaced, capped. Each loop is
// written, read again and proved.
#include <catch2/catch.hpp>

#include <algorithm>

#include "loopwright/base/error.hpp"
#include "loopwright/file/loop_file.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/proof/proof.hpp"
#include "loopwright/wish/resolve.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

const BuiltTown& streets() {
  static const BuiltTown town = built_town(draw_town(crossing_streets, 100), "GB-ENG");
  return town;
}

Point at(char letter) {
  const road::Roads roads = streets().roads();
  return roads.nodes[streets().node(letter).index()].at;
}

Point between(char one, char other) {
  const Point a = at(one), b = at(other);
  return {a.lat_e7 / 2 + b.lat_e7 / 2, a.lon_e7 / 2 + b.lon_e7 / 2};
}

/// From Lantern Row on a Saturday at 15:00.
wish::Wish wish_for(int minutes, std::initializer_list<std::string_view> wants) {
  wish::Wish wish;
  wish.home = between('A', 'B');
  wish.start = {1795878000, 0};
  wish.minutes = minutes;
  for (const std::string_view want : wants) wish.wants.push_back(wish::read_want(want));
  return wish;
}

/// The answer as its file has it; proved.
wish::Answer answer_to(const wish::Wish& wish) {
  const road::Roads roads = streets().roads();
  find::FindResult found = find::find_loops(roads, wish, setting_of(roads));
  wish::Answer answer;
  answer.area = {"drawn.area", roads.info().id, roads.info().region.code, "left", "", ""};
  answer.wish = wish;
  answer.loops = std::move(found.loops);
  answer.shortfall = std::move(found.shortfall);
  answer.fewer_because = std::move(found.fewer_because);
  wish::Answer read = file::read_answer(file::write_answer(answer), "drawn.json");
  CHECK(proof::prove(roads, read, setting_of(roads)).false_claim.value_or("") == "");
  return read;
}

wish::Loop loop_for(const wish::Wish& wish) {
  const wish::Answer answer = answer_to(wish);
  REQUIRE_FALSE(answer.loops.empty());
  return answer.loops.front();
}

bool drives_on(const wish::Loop& loop, std::string_view street) {
  return std::ranges::any_of(loop.stretches,
                             [&](const wish::LoopStretch& row) { return row.street == street; });
}

int passes_of(const wish::Loop& loop, Kind kind) {
  return static_cast<int>(std::ranges::count_if(
      loop.passes, [&](const wish::Pass& pass) { return road::meets(pass.kind, kind); }));
}

int drives_over(const wish::Loop& loop, std::int64_t way) {
  return static_cast<int>(std::ranges::count_if(
      loop.stretches, [&](const wish::LoopStretch& row) { return row.way == way; }));
}

wish::KeepOff off(std::string name, std::vector<Point> outline, std::string hours = "") {
  return {std::move(name), std::move(outline), std::move(hours)};
}

}  // namespace

TEST_CASE("what is welcome makes a loop worth more", "[find][wishes]") {
  wish::Wish wish = wish_for(20, {});
  wish.welcome = {Kind::level_crossing, Kind::mini_roundabout};
  const wish::Loop loop = loop_for(wish);
  CHECK(passes_of(loop, Kind::level_crossing) + passes_of(loop, Kind::mini_roundabout) >= 2);
  CHECK(loop.certificate.value > 0);
  CHECK(loop.certificate.state == "searched");
}

TEST_CASE("a joined want is driven into the second kind", "[find][wishes]") {
  const wish::Answer answer = answer_to(wish_for(20, {"turn-off+narrow-road=1"}));
  REQUIRE(answer.loops.size() == 1);
  CHECK_FALSE(answer.shortfall);
  const wish::Loop& loop = answer.loops.front();
  CHECK(loop.met[0].want.into == Kind::narrow_road);
  CHECK(loop.met[0].got >= 1);
  CHECK(drives_on(loop, "Fold Lane"));
}

TEST_CASE("a joined want that the map doesn't have is a shortfall that says so", "[find][wishes]") {
  const wish::Answer answer = answer_to(wish_for(20, {"roundabout+level-crossing=1"}));
  REQUIRE(answer.shortfall);
  CHECK(answer.shortfall->why == "the map has no roundabout+level-crossing in this area");
}

TEST_CASE("a street to keep off isn't driven", "[find][wishes]") {
  wish::Wish wish = wish_for(20, {"mini-roundabout=1"});
  const road::Roads roads = streets().roads();
  wish.keep_offs = {off("Signal Terrace", {between('A', 'E')})};
  const wish::Loop loop = loop_for(wish);
  CHECK_FALSE(drives_on(loop, "Signal Terrace"));
}

TEST_CASE("a junction to keep off isn't driven through", "[find][wishes]") {
  wish::Wish wish = wish_for(20, {"roundabout=1"});
  wish.keep_offs = {off("J", {at('J')})};
  CHECK(passes_of(loop_for(wish), Kind::mini_roundabout) == 0);
}

TEST_CASE("nothing is driven that lies in an area to keep off or crosses it", "[find][wishes]") {
  wish::Wish wish = wish_for(20, {"roundabout=1"});
  const Point k = at('K'), l = at('L');
  const std::int32_t middle = k.lon_e7 / 2 + l.lon_e7 / 2;
  // A small square over the middle of Fold Lane, no corner of which the lane has.
  wish.keep_offs = {off("the lane", {{k.lat_e7 - 2000, middle - 2000},
                                     {k.lat_e7 - 2000, middle + 2000},
                                     {k.lat_e7 + 2000, middle + 2000},
                                     {k.lat_e7 + 2000, middle - 2000}})};
  CHECK_FALSE(drives_on(loop_for(wish), "Fold Lane"));
}

TEST_CASE("a place is kept off at its hours, and when nobody can tell them", "[find][wishes]") {
  const auto drives_lane = [](std::string hours) {
    wish::Wish wish = wish_for(20, {"narrow-road=1"});
    wish.keep_offs = {off("Fold Lane", {between('K', 'L')}, std::move(hours))};
    const wish::Answer answer = answer_to(wish);
    return !answer.loops.empty() && drives_on(answer.loops.front(), "Fold Lane");
  };
  CHECK(drives_lane("Mo-Fr 08:00-09:00"));
  CHECK(drives_lane("Sa 08:00-09:00"));
  CHECK_FALSE(drives_lane("Sa 14:00-15:05"));
  CHECK_FALSE(drives_lane("Sa 15:15-16:00"));
  CHECK_FALSE(drives_lane("SH 08:00-18:00"));  // no terms are given
  CHECK_FALSE(drives_lane(""));
}

TEST_CASE("a home on what is kept off is refused plainly", "[find][wishes]") {
  wish::Wish wish = wish_for(20, {});
  wish.keep_offs = {off("Lantern Row", {between('A', 'B')})};
  CHECK_THROWS_WITH(find::find_loops(streets().roads(), wish, {}),
                    "--keep-off 'Lantern Row': home itself lies there; leave it out, or give hours "
                    "outside the lesson");
  wish.keep_offs[0].hours = "Mo-Fr 08:00-09:00";
  CHECK_NOTHROW(find::find_loops(streets().roads(), wish, {}));
  wish.end = between('K', 'L');
  wish.keep_offs = {off("the lane", {between('K', 'L')})};
  CHECK_THROWS_AS(find::find_loops(streets().roads(), wish, {}), UsageError);
}

TEST_CASE("what only a kept-off street leads to is told", "[find][wishes]") {
  wish::Wish wish = wish_for(20, {"narrow-road=1"});
  wish.keep_offs = {off("Fold Lane", {between('K', 'L')})};
  const wish::Answer answer = answer_to(wish);
  REQUIRE(answer.shortfall);
  CHECK(answer.shortfall->why ==
        "every way to narrow-road passes something that is avoided, kept off or too hard for the "
        "level");
  REQUIRE(answer.loops.size() == 1);
  const auto& reasons = answer.loops[0].certificate.reasons;
  CHECK(std::ranges::any_of(
      reasons, [](const wish::LeftOut& one) { return one.why == "kept off" && one.count >= 1; }));
}

TEST_CASE("passes that count are spaced as asked", "[find][wishes]") {
  wish::Wish wish = wish_for(25, {"mini-roundabout=2"});
  wish.spacings = {{Kind::mini_roundabout, 480}};
  const wish::Answer answer = answer_to(wish);
  REQUIRE(answer.loops.size() == 1);
  const wish::Loop& loop = answer.loops.front();
  CHECK_FALSE(answer.shortfall);
  double first_s = -1, last_s = -1;
  for (const wish::Pass& pass : loop.passes) {
    if (pass.kind != Kind::mini_roundabout || pass.movement == road::Movement::round) continue;
    last_s = loop.stretches[pass.first].arrive_s.likely;
    if (first_s < 0) first_s = last_s;
  }
  CHECK(last_s - first_s >= 480);
}

TEST_CASE("a spacing takes the place of the usual one", "[find][wishes]") {
  wish::Wish wish = wish_for(20, {"roundabout=max"});
  wish.spacings = {{Kind::roundabout, 600}};
  const wish::Loop loop = loop_for(wish);
  CHECK(loop.met[0].got <= 2);
  CHECK(loop.certificate.value <= 2000);
}

TEST_CASE("of one place so many passes count as asked", "[find][wishes]") {
  wish::Wish wish = wish_for(20, {"roundabout=2"});
  wish.place_passes = 1;
  const wish::Answer answer = answer_to(wish);
  REQUIRE(answer.shortfall);
  CHECK(answer.shortfall->missing.at(0).got == 1);
  wish.wants = {wish::read_want("roundabout=max")};
  const wish::Loop most = loop_for(wish);
  CHECK(most.met[0].got == 1);
  CHECK(most.certificate.value <= 1000);
}

TEST_CASE("a quiet street is driven no more often than asked", "[find][wishes]") {
  wish::Wish wish = wish_for(15, {"roundabout=1"});
  wish.street_passes = 1;
  const wish::Answer answer = answer_to(wish);  // the proof looks
  for (const wish::Loop& loop : answer.loops) CHECK(drives_over(loop, 16) <= 1);
}

TEST_CASE("a quiet street that other lessons wore out isn't driven, but by the door",
          "[find][wishes]") {
  wish::Wish wish = wish_for(20, {"roundabout=1"});
  const auto quiet =
      streets().roads().piece(streets().stretch("MN")).flags & road::piece_flag::quiet;
  REQUIRE(quiet != 0);
  for (const std::int64_t way : {1, 14, 15, 16, 19, 20, 21, 22, 23, 24})
    wish.street_use.push_back({way, 0, 20});
  const wish::Loop loop = loop_for(wish);
  for (const std::int64_t way : {20, 21, 22, 23, 24}) CHECK(drives_over(loop, way) == 0);
  CHECK(drives_over(loop, 1) > 0);
  wish.street_use = {{20, 5, 5}};  // one of the day is left
  CHECK(drives_over(loop_for(wish), 20) <= 1);
}

TEST_CASE("a loop over a quiet street that the ledger wears out is told", "[find][wishes]") {
  const road::Roads roads = streets().roads();
  wish::Answer answer = answer_to(wish_for(20, {"narrow-road=1"}));
  REQUIRE(answer.loops.size() == 1);
  const auto& rows = answer.loops[0].stretches;
  const auto far = std::ranges::find_if(rows, [&](const wish::LoopStretch& row) {
    return std::ranges::any_of(std::vector<std::int64_t>{14, 15, 18, 21, 22, 23, 24},
                               [&](std::int64_t way) { return row.way == way; }) &&
           (roads.piece(wish::find_stretch(roads, row)).flags & road::piece_flag::quiet) != 0;
  });
  REQUIRE(far != rows.end());
  answer.wish.street_use = {{far->way, 0, 20}};
  CHECK_THAT(proof::prove(roads, answer, setting_of(roads)).false_claim.value_or(""),
             Catch::EndsWith("this quiet street is driven 1 time, more than 0, all that the ledger "
                             "leaves"));
}

TEST_CASE("nothing is harder than allowed, whatever is asked for", "[find][wishes]") {
  wish::Wish wish = wish_for(15, {"roundabout=1"});
  wish.hardest = 2;
  const wish::Answer answer = answer_to(wish);
  REQUIRE(answer.shortfall);
  CHECK(answer.shortfall->why ==
        "every roundabout in this area is harder than 2, the hardest that is allowed");
  for (const wish::Loop& loop : answer.loops)
    for (const wish::Pass& pass : loop.passes)
      CHECK((pass.hardness <= 2 || pass.kind == Kind::independent_stretch));
}

}  // namespace loopwright::test
