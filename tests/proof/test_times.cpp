#include <catch2/catch.hpp>
#include <cmath>

#include "proof/towns.hpp"

using namespace loopwright;
using namespace loopwright::test;
using wish::Answer;
using wish::Loop;

TEST_CASE("a wrong length is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.stretches[1].metres += 1; }) ==
        "loop 1, stretch 1 (way 2): the file says 101.0 m, the area says 100.0 m");
  CHECK(loop_with([](Loop& loop) { loop.metres -= 10; }) ==
        "loop 1: the file says 996.1 m, the area says 1006.1 m");
}

TEST_CASE("road driven twice that is kept quiet about is told", "[proof]") {
  const BuiltTown town = banned_town();
  Answer answer = own_drive(town, "ADEFGKGFJIEBAD");
  CHECK(falsehood(town, answer) == "");
  answer.loops[0].metres_twice = 0;
  CHECK(falsehood(town, answer) ==
        "loop 1, road driven twice: the file says 0.0 m, the area says 150.0 m");
}

TEST_CASE("a wrong limit is told, and a wrong degree of sureness", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.stretches[0].limit.value = 30; }) ==
        "loop 1, stretch 0 (way 1): the file says '30 mph, certain', the area says '20 mph, "
        "certain'");
  CHECK(loop_with([](Loop& loop) {
          loop.stretches[0].limit.confidence = road::LimitConfidence::check;
        }) ==
        "loop 1, stretch 0 (way 1): the file says '20 mph, check', the area says '20 mph, "
        "certain'");
}

TEST_CASE("a wrong time of arrival is told", "[proof]") {
  const auto starts = [](const std::string& text, std::string_view with) {
    return text.substr(0, with.size()) == with;
  };
  CHECK(starts(loop_with([](Loop& loop) { loop.stretches[3].arrive_s.likely += 1; }),
               "loop 1, stretch 3 (way 3), likely time: the file says "));
  CHECK(starts(loop_with([](Loop& loop) { loop.stretches[3].arrive_s.low -= 5; }),
               "loop 1, stretch 3 (way 3), low time: the file says "));
  CHECK(starts(loop_with([](Loop& loop) { loop.stretches[3].arrive_s.high += 5; }),
               "loop 1, stretch 3 (way 3), high time: the file says "));
  CHECK(starts(loop_with([](Loop& loop) { loop.seconds.likely -= 60; }),
               "loop 1, likely time: the file says "));
  CHECK(starts(loop_with([](Loop& loop) { loop.seconds.high -= 60; }),
               "loop 1, high time: the file says "));
}

TEST_CASE("times of another level than the learner's are told", "[proof]") {
  CHECK(lesson_with([](Answer& answer) { answer.wish.level = 1; }) ==
        "loop 1, stretch 1 (way 2), likely time: the file says 34.5 s, the area says 39.1 s");
}

TEST_CASE("a loop that starts at another hour than asked is told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.start.unix_s += 3600; }) ==
        "loop 1, start: the file says '2026-11-28T16:00:00+00:00', the area says "
        "'2026-11-28T15:00:00+00:00'");
}

TEST_CASE("a loop too long or too short for the minutes is told", "[proof]") {
  const BuiltTown town = lesson_town();
  Answer answer = true_answer(town, "ABrstuLWZAB");
  const int minutes = *answer.wish.minutes;
  CHECK(minutes == 5);
  answer.wish.minutes = minutes - 1;
  CHECK(falsehood(town, answer) == "loop 1: it takes 4.9 min, not 3.8 to 4.0 min");
  answer.wish.minutes = minutes + 1;
  CHECK(falsehood(town, answer) == "loop 1: it takes 4.9 min, not 5.7 to 6.0 min");
  answer.wish.reserve_minutes = 1;
  CHECK(falsehood(town, answer) == "");
  answer.wish.minutes.reset();
  CHECK(falsehood(town, answer) == "loop 1: the wish gives no minutes");
}

TEST_CASE("stops that are nowhere planned are told", "[proof]") {
  CHECK(loop_with([](Loop& loop) { loop.stop_seconds = 240; }) ==
        "loop 1, stops: the file says 240.0 s, the area says 0.0 s");
}

TEST_CASE("a loop that says when it ends says so by the clock of the area", "[proof]") {
  const auto ends = [](std::int64_t later_s, std::int32_t offset_s) {
    return loop_with([&](Loop& loop) {
      const auto likely = std::llround(loop.seconds.likely);
      loop.end = Instant{loop.start.unix_s + likely + later_s, offset_s};
    });
  };
  CHECK(ends(0, 0) == "");
  CHECK_THAT(ends(60, 0), Catch::StartsWith("loop 1, end: the file has "));
  CHECK_THAT(ends(0, 3600), Catch::StartsWith("loop 1, end: the file has "));
}
