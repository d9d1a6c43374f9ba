#include <catch2/catch.hpp>

#include <algorithm>

#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;
using road::Kind;
using road::Movement;
using wish::Answer;
using wish::Loop;
using wish::Wish;

namespace {

Wish wanting(std::vector<wish::Want> wants) {
  Wish wish;
  wish.wants = std::move(wants);
  return wish;
}

const auto nothing = [](Answer&) {};

}  // namespace

TEST_CASE("a wrong count of what was asked for is told", "[proof]") {
  const Wish wish = wanting({{Kind::roundabout, Movement::none, 1}});
  CHECK(lesson_with(nothing, wish) == "");
  CHECK(loop_with([](Loop& loop) { loop.met[0].got = 2; }, wish) ==
        "loop 1, passes that count for roundabout=1: the file says '2', the area says '1'");
  CHECK(loop_with([](Loop& loop) { loop.met.clear(); }, wish) ==
        "loop 1, wants counted: the file says '0', the area says '1'");
  CHECK(loop_with([](Loop& loop) { loop.met[0].want.kind = Kind::zebra; }, wish) ==
        "loop 1, want 0: the file says 'zebra=1', the area says 'roundabout=1'");
}

TEST_CASE("a bus lane counted at hours it doesn't have is told", "[proof]") {
  const Wish usable = wanting({wish::read_want("bus-lane:usable")});
  const Wish in_force = wanting({wish::read_want("bus-lane:in-force")});
  CHECK(lesson_with(nothing, usable) == "");  // from 16:00; the drive begins at 15:00
  CHECK(loop_with([](Loop& loop) { loop.met[0].got = 0; }, usable) ==
        "loop 1, passes that count for bus-lane:usable=1: the file says '0', the area says '1'");
  CHECK(loop_with([](Loop& loop) { loop.met[0].got = 1; }, in_force) ==
        "loop 1, passes that count for bus-lane:in-force=1: the file says '1', the area says '0'");
  CHECK(loop_with([](Loop& loop) { loop.met[0].want.verdict.reset(); }, usable) ==
        "loop 1, want 0: the file says 'bus-lane=1', the area says 'bus-lane:usable=1'");
}

TEST_CASE("a wrong verdict on a pass of a bus lane is told, none at all isn't", "[proof]") {
  const auto lane_of = [](Loop& loop) -> wish::Pass& {
    return *std::find_if(loop.passes.begin(), loop.passes.end(),
                         [](const wish::Pass& pass) { return pass.kind == Kind::bus_lane; });
  };
  const std::string lie =
      loop_with([&](Loop& loop) { lane_of(loop).verdict = wish::Verdict::in_force; });
  CHECK_THAT(lie, Catch::EndsWith("verdict: the file says 'in force', the area says 'usable'"));
  // A file of an older version.
  CHECK(loop_with([&](Loop& loop) { lane_of(loop).verdict.reset(); }) == "");
  CHECK_THAT(loop_with([](Loop& loop) { loop.passes[0].verdict = wish::Verdict::usable; }),
             Catch::EndsWith("verdict: the file says 'usable', the area says 'none'"));
}

TEST_CASE("passes of one place count up to its cap only", "[proof]") {
  const BuiltTown town = built_town(R"(
A      B




D      C
w1 AB highway=tertiary name=Top_Street
w2 BC highway=tertiary name=Right_Street width=4.4
w3 CD highway=tertiary name=Low_Street
w4 DA highway=tertiary name=Left_Street
)");
  Wish wish = wanting({{Kind::narrow_road, Movement::none, 3}});
  wish.through = {town.roads().nodes[town.node('B').index()].at};
  Answer answer = true_answer(town, "ABCDABCDABCDABCDAB", wish);
  CHECK(answer.loops[0].met[0].got == 4);
  CHECK(falsehood(town, answer) ==
        "loop 1, passes that count for narrow-road=3: the file says '4', the area says '3'");
  answer.loops[0].met[0].got = 3;
  CHECK(falsehood(town, answer) == "");
}

TEST_CASE("an avoided kind that is driven is told", "[proof]") {
  Wish wish;
  wish.avoids = {{Kind::level_crossing}};
  CHECK(lesson_with(nothing, wish) ==
        "loop 1, stretch 5 (way 6): it passes level-crossing (node 12), which the wish avoids");
  wish.avoids = {{Kind::narrow_road}};
  CHECK(lesson_with(nothing, wish) ==
        "loop 1, stretch 7 (way 7): it passes narrow-road (way 7), which the wish avoids");
}

TEST_CASE("an avoided movement that is driven is told, another isn't", "[proof]") {
  Wish wish;
  wish.avoids = {{Kind::roundabout, Movement::left}, {Kind::emerge, Movement::left}};
  CHECK(lesson_with(nothing, wish) == "");
  wish.avoids = {{Kind::roundabout, Movement::right}};
  CHECK_THAT(lesson_with(nothing, wish),
             Catch::Contains("it passes roundabout (way 3), which the wish avoids"));
}

