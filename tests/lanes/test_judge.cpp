// The worked case is common practice (no source): on a Saturday at three, a lane in force from 16:00
// may be used until four. Verdict words: those decided for the whole project.
#include <catch2/catch.hpp>

#include "loopwright/lanes/lanes.hpp"

namespace loopwright {
namespace {

using lanes::judge;
using wish::Verdict;

const hours::Setting england("GB-ENG", "Europe/London", {});

/// On Saturday 28 November 2026.
Instant at(int hour, int minute, int second = 0) {
  return {civil_seconds({{2026, 11, 28}, hour, minute, second}), 0};
}

std::string told(std::string_view hours, const Instant& from, const Instant& to) {
  const lanes::Judgement judgement = judge(hours, {from, to}, england);
  return std::string(wish::name(judgement.verdict)) + ": " + judgement.why;
}

TEST_CASE("a bus lane without mapped hours: check the plate", "[lanes]") {
  CHECK(told("", at(15, 41), at(15, 47)) == "check the plate: hours not mapped");
}

TEST_CASE("on Saturday at three a lane in force from four to seven is usable until four",
          "[lanes]") {
  const std::string_view hours = "Mo-Sa 16:00-19:00";
  CHECK(told(hours, at(15, 0), at(15, 1)) ==
        "usable: in force from 16:00; you pass 15:00 to 15:01");
  CHECK(told(hours, at(15, 41), at(15, 47)) ==
        "usable: in force from 16:00; you pass 15:41 to 15:47");
  CHECK(told(hours, at(15, 50), at(15, 59)) ==
        "usable: in force from 16:00; you pass 15:50 to 15:59");
  CHECK(judge(hours, {at(16, 0), at(16, 5)}, england).verdict == Verdict::in_force);
}

TEST_CASE("a lane at any time is in force", "[lanes]") {
  CHECK(told("24/7", at(15, 41), at(15, 47)) ==
        "in force: in force at any time; you pass 15:41 to 15:47");
}

TEST_CASE("a lane whose hours begin or end while we pass: check the plate", "[lanes]") {
  CHECK(told("Mo-Sa 16:00-19:00", at(15, 57), at(16, 3)) ==
        "check the plate: in force from 16:00; you pass 15:57 to 16:03");
  CHECK(told("Mo-Sa 16:00-19:00", at(18, 58), at(19, 2)) ==
        "check the plate: in force until 19:00; you pass 18:58 to 19:02");
}

TEST_CASE("a lane on a weekday only is usable on Saturday and says when it is in force again",
          "[lanes]") {
  CHECK(told("Mo-Fr 07:00-10:00,16:00-19:00", at(17, 0), at(17, 4)) ==
        "usable: in force from Monday 07:00; you pass 17:00 to 17:04");
  CHECK(told("off", at(17, 0), at(17, 4)) == "usable: never in force; you pass 17:00 to 17:04");
}

TEST_CASE("a lane in force says until when", "[lanes]") {
  CHECK(told("Mo-Sa 07:00-19:00", at(15, 41), at(15, 47)) ==
        "in force: in force until 19:00; you pass 15:41 to 15:47");
  CHECK(told("Sa,Su", at(15, 41), at(15, 41)) ==
        "in force: in force until Monday 00:00; you pass at 15:41");
}

TEST_CASE("seconds only ever widen the interval", "[lanes]") {
  CHECK(told("Mo-Sa 16:00-19:00", at(15, 41, 59), at(15, 59, 1)) ==
        "check the plate: in force from 16:00; you pass 15:41 to 16:00");
  CHECK(told("Mo-Sa 16:00-19:00", at(15, 41, 59), at(15, 59, 0)) ==
        "usable: in force from 16:00; you pass 15:41 to 15:59");
  CHECK(told("Mo-Sa 16:00-19:00", at(19, 0, 0), at(19, 4, 59)) ==
        "usable: in force from Monday 16:00; you pass 19:00 to 19:05");
}

// Trap 12: 25 October 2026, 01:00 UTC (Directive 2000/84/EC).
TEST_CASE("while the clocks change the hours are followed over the change", "[lanes]") {
  const Instant before = {civil_seconds({{2026, 10, 25}, 0, 58, 0}), 3600};
  const Instant after = {civil_seconds({{2026, 10, 25}, 1, 2, 0}), 0};
  CHECK(told("Mo-Su 05:00-06:00", before, after) ==
        "usable: in force from 05:00; you pass 01:58 to 01:02");
  // Ten to two, and the same ten minutes again: both are in it.
  CHECK(told("Mo-Su 01:30-02:00", before, after) ==
        "check the plate: in force until 01:00; you pass 01:58 to 01:02");
}

TEST_CASE("hours that can't be read: check the plate", "[lanes]") {
  CHECK(told("Mo-Fr 7 to 10 and 4 to 7", at(15, 41), at(15, 47)) ==
        "check the plate: hours can't be read: Mo-Fr 7 to 10 and 4 to 7");
}

TEST_CASE("what hangs on the day says on what", "[lanes]") {
  CHECK(told("flashing", at(15, 41), at(15, 47)) ==
        "check the plate: it hangs on what is seen on the day; you pass 15:41 to 15:47");
  CHECK(told("Sa 15:00-16:00; SH off", at(15, 41), at(15, 47)) ==
        "check the plate: school holidays matter and no terms given reach that day: give --terms; "
        "you pass "
        "15:41 to 15:47");
}

}  // namespace
}  // namespace loopwright
