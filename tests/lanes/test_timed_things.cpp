// What a thing with hours is called, and whether our car may use it. Verdicts follow from the hours
// as written: common practice, no outside source. Doubt is "check the plate" at a bus lane and keep
// out at a street or turn: ours (DEVELOPERS.md, HOURS).
#include <catch2/catch.hpp>

#include "loopwright/lanes/timed_things.hpp"

namespace loopwright {
namespace {

using lanes::May;
using lanes::Thing;
using lanes::TimedThing;

const hours::Setting england("GB-ENG", "Europe/London", {});

/// On Monday 30 November 2026.
Instant at(int hour, int minute = 0) {
  return {civil_seconds({{2026, 11, 30}, hour, minute, 0}), 0};
}

TimedThing with_hours(Thing kind, std::string shut) {
  TimedThing thing;
  thing.thing = kind;
  thing.shut = std::move(shut);
  return thing;
}

TimedThing limit(std::string base, std::string values) {
  TimedThing thing;
  thing.thing = Thing::limit;
  thing.base = std::move(base);
  thing.values = std::move(values);
  return thing;
}

std::string told(const TimedThing& thing, const Instant& from, const Instant& to) {
  const lanes::ThingVerdict verdict = lanes::verdict_on(thing, {from, to}, england);
  const std::string words = lanes::verdict_words(thing.thing, verdict);
  return verdict.because.empty() ? words : words + " (" + verdict.because + ")";
}

}  // namespace

TEST_CASE("each thing with hours has one name", "[lanes]") {
  wish::BusLanePass lane;
  CHECK(name(lanes::thing_of(lane)) == "bus lane");
  lane.what = "bus gate";
  CHECK(lanes::thing_of(lane) == Thing::bus_gate);
  CHECK(name(lanes::thing_of(road::Timed::access)) == "street");
  CHECK(name(lanes::thing_of(road::Timed::limit)) == "speed limit");
  CHECK(name(lanes::thing_of(road::Timed::gate, 30)) == "bus gate");
  CHECK(name(lanes::thing_of(road::Timed::gate, 300)) == "bus-only street");
}

TEST_CASE("a lane without hours: check the plate, and the map can't say when it changes",
          "[lanes]") {
  const TimedThing lane = with_hours(Thing::bus_lane, "");
  CHECK(told(lane, at(8), at(8)) == "check the plate");
  CHECK(!lanes::next_change(lane, at(8), england));
  CHECK(lanes::no_change_words(lane, at(8), england) == "the map can't say");
}

TEST_CASE("a lane is usable outside its hours, and in force in them", "[lanes]") {
  const TimedThing lane = with_hours(Thing::bus_lane, "Mo-Fr 07:00-10:00");
  CHECK(told(lane, at(6), at(6, 59)) == "usable");
  CHECK(told(lane, at(7), at(7, 5)) == "in force, keep out");
  CHECK(told(lane, at(6, 58), at(7, 2)) == "check the plate");
  CHECK(lanes::next_change(lane, at(8), england) == at(10));
}

TEST_CASE("a doubtful lane is never usable", "[lanes]") {
  TimedThing lane = with_hours(Thing::bus_lane, "Mo-Fr 07:00-10:00");
  lane.doubt = "the map says at all times, too";
  CHECK(told(lane, at(6), at(6)) == "check the plate");
  CHECK(told(lane, at(8), at(8)) == "in force, keep out");
}

TEST_CASE("a street or turn that may be shut is keep out, not a plate to check", "[lanes]") {
  const std::string no_terms =
      " (school holidays matter and no terms given reach that day: give --terms)";
  const std::string school = "Mo-Fr 08:00-09:00; SH off";
  CHECK(told(with_hours(Thing::street, school), at(8), at(8)) == "keep out" + no_terms);
  CHECK(told(with_hours(Thing::turn, school), at(8), at(8)) ==
        "keep out, don't turn here" + no_terms);
  CHECK(told(with_hours(Thing::bus_gate, school), at(8), at(8)) == "check the plate" + no_terms);
  CHECK(told(with_hours(Thing::street, school), at(10), at(10)) == "may be driven");
  CHECK(told(with_hours(Thing::turn, school), at(10), at(10)) == "may be made");
}

TEST_CASE("a limit by the hour has its value, or several to look for", "[lanes]") {
  const TimedThing school = limit("30 mph", "20 mph @ (Mo-Fr 08:00-09:00)");
  CHECK(told(school, at(8), at(8, 10)) == "20 mph");
  CHECK(told(school, at(8, 50), at(9, 10)) == "30 mph or 20 mph, check the signs");
  CHECK(lanes::next_change(school, at(8), england) == at(9));
  const TimedThing lights = limit("", "20 mph @ flashing");
  CHECK(told(lights, at(8), at(8)) ==
        "the usual limit or 20 mph, check the signs (it hangs on what is seen on the day)");
  CHECK(lanes::no_change_words(lights, at(8), england) == "the map can't say");
  CHECK(told(limit("50", "GB:nsl_single @ (20:00-06:00)"), at(22), at(22)) == "the national limit");
}

TEST_CASE("what never changes says so, and so does what is over", "[lanes]") {
  const TimedThing always = with_hours(Thing::bus_lane, "24/7");
  CHECK(lanes::no_change_words(always, at(8), england) == "none, it never changes");
  const TimedThing over = with_hours(Thing::street, "2020 Mar 02-2020 May 10");
  CHECK(told(over, at(8), at(8)) == "may be driven");
  CHECK(lanes::no_change_words(over, at(8), england) == "none to come");
  TimedThing towards = with_hours(Thing::contraflow_lane, "07:00-10:00");
  towards.never = "it runs against the other traffic";
  CHECK(told(towards, at(12), at(12)) == "in force, keep out (it runs against the other traffic)");
  CHECK(lanes::no_change_words(towards, at(8), england) == "none, it never changes");
}

TEST_CASE("a bank holiday that decides is told by its name", "[lanes]") {
  const hours::Setting scotland("GB-SCT", "Europe/London", {});
  const TimedThing lane = with_hours(Thing::bus_lane, "Mo-Fr 07:00-10:00; PH off");
  const auto verdict = lanes::verdict_on(lane, {at(8), at(8)}, scotland);
  CHECK(verdict.may == May::yes);
  CHECK(verdict.because == "it is a bank holiday, St Andrew's Day");
}

TEST_CASE("a turn at the very start is met no earlier than the start", "[lanes]") {
  wish::Loop loop;
  loop.start = at(15);
  loop.stretches.resize(2);
  loop.stretches[1].arrive_s = {20, 25, 40};
  loop.seconds = {60, 60, 60};
  const lanes::Passing turning = lanes::turning_into(loop, 1, england);
  CHECK(turning.from == at(15));
  CHECK(turning.to == at(15, 1));
  loop.stretches[1].arrive_s = {180, 190, 200};
  CHECK(lanes::turning_into(loop, 1, england).from == at(15, 2));
}

TEST_CASE("a time that only a replaced part of the text names: the plate for a lane, keep out else",
          "[lanes]") {
  const std::string both = "Mo-Fr 07:00-10:00; Mo-Fr 16:00-19:00";
  const std::string why =
      " (an earlier part of the text names that time, but a later part replaces it)";
  CHECK(told(with_hours(Thing::bus_lane, both), at(8, 30), at(8, 32)) == "check the plate" + why);
  CHECK(told(with_hours(Thing::street, both), at(8, 30), at(8, 32)) == "keep out" + why);
  CHECK(told(with_hours(Thing::bus_lane, both), at(12), at(12)) == "usable");
  CHECK(told(with_hours(Thing::bus_lane, both), at(17), at(17)) == "in force, keep out");
}

}  // namespace loopwright
