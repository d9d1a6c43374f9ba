// Lies about independent driving.
#include <catch2/catch.hpp>
#include <cmath>

#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;
using Catch::Matchers::Contains;

namespace {

// A7901 all round a block, a road on at each corner, and home beside it.
constexpr const char* ring_drawing = R"town(
X  A     B     C  G



Y  D     E     F  H


         W     V
w1 XA       highway=residential name=Home_Lane maxspeed=30_mph
w2 ABCFEDA  highway=primary ref=A7901 maxspeed=30_mph
w3 CG       highway=tertiary name=Quarry_Road maxspeed=30_mph
w4 FH       highway=tertiary name=Ferry_Lane maxspeed=30_mph
w5 DY       highway=tertiary name=Osk_Lane maxspeed=30_mph
w6 BE       highway=tertiary name=Mill_Road maxspeed=30_mph
w7 FV       highway=tertiary name=Ferry_Lane maxspeed=30_mph
w8 EW       highway=tertiary name=Mill_Road maxspeed=30_mph
)town";

const BuiltTown& town() {
  static const BuiltTown built = built_town(draw_town(ring_drawing, 100), "GB-ENG");
  return built;
}

/// The drive round the block; stretches 1 to 6 are the A7901.
wish::Answer asking(int minutes, std::vector<wish::IndependentStretch> told,
                    std::string_view letters = "XABCFEDAX") {
  wish::Answer answer = own_drive(town(), letters);
  answer.wish.independent_minutes = minutes;
  answer.loops[0].independent = std::move(told);
  return answer;
}

std::string told_of(int minutes, std::vector<wish::IndependentStretch> told,
                    std::string_view letters = "XABCFEDAX") {
  return falsehood(town(), asking(minutes, std::move(told), letters));
}

}  // namespace

TEST_CASE("a road number that is signed at every decision may be followed",
          "[proof][independent]") {
  CHECK(told_of(3, {{1, 6, "A7901", {}}}) == "");
  CHECK(told_of(3, {{1, 5, "A7901", {}}}) == "");
}

TEST_CASE("what isn't signed there, or not all along, is told", "[proof][independent]") {
  CHECK(told_of(3, {{1, 6, "B9951", {}}}) ==
        "loop 1, stretch 1 (way 2): nothing there is signed to 'B9951'");
  CHECK(told_of(3, {{1, 7, "A7901", {}}}) ==
        "loop 1, stretch 7 (way 1): nothing there is signed to 'A7901'");
  // At B the A7901 goes on ahead, and the drive turns into Mill Road.
  CHECK(told_of(1, {{1, 5, "A7901", {}}}, "XABEFCBAX") ==
        "loop 1, stretch 1 (way 2): at its end the way taken isn't the one signed to 'A7901'");
}

TEST_CASE("signs and directions at once are told", "[proof][independent]") {
  CHECK(told_of(3, {{1, 6, "A7901", {"turn left"}}}) ==
        "loop 1, independent stretch: it follows signs, and tells directions");
}

TEST_CASE("directions must be those of the drive, all and in its words", "[proof][independent]") {
  const std::string right = "turn right into Mill Road", left = "turn left into A7901";
  CHECK(told_of(1, {{1, 3, "", {right, left}}}, "XABEFCBAX") == "");
  CHECK(told_of(1, {{1, 3, "", {right}}}, "XABEFCBAX") ==
        "loop 1, independent stretch, directions: the file says '1', the area says '2'");
  CHECK(told_of(1, {{1, 3, "", {left, right}}}, "XABEFCBAX") ==
        "loop 1, independent stretch, direction 0: the file says 'turn left into A7901', the area "
        "says 'turn right into Mill Road'");
}

// Where the road ahead leads towards us, the corner is the only way for anybody: nothing need be told.
TEST_CASE("a one-way road that leads here is no choice, whoever may drive it",
          "[proof][independent]") {
  const auto round_the_corner = [](const std::string& ahead) {
    const BuiltTown town = built_town(
        draw_town("X     B     W\n\n\n\n      C\n"
                  "w1 XB highway=residential name=Home_Lane maxspeed=30_mph\n"
                  "w2 BC highway=residential name=Far_Lane maxspeed=30_mph\n"
                  "w3 " +
                      ahead + " highway=residential name=Mill_Road surface=gravel oneway=yes\n",
                  100),
        "GB-ENG");
    wish::Answer answer = own_drive(town, "XBCBX");
    answer.wish.independent_minutes = 1;
    answer.loops[0].independent = {{0, 1, "", {}}};
    return falsehood(town, answer);
  };
  CHECK(round_the_corner("WB") == "");
  CHECK(round_the_corner("BW") ==
        "loop 1, independent stretch, directions: the file says '0', the area says '1'");
}

TEST_CASE("more than one stretch, or one that nobody asked for, is told", "[proof][independent]") {
  CHECK(told_of(0, {{1, 6, "A7901", {}}}) ==
        "loop 1: it has 1 independent stretches, asked for is none");
  CHECK(told_of(3, {{1, 3, "A7901", {}}, {4, 6, "A7901", {}}}) ==
        "loop 1: it has 2 independent stretches, asked for is one");
}

TEST_CASE("a stretch that is too short is told when there is a longer one",
          "[proof][independent]") {
  CHECK_THAT(told_of(3, {{1, 2, "A7901", {}}}), Contains("min of 3, and there is one of"));
  CHECK_THAT(told_of(3, {}), Contains("it has 0.0 min of 3, and there is one of"));
}

