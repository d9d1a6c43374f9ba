#include <catch2/catch.hpp>

#include "loopwright/book/lesson_times.hpp"

namespace loopwright::book {
namespace {

// A trade trainer's account (src/rules/lesson_times.txt): a lesson of 60 minutes never plans more than 45 of wheels turning.
TEST_CASE("a lesson of an hour has 45 minutes of wheels turning, 38 on a new topic",
          "[book][times]") {
  CHECK(lesson_times(60, Topic::known) == LessonTimes{10, 5, 45});
  CHECK(lesson_times(60, Topic::fresh) == LessonTimes{17, 5, 38});
  CHECK(lesson_times(90, Topic::fresh).wheels == 63);
  CHECK(lesson_times(120, Topic::known).wheels == 98);
  CHECK(lesson_times(20, Topic::fresh) == LessonTimes{5, 5, 10});
}

TEST_CASE("every length adds up, and a longer lesson never drives less", "[book][times]") {
  for (const Topic topic : {Topic::fresh, Topic::known}) {
    int before = 0;
    for (int length = 20; length <= 600; ++length) {
      const LessonTimes times = lesson_times(length, topic);
      CHECK(times.talk + times.reserve + times.wheels == length);
      CHECK((times.talk >= 0 && times.wheels >= before && times.wheels >= length / 3));
      before = times.wheels;
    }
  }
}

}  // namespace
}  // namespace loopwright::book
