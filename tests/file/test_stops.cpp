// Planned stops, places to pull up and ways home in the loop file: what is written is read again, what
// points nowhere is refused.
#include <catch2/catch.hpp>
#include <string>

#include "file/sample_answer.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/file/loop_file.hpp"

namespace loopwright::test {
namespace {

using Catch::Matchers::Contains;

wish::Answer sample() {
  wish::Answer answer = sample_answer();
  answer.wish.stops = {4, 5, {road::Kind::roundabout, road::Kind::zebra}};
  answer.shortfall->stops = {"loop 1: the talk near the end has no place"};
  wish::Loop& loop = answer.loops.front();
  loop.pull_ups = {{0, 40.25, true, "brief", 240, "no ban mapped", "check lines", 1300.5},
                   {1, 12, false, "", 0, "a lay-by", "check lines, parked cars", 0}};
  loop.stops_after = {{0, 1, 75.5}, {1, std::nullopt, 0}};
  loop.ways_home = {{0, 300.25, 4, {loop.stretches[1]}}};
  return answer;
}

std::string written() {
  return file::write_answer(sample());
}

wish::Answer again() {
  return file::read_answer(written(), "loops.json");
}

/// What is said of the sample with one part replaced.
std::string said_with(std::string_view part, std::string_view other) {
  std::string text = written();
  const std::size_t at = text.find(part);
  REQUIRE(at != std::string::npos);
  text.replace(at, part.size(), other);
  try {
    file::read_answer(text, "loops.json");
  } catch (const InputError& error) {
    return error.what();
  }
  return "nothing";
}

TEST_CASE("planned stops of a wish are kept", "[file][stops]") {
  CHECK(again().wish.stops == sample().wish.stops);
  CHECK(again().shortfall->stops == sample().shortfall->stops);
}

TEST_CASE("a wish without planned stops says nothing of them", "[file][stops]") {
  CHECK_THAT(file::write_answer(sample_answer()), !Contains("brief_minutes"));
}

TEST_CASE("places to pull up are kept in full", "[file][stops]") {
  const wish::Loop loop = again().loops.front();
  REQUIRE(loop.pull_ups.size() == 2);
  const wish::PullUp& brief = loop.pull_ups[0];
  CHECK(brief.stretch == 0);
  CHECK(brief.at_m == 40.25);
  CHECK(brief.left);
  CHECK(brief.purpose == "brief");
  CHECK(brief.seconds == 240);
  CHECK(brief.leave_by_s == 1300.5);
  CHECK(brief.why == "no ban mapped");
  CHECK(brief.check == "check lines");
  CHECK_FALSE(loop.pull_ups[1].left);
  CHECK(loop.pull_ups[1].purpose == "");
  CHECK(loop.pull_ups[1].leave_by_s == 0);
}

TEST_CASE("what comes after hard passes is kept, none as null", "[file][stops]") {
  const wish::Loop loop = again().loops.front();
  REQUIRE(loop.stops_after.size() == 2);
  CHECK(loop.stops_after[0].pull_up == 1);
  CHECK(loop.stops_after[0].seconds == 75.5);
  CHECK_FALSE(loop.stops_after[1].pull_up);
  CHECK_THAT(written(), Contains("\"pull_up\": null"));
}

TEST_CASE("ways home are kept with their stretches", "[file][stops]") {
  const wish::Loop loop = again().loops.front();
  REQUIRE(loop.ways_home.size() == 1);
  CHECK(loop.ways_home[0].seconds == 300.25);
  CHECK(loop.ways_home[0].hardest == 4);
  REQUIRE(loop.ways_home[0].stretches.size() == 1);
  CHECK(loop.ways_home[0].stretches[0].way == 124);
}

TEST_CASE("an older file without these lists is read", "[file][stops]") {
  CHECK(said_with("\"stops_after\"", "\"other\"") == "nothing");
  CHECK(said_with("\"ways_home\"", "\"other\"") == "nothing");
}

TEST_CASE("what points at no stretch, pass or place is refused", "[file][stops]") {
  CHECK(said_with("\"from_stretch\": 0", "\"from_stretch\": 2") ==
        "loops.json: /loops/0/ways_home/0/from_stretch: expected a whole number from 0 to 1, found "
        "2");
  CHECK(said_with("\"pull_up\": 1", "\"pull_up\": 2") ==
        "loops.json: /loops/0/stops_after/0/pull_up: expected a whole number from 0 to 1, found 2");
  CHECK(said_with("\"pass\": 0", "\"pass\": -1") ==
        "loops.json: /loops/0/stops_after/0/pass: expected a whole number from 0 to 1, found -1");
}

TEST_CASE("a stop for something else than a brief or a talk is refused", "[file][stops]") {
  CHECK(said_with("\"for\": \"brief\"", "\"for\": \"lunch\"") ==
        "loops.json: /loops/0/pull_ups/0/for: expected \"brief\" or \"talk\", found \"lunch\"");
}

}  // namespace
}  // namespace loopwright::test