TEST_CASE("too short a stretch without a shortfall is told", "[proof][independent]") {
  wish::Answer answer = asking(20, {{1, 6, "A7901", {}}});
  CHECK(falsehood(town(), answer) ==
        "loop 1: its independent stretch is too short, and there is no shortfall");
  answer.shortfall.emplace().why = "loop 1 has no independent stretch of 20 minutes";
  CHECK(falsehood(town(), answer) == "");
}

TEST_CASE("a stretch that begins on a roundabout is told", "[proof][independent]") {
  const BuiltTown lesson = lesson_town();
  wish::Answer answer = own_drive(lesson, "ABrstuLWZAB");
  answer.wish.independent_minutes = 1;
  answer.loops[0].independent = {{2, 7, "", {}}};
  CHECK(falsehood(lesson, answer) ==
        "loop 1, independent stretch: it begins or ends inside a junction, or where nothing is "
        "practised");
}

// --- variants -----------------------------------------------------------------------------------

namespace {

/// The lesson and, behind it, a loop said to be a variant of it.
std::string variant_with(std::string_view variant, int first_hardest = 0) {
  const BuiltTown lesson = lesson_town();
  wish::Answer answer = true_answer(lesson, "ABrstuLWZAB");
  answer.loops.push_back(answer.loops.front());
  wish::Loop& second = answer.loops.back();
  second.id = 2, second.variant = variant;
  if (first_hardest > 0) answer.wish.hardest = first_hardest;
  return falsehood(lesson, answer);
}

}  // namespace

TEST_CASE("a variant that isn't easier or harder is told", "[proof][variant]") {
  CHECK_THAT(variant_with("easier"),
             Contains("loop 2, stretch ") && Contains(" of hardness ") && Contains(", more than "));
  CHECK(variant_with("harder") == "loop 2: it isn't harder than the first loop");
}

TEST_CASE("variants that are out of place are told", "[proof][variant]") {
  const BuiltTown lesson = lesson_town();
  wish::Answer answer = true_answer(lesson, "ABrstuLWZAB");
  answer.loops.front().variant = "harder";
  CHECK(falsehood(lesson, answer) == "loops: there are 0 of 1 asked, and nothing says why");
  answer.fewer_because = "none";
  CHECK(falsehood(lesson, answer) ==
        "loop 1: variants stand behind all other loops, the easier one first, each once");
}

TEST_CASE("an independent stretch is short by the minutes it lacks, all along the block",
          "[proof][independent]") {
  const wish::Loop loop = asking(3, {}).loops[0];
  const double block_min =
      (loop.stretches[7].arrive_s.likely - loop.stretches[1].arrive_s.likely) / 60;
  CAPTURE(block_min);
  for (int asked = 1; asked <= 6; ++asked) {
    const std::string said = told_of(asked, {{1, 6, "A7901", {}}});
    CAPTURE(asked, said);
    CHECK((said == "") == (asked <= block_min));
  }
}

TEST_CASE("how long the stretch is and how long it might be are told in minutes",
          "[proof][independent]") {
  const wish::Loop loop = asking(3, {}).loops[0];
  const auto minutes = [&](std::size_t first, std::size_t end) {
    const double tenths = std::round(
        (loop.stretches[end].arrive_s.likely - loop.stretches[first].arrive_s.likely) / 6);
    const auto whole = static_cast<int>(tenths);
    return std::to_string(whole / 10) + "." + std::to_string(whole % 10);
  };
  CHECK(told_of(20, {{1, 2, "A7901", {}}}) ==
        "loop 1, independent stretch: it has " + minutes(1, 3) +
            " min of 20, and there is one of " + minutes(1, 7));
}

// More than three directions are too many to keep in mind: loopwright/wish/independent.hpp.
TEST_CASE("a stretch takes at most three directions", "[proof][independent]") {
  const std::string right = "turn right into Mill Road", left = "turn left into A7901";
  CHECK_THAT(told_of(3, {{1, 6, "", {right, left, right, left}}}, "XABEFCBEFCBAX"),
             Contains("independent stretch"));
}

TEST_CASE("a stretch lies on the road that the learner drives", "[proof][independent]") {
  const auto practised = [](std::size_t first, std::size_t last) {
    wish::Answer answer = asking(1, {{2, 5, "A7901", {}}});
    answer.loops[0].practice = {{first, last}};
    answer.wish.drive_out = town().roads().nodes[town().node('B').index()].at;
    answer.wish.drive_back = answer.wish.drive_out;
    return falsehood(town(), answer);
  };
  const std::string nowhere =
      "loop 1, independent stretch: it begins or ends inside a junction, or where nothing is "
      "practised";
  // Whether the seats are changed at B is told first.
  CHECK(practised(2, 5).find("inside a junction") == std::string::npos);
  wish::Answer backwards = asking(1, {{5, 2, "A7901", {}}});
  CHECK(falsehood(town(), backwards) == nowhere);
  backwards.loops[0].independent = {{2, 8, "A7901", {}}};
  CHECK(falsehood(town(), backwards) == nowhere);
}

TEST_CASE("where every road but ours turns off, the road ends", "[proof][independent]") {
  // Up Mill Road to the A7901, which runs to either side.
  CHECK(
      told_of(
          1,
          {{2, 4, "", {"turn left into Mill Road", "at the end of the road turn left into A7901"}}},
          "XADEBAX") == "");
}
