// Lies about the parts of a lesson, about who drives, and about how easy it begins and ends.
#include <catch2/catch.hpp>

#include "loopwright/wish/parts.hpp"
#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;
using wish::Answer;
using wish::Loop;
using wish::Wish;

namespace {

/// ABrstuLWZAB: round the roundabout on rows 1 to 5, over the railway into row 6, home by Slow Lane.
constexpr std::size_t rows = 10;

/// Two parts, the second from Ferry Lane on, told truly; then a lie.
template <class Lie>
std::string in_parts(std::string_view one, std::string_view two, Lie&& lie) {
  const BuiltTown town = lesson_town();
  Wish wish;
  Answer answer = true_answer(town, "ABrstuLWZAB", wish);
  answer.wish.parts = {wish::read_part(one), wish::read_part(two)};
  Loop& loop = answer.loops.front();
  loop.parts = {{0, 5, {}}, {6, rows - 1, {}}};
  for (const wish::Want& want : answer.wish.parts[0].wants) loop.parts[0].met.push_back({want, 1});
  for (const wish::Want& want : answer.wish.parts[1].wants) loop.parts[1].met.push_back({want, 1});
  lie(answer);
  return falsehood(town, answer);
}

const auto nothing = [](Answer&) {};
constexpr const char* ring = "3: roundabout=1";
constexpr const char* lane = "3: level-crossing=1";

template <class Lie>
std::string two_parts(Lie&& lie) {
  return in_parts(ring, lane, std::forward<Lie>(lie));
}

}  // namespace

TEST_CASE("a lesson in parts that tells the truth holds", "[proof][parts]") {
  CHECK(two_parts(nothing) == "");
  CHECK(two_parts([](Answer& answer) { answer.loops[0].practice = {{0, rows - 1}}; }) == "");
}

TEST_CASE("parts that leave a gap, overlap or end too soon are told", "[proof][parts]") {
  CHECK(two_parts([](Answer& answer) { answer.loops[0].parts[0].last = 4; }) ==
        "loop 1, part 2: stretches 6 to 9 don't follow each other over stretches 0 to 9");
  CHECK(two_parts([](Answer& answer) { answer.loops[0].parts[1].first = 5; }) ==
        "loop 1, part 2: stretches 5 to 9 don't follow each other over stretches 0 to 9");
  CHECK(two_parts([](Answer& answer) { answer.loops[0].parts[1].last = 8; }) ==
        "loop 1, part 2: stretches 6 to 8 don't follow each other over stretches 0 to 9");
  CHECK(two_parts([](Answer& answer) { answer.loops[0].parts.pop_back(); }) ==
        "loop 1, parts: the file says '1', the area says '2'");
}

TEST_CASE("a boundary moved over what a part is for is told", "[proof][parts]") {
  CHECK(two_parts([](Answer& answer) {
          answer.loops[0].parts[0].last = 6;
          answer.loops[0].parts[1].first = 7;
        }) ==
        "loop 1, part 2, passes that count for level-crossing=1: the file says '1', the area says "
        "'0'");
}

TEST_CASE("a part that got more than it drives is told", "[proof][parts]") {
  CHECK(two_parts([](Answer& answer) { answer.loops[0].parts[0].met[0].got = 2; }) ==
        "loop 1, part 1, passes that count for roundabout=1: the file says '2', the area says '1'");
  CHECK(in_parts("3: level-crossing=1", "3", nothing) ==
        "loop 1, part 1, passes that count for level-crossing=1: the file says '1', the area says "
        "'0'");
  CHECK(two_parts([](Answer& answer) { answer.loops[0].parts[0].met.clear(); }) ==
        "loop 1, part 1, wants counted: the file says '0', the area says '1'");
}

TEST_CASE("a part too long or too short for its minutes is told", "[proof][parts]") {
  CHECK_THAT(in_parts("30: roundabout=1", "3: level-crossing=1", nothing),
             Catch::StartsWith("loop 1, part 1: it lasts "));
  CHECK_THAT(in_parts("3: roundabout=1", "30: level-crossing=1", nothing),
             Catch::StartsWith("loop 1, part 2: it lasts "));
}

TEST_CASE("the minutes that a part lasts and those asked for are told", "[proof][parts]") {
  const std::string said = in_parts("30: roundabout=1", "3: level-crossing=1", nothing);
  CHECK_THAT(said, Catch::Contains("min, asked were 30.0"));
  // Of the drive's few minutes; a slip in units would be sixty times off.
  const double lasts = std::stod(said.substr(std::string("loop 1, part 1: it lasts ").size()));
  CHECK((0.5 < lasts && lasts < 10));
}

