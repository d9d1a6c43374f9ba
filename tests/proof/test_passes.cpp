#include <catch2/catch.hpp>
#include <functional>

#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;
using road::Kind;
using wish::Loop;
using wish::Pass;

namespace {

Pass& pass_of(Loop& loop, Kind kind) {
  for (Pass& pass : loop.passes)
    if (pass.kind == kind) return pass;
  throw std::invalid_argument("the lesson has no such pass");
}

/// The lesson with its first pass of a kind changed, put first so that its number is known.
std::string pass_with(Kind kind, const std::function<void(Pass&)>& lie) {
  return loop_with([&](Loop& loop) {
    Pass& pass = pass_of(loop, kind);
    std::swap(loop.passes.front(), pass);
    lie(loop.passes.front());
  });
}

}  // namespace

TEST_CASE("a pass kept quiet about is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) {
          std::erase_if(loop.passes, [](const Pass& p) { return p.kind == Kind::level_crossing; });
        }) ==
        "loop 1: the drive passes level-crossing (node 12) on stretches 5 to 6, which the "
        "file doesn't list");
  CHECK(
      loop_with([](Loop& loop) { loop.passes.clear(); }).starts_with("loop 1: the drive passes "));
}

TEST_CASE("a pass that isn't made is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) {
          Pass made_up = pass_of(loop, Kind::zebra);
          made_up.first = 3, made_up.last = 4;
          loop.passes.insert(loop.passes.begin(), made_up);
        }) == "loop 1, pass 0: the drive makes no pass of zebra (node 26) on stretches 3 to 4");
}

TEST_CASE("a pass counted twice is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) {
          const Pass again = pass_of(loop, Kind::zebra);
          loop.passes.insert(loop.passes.begin(), again);
        }).ends_with("the drive makes no pass of zebra (node 26) on stretches 7 to 8"));
}

TEST_CASE("a pass said to begin or end elsewhere is told", "[proof]") {
  CHECK(pass_with(Kind::roundabout, [](Pass& pass) { pass.last = 4; }) ==
        "loop 1, pass 0: the drive makes no pass of roundabout:right (way 3) on stretches 1 to 4");
  CHECK(pass_with(Kind::roundabout, [](Pass& pass) {
          pass.last = 500;
        }).starts_with("loop 1: the drive passes roundabout:right (way 3) on stretches 1 to 5"));
}

TEST_CASE("a pass of another kind than it is is told", "[proof]") {
  CHECK(pass_with(Kind::roundabout, [](Pass& pass) {
          pass.kind = Kind::mini_roundabout;
        }).starts_with("loop 1: the drive passes roundabout:right (way 3)"));
}

TEST_CASE("a wrong movement, exit, hardness, sureness, source or tag is told", "[proof]") {
  const std::string where = "loop 1, pass 0 (way 3), ";
  CHECK(pass_with(Kind::roundabout, [](Pass& p) { p.movement = road::Movement::left; }) ==
        where + "movement: the file says 'left', the area says 'right'");
  CHECK(pass_with(Kind::roundabout, [](Pass& p) { p.exit = 2; }) ==
        where + "exit: the file says '2', the area says '3'");
  CHECK(pass_with(Kind::roundabout, [](Pass& p) { p.hardness = 1; }) ==
        where + "hardness: the file says '1', the area says '3'");
  CHECK(pass_with(Kind::roundabout, [](Pass& p) { p.confidence = road::Confidence::inferred; }) ==
        where + "confidence: the file says 'inferred', the area says 'certain'");
  CHECK(pass_with(Kind::roundabout, [](Pass& p) { p.source.id = 4; }) ==
        "loop 1, pass 0 (way 4), source: the file says 'way 4', the area says 'way 3'");
  CHECK(pass_with(Kind::roundabout, [](Pass& p) { p.tag = "junction=circular"; }) ==
        where + "tag: the file says 'junction=circular', the area says 'junction=roundabout'");
}

TEST_CASE("an exit number that the area itself has wrong is told", "[proof]") {
  BuiltTown town = lesson_town();
  for (road::Chance& chance : town.built.tables.chances)
    if (chance.kind == Kind::roundabout && chance.exit_number == 3) chance.exit_number = 4;
  CHECK(falsehood(town, true_answer(town, "ABrstuLWZAB"))
            .ends_with("(way 3), exit: the file says 4, counting the arms gives 3"));
}

TEST_CASE("a bus lane kept quiet about is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.bus_lanes.clear(); }) ==
        "loop 1, bus lanes: the file says '0', the area says '1'");
}

TEST_CASE("a wrong verdict on a bus lane is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.bus_lanes[0].verdict = wish::Verdict::in_force; }) ==
        "loop 1, bus lane 0 (way 8), verdict: the file says 'in force', the area says 'usable'");
}

TEST_CASE("wrong hours, times, side or place of a bus lane are told", "[proof]") {
  const std::string where = "loop 1, bus lane 0 (way 8), ";
  CHECK(loop_with([](Loop& loop) { loop.bus_lanes[0].hours = "24/7"; }) ==
        where + "hours: the file says '24/7', the area says 'Mo-Sa 16:00-19:00'");
  CHECK(loop_with([](Loop& loop) {
          loop.bus_lanes[0].arrive_to = "15:30";
        }).starts_with(where + "times: the file says '15:01 to 15:30', the area says '15:0"));
  CHECK(loop_with([](Loop& loop) { loop.bus_lanes[0].last = 7; }) ==
        where + "place: the file says 'stretches 6 to 7', the area says 'stretches 6 to 6'");
  CHECK(loop_with([](Loop& loop) {
          loop.bus_lanes[0].side = "right";
        }).starts_with(where + "side: the file says 'right'"));
}