TEST_CASE("a pass too hard for the level is told, unless its kind was asked for", "[proof]") {
  const BuiltTown town = lesson_town();
  Wish wish;
  wish.through = {town.roads().nodes[town.node('B').index()].at};
  wish.level = 1;
  CHECK(falsehood(town, true_answer(town, "ABrstuLWZAB", wish)) == "");
  wish.level_given = true;
  const std::string text = falsehood(town, true_answer(town, "ABrstuLWZAB", wish));
  CHECK(text.starts_with("loop 1, stretch 0 (way 1): it passes emerge ("));
  CHECK(text.ends_with(" of hardness 3, more than 2"));
  for (const Kind kind :
       {Kind::emerge, Kind::roundabout, Kind::level_crossing, Kind::bus_lane, Kind::narrow_road})
    wish.wants.push_back({kind, Movement::none, 1});
  CHECK(falsehood(town, true_answer(town, "ABrstuLWZAB", wish)) == "");
}

TEST_CASE("a quiet street driven three times is told, but not on one's own drive", "[proof]") {
  const BuiltTown town = lesson_town();
  CHECK(falsehood(town, true_answer(town, "ABrstuLWZABrstuLWZAB")) ==
        "loop 1, stretch 18 (way 1): this quiet street is driven 3 times, more than 2");
  CHECK(falsehood(town, own_drive(town, "ABrstuLWZABrstuLWZAB")) == "");
}

TEST_CASE("a certificate in other words is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.certificate.state = "optimal"; }) ==
        "loop 1, certificate: there is no state 'optimal'");
}

TEST_CASE("a certificate that claims more than its bound is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.certificate.state = "best possible"; }) ==
        "loop 1, certificate: 'best possible' doesn't follow from its bound");
  CHECK(loop_with([](Loop& loop) {
          loop.certificate.state = "within", loop.certificate.bound = loop.certificate.value - 5;
        }) == "loop 1, certificate: 'within' doesn't follow from its bound");
  CHECK(loop_with([](Loop& loop) {
          loop.certificate.state = "best possible", loop.certificate.bound = loop.certificate.value;
        }) == "");
}

TEST_CASE("candidates left out that were never there are told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.certificate.left_out = 3; }) ==
        "loop 1, certificate: of 0 candidates 3 can't be left out");
}

TEST_CASE("a wrong value of a loop is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.certificate.value = 500; }) ==
        "loop 1, certificate, value: the file says 500.0, the area says 0.0");
  // One roundabout pass for "max" is worth 1000.
  const Wish most = wanting({{Kind::roundabout, Movement::none, {}}});
  const auto worth = [&](std::int64_t value) {
    return loop_with(
        [&](Loop& loop) {
          practise(loop, Kind::roundabout);
          loop.certificate.value = value;
        },
        most);
  };
  CHECK(worth(1000) == "");
  CHECK(worth(1700) == "loop 1, certificate, value: the file says 1700.0, the area says 1000.0");
}

TEST_CASE("passes named as practised that aren't are told", "[proof][wishes]") {
  const Wish most = wanting({{Kind::roundabout, Movement::none, {}}});
  const std::string where = "loop 1, practised for roundabout=max";
  CHECK(loop_with([](Loop& loop) { loop.met[0].practised.reset(); }, most) ==
        where + ": the file doesn't name the passes; make it again");
  const auto named = [&](const std::function<void(std::vector<std::size_t>&)>& change) {
    return loop_with(
        [&](Loop& loop) {
          practise(loop, Kind::roundabout);
          change(*loop.met[0].practised);
        },
        most);
  };
  const std::string twice = named([](auto& passes) { passes.push_back(passes[0]); });
  CHECK_THAT(twice, Catch::Contains("it begins too soon after the one before"));
  CHECK_THAT(loop_with([](Loop& loop) { practise(loop, Kind::level_crossing); }, most),
             Catch::Contains("it doesn't count for that"));
  const Wish one = wanting({{Kind::roundabout, Movement::none, 1}});
  CHECK_THAT(loop_with([](Loop& loop) { practise(loop, Kind::roundabout); }, one),
             Catch::Contains("it isn't wanted as max"));
}

TEST_CASE("a certificate's bound is its value or above it", "[proof]") {
  const auto with = [](const char* state, int above) {
    return loop_with([&](Loop& loop) {
      loop.certificate.state = state;
      loop.certificate.bound = loop.certificate.value + above;
    });
  };
  CHECK(with("within", 0) == "");
  CHECK(with("within", 1) == "");
  CHECK(with("within", -1) == "loop 1, certificate: 'within' doesn't follow from its bound");
  CHECK(with("best possible", 0) == "");
  for (const int off : {-1, 1})
    CHECK(with("best possible", off) ==
          "loop 1, certificate: 'best possible' doesn't follow from its bound");
}