TEST_CASE("a road that a part doesn't keep to is told", "[proof][parts]") {
  // Lantern Row is quiet, Mill Road and the roundabout are not.
  CHECK(in_parts("3 busier: roundabout=1", "3: level-crossing=1", nothing) == "");
  CHECK_THAT(in_parts("3 quiet: roundabout=1", "3: level-crossing=1", nothing),
             Catch::Contains("it isn't one of the quiet roads that part 1 keeps to"));
}

TEST_CASE("a pass harder than its part allows is told", "[proof][parts]") {
  CHECK(in_parts("3 hardest 5: roundabout=1", "3: level-crossing=1", nothing) == "");
  const std::string told = in_parts("3 hardest 2: roundabout=1", "3: level-crossing=1", nothing);
  CHECK_THAT(told, Catch::StartsWith("loop 1, part 1: it passes "));
  CHECK_THAT(told, Catch::EndsWith(", more than 2"));
}

TEST_CASE("passes named for as many as fit must be such passes", "[proof][parts]") {
  const auto named = [](std::vector<std::size_t> passes, std::int64_t value) {
    return in_parts("3: roundabout=max", "3", [&](Answer& answer) {
      answer.loops[0].parts[0].met[0].practised = passes;
      answer.loops[0].certificate.value = value;
    });
  };
  const BuiltTown town = lesson_town();
  const Loop loop = true_loop(town, "ABrstuLWZAB", {});
  std::size_t ring_pass = 0, other = 0;
  for (std::size_t k = 0; k < loop.passes.size(); ++k)
    (loop.passes[k].kind == road::Kind::roundabout ? ring_pass : other) = k;
  CHECK(named({ring_pass}, 1000) == "");
  CHECK(named({ring_pass}, 2000) ==
        "loop 1, certificate, value: the file says 2000.0, the area says 1000.0");
  CHECK_THAT(named({ring_pass, ring_pass}, 1000),
             Catch::EndsWith("it begins too soon after the one before"));
  CHECK_THAT(named({other}, 1000), Catch::EndsWith("it doesn't count for that"));
}

TEST_CASE("who says that the instructor drives must say where", "[proof][parts]") {
  const BuiltTown town = lesson_town();
  const auto driven = [&](std::size_t first, std::size_t last, int ring_got) {
    Wish wish;
    wish.wants = {wish::read_want("roundabout=1")};
    Answer answer = true_answer(town, "ABrstuLWZAB", wish);
    const road::Roads roads = town.roads();
    answer.wish.drive_out = roads.nodes[town.node('L').index()].at;
    answer.loops[0].practice = {{first, last}};
    answer.loops[0].met[0].got = ring_got;
    answer.shortfall = wish::Shortfall{};
    answer.shortfall->why = "the roundabout is the instructor's";
    answer.shortfall->missing = {{answer.wish.wants[0], 0, "not driven", {}, {}, {}}};
    return falsehood(town, answer);
  };
  // The seats are changed at the end of Ferry Lane's first stretch: the ring is behind.
  CHECK(driven(6, rows - 1, 0) == "");
  CHECK(driven(6, rows - 1, 1) ==
        "loop 1, passes that count for roundabout=1: the file says '1', the area says '0'");
  CHECK(driven(2, rows - 1, 0) ==
        "loop 1: the learner doesn't begin where the wish says, but with stretch 2");
  CHECK(driven(6, rows - 2, 0) ==
        "loop 1: the learner doesn't end where the wish says, but with stretch 8");
}

TEST_CASE("a lesson that isn't easy first must say so", "[proof][parts]") {
  // From a door right before the level crossing, hardness 4.
  const BuiltTown town = lesson_town();
  const auto easy = [&](const std::string& why) {
    Answer answer = true_answer(town, "uLWZABrstuL", {});
    answer.wish.easy_first = true;
    if (!why.empty()) {
      answer.shortfall = wish::Shortfall{};
      answer.shortfall->why = why;
    }
    return falsehood(town, answer);
  };
  CHECK_THAT(easy(""), Catch::StartsWith("loop 1: it was to be easy first, but passes "));
  CHECK(easy("not easy as asked: the first stretch passes emerge") == "");
}

