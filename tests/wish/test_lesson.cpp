// When a loop ends, on the clock on the wall. Clock changes of 2026 in the United Kingdom: the Summer
// Time Order 2002 (last Sundays of March and October, at one o'clock Greenwich mean time).
#include <catch2/catch.hpp>

#include "loopwright/wish/lesson.hpp"

using namespace loopwright;

namespace {

const hours::Setting london("GB-ENG", "Europe/London", std::nullopt);

/// The end of an hour's loop begun at a moment, as written.
std::string end_of_an_hour(std::int64_t start_unix_s) {
  wish::Loop loop;
  loop.start = london.on_clock({start_unix_s, 0});
  loop.seconds.likely = 3000;
  loop.stop_seconds = 600;
  return write_time(wish::likely_end(loop, london));
}

}  // namespace

TEST_CASE("a loop on an ordinary day ends an hour later", "[wish]") {
  CHECK(end_of_an_hour(1795878000) == "2026-11-28T16:00:00+00:00");
}

TEST_CASE("a loop over the clock change of 25 October 2026 ends by the clock put back", "[wish]") {
  // From half past one, summer time, an hour later it is half past one again.
  CHECK(end_of_an_hour(1792888200) == "2026-10-25T01:30:00+00:00");
}

TEST_CASE("a loop over the clock change of 29 March 2026 ends by the clock put forward", "[wish]") {
  // From half past midnight an hour later it is half past two.
  CHECK(end_of_an_hour(1774744200) == "2026-03-29T02:30:00+01:00");
}

TEST_CASE("a lesson's time holds a slow drive too", "[wish]") {
  wish::Wish wish;
  wish.start = london.on_clock({1795878000, 0});
  wish.minutes = 60;
  CHECK(write_clock(wish::lesson_time(wish, london).to) == "16:08");
  wish.minutes.reset();
  CHECK(write_clock(wish::lesson_time(wish, london).to) == "18:20");
}