// The leeway: DECISIONS, "Defaults"; two minutes, or a tenth of the minutes where that is more.
TEST_CASE("a part may be off its minutes by its leeway, the last may be longer", "[proof][parts]") {
  const BuiltTown town = lesson_town();
  const Loop loop = true_loop(town, "ABrstuLWZAB", {});
  const double first_min = loop.stretches[6].arrive_s.likely / 60;
  const double second_min = loop.seconds.likely / 60 - first_min;
  REQUIRE((first_min > 0.5 && second_min > 1));
  for (int asked = 3; asked <= 8; ++asked) {
    const std::string minutes = std::to_string(asked);
    CAPTURE(asked, first_min, second_min);
    CHECK((in_parts(minutes + ": roundabout=1", lane, nothing) == "") ==
          (asked - 2 <= first_min && first_min <= asked + 2));
    CHECK((in_parts(ring, minutes + ": level-crossing=1", nothing) == "") ==
          (asked - 2 <= second_min));
  }
}

TEST_CASE("a part that drives on for too long is told", "[proof][parts]") {
  // Slow Lane first, and after the roundabout again.
  const BuiltTown town = lesson_town();
  Answer answer = own_drive(town, "WZABrstuLWZABrstuLWZ");
  answer.loops[0].parts = {{0, 9, {}}, {10, 18, {}}};
  const double first_min = answer.loops[0].stretches[10].arrive_s.likely / 60;
  REQUIRE((first_min > 5.1 && first_min < 7.9));
  for (int asked = 3; asked <= 8; ++asked) {
    answer.wish.parts = {wish::read_part(std::to_string(asked)), wish::read_part("3")};
    CAPTURE(asked, first_min);
    CHECK((falsehood(town, answer) == "") == (asked - 2 <= first_min && first_min <= asked + 2));
  }
}

TEST_CASE("who says that the instructor drives home must say from where", "[proof][parts]") {
  const BuiltTown town = lesson_town();
  const auto driven = [&](std::size_t first, std::size_t last, bool told) {
    Answer answer = true_answer(town, "ABrstuLWZAB", {});
    answer.wish.drive_back = town.roads().nodes[town.node('Z').index()].at;
    if (told) answer.loops[0].practice = {{first, last}};
    return falsehood(town, answer);
  };
  // Z is the end of row 7 and the beginning of row 8.
  CHECK(driven(0, 7, true) == "");
  CHECK(driven(0, 6, true) == "");
  CHECK(driven(0, 4, true) ==
        "loop 1: the learner doesn't end where the wish says, but with stretch 4");
  CHECK(driven(0, 9, true) ==
        "loop 1: the learner doesn't end where the wish says, but with stretch 9");
  CHECK(driven(1, 7, true) ==
        "loop 1: the learner doesn't begin where the wish says, but with stretch 1");
  CHECK(driven(0, 7, false) == "loop 1: it doesn't say which stretches are the learner's");
  CHECK(driven(7, 6, true) == "loop 1: the learner drives nothing");
  CHECK(driven(0, 10, true) == "loop 1: the learner drives nothing");
}

// The ramp: DECISIONS' table of defaults. The first fifth no harder than the level, the last tenth than 3.
TEST_CASE("easy first holds at the level's bound, and at the end of the lesson", "[proof][parts]") {
  const BuiltTown town = lesson_town();
  const auto told = [&](std::string_view letters, int level) {
    Wish wish;
    wish.level = level;
    wish.through = {town.roads().nodes[town.node(letters[1]).index()].at};
    Answer answer = true_answer(town, letters, wish);
    answer.wish.easy_first = true;
    return falsehood(town, answer);
  };
  // The level crossing, hardness 4, is met at once.
  CHECK(told("uLWZABrstuL", 4) == "");
  CHECK_THAT(told("uLWZABrstuL", 3), Catch::Contains("passes level-crossing"));
  // Emerging from Lantern Row, hardness 3, is met at once, the level crossing in the middle.
  CHECK(told("ABrstuLWZAB", 3) == "");
  CHECK_THAT(told("ABrstuLWZAB", 2), Catch::Contains("passes emerge"));
  // The level crossing is met in the last tenth, or before it.
  CHECK_THAT(told("LWZABrstuLW", 5), Catch::Contains("passes level-crossing"));
  CHECK(told("ZABrstuLWZA", 5) == "");
}

TEST_CASE("a pass counts for the part in which it lies behind its entry", "[proof][parts]") {
  // The level crossing, hardness 4, is passed from row 5 into row 6.
  const auto told = [](const char* one, const char* two, std::size_t last) {
    return in_parts(one, two, [last](Answer& answer) {
      answer.loops[0].parts[0].last = last;
      answer.loops[0].parts[1].first = last + 1;
    });
  };
  CHECK(told("3 hardest 3", "3", 5) == "");
  CHECK_THAT(told("3", "3 hardest 3", 5), Catch::Contains("part 2: it passes level-crossing"));
  CHECK_THAT(told("3 hardest 3", "3", 6), Catch::Contains("part 1: it passes level-crossing"));
  CHECK(told("3", "3 hardest 3", 6) == "");
}
