// Bus lanes asked for at their hours: a pass counts only when the verdict holds all through the time of
// passing. The meaning of the tags: OSM wiki, pages Bus lanes and Conditional restrictions; the verdict:
// DEVELOPERS.md. Every drive found here is proved as well.
#include <catch2/catch.hpp>
#include <string>

#include "loopwright/find/find.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/proof/proof.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

using wish::Verdict;

/// The crossing streets with a bus lane along the road from the roundabout to the crossing.
BuiltTown town_with(const std::string& lane_tags) {
  std::string drawing(crossing_streets);
  const std::string way = "w9 pG    highway=tertiary name=Hay_Street";
  drawing.insert(drawing.find(way) + way.size(), " " + lane_tags);
  return built_town(draw_town(drawing, 100), "GB-ENG");
}

std::string lane_at(const std::string& hours) {
  return "lanes=3 lanes:forward=2 lanes:backward=1 "
         "bus:lanes:forward:conditional=\"designated|yes @ (" +
         hours + ")\" motor_vehicle:lanes:forward:conditional=\"no|yes @ (" + hours + ")\"";
}

const std::string peaks = "Mo-Sa 07:00-10:00,16:00-19:00";

/// Monday 30 November 2026.
Instant monday(int hour, int minute) {
  return hours::instant_in("Europe/London", {{2026, 11, 30}, hour, minute, 0});
}

struct Lesson {
  int hour = 0, minute = 0;
  int minutes = 15;
};

wish::Wish wish_at(const BuiltTown& town, const Lesson& lesson,
                   const std::vector<std::string>& wants) {
  const road::Roads roads = town.roads();
  const Point a = roads.nodes[town.node('A').index()].at;
  wish::Wish wish;
  wish.home = point_from_degrees(a.lat(), a.lon() + 0.003);
  wish.start = monday(lesson.hour, lesson.minute);
  wish.minutes = lesson.minutes;
  for (const std::string& want : wants) wish.wants.push_back(wish::read_want(want));
  return wish;
}

/// What is found, proved.
find::FindResult found(const BuiltTown& town, const wish::Wish& wish) {
  const road::Roads roads = town.roads();
  const hours::Setting setting = setting_of(roads);
  find::FindResult result = wish.through.empty() ? find::find_loops(roads, wish, setting)
                                                 : find::route_through(roads, wish, setting);
  wish::Answer answer;
  answer.area = {"drawn.area", roads.info().id, "GB-ENG", "left", "", ""};
  answer.wish = wish;
  answer.loops = result.loops;
  answer.shortfall = result.shortfall;
  answer.fewer_because = result.fewer_because;
  CHECK(proof::prove(roads, answer, setting).false_claim.value_or("") == "");
  return result;
}

bool is_met(const BuiltTown& town, const Lesson& lesson, const std::vector<std::string>& wants) {
  return !found(town, wish_at(town, lesson, wants)).shortfall;
}

/// Why the one want isn't met. Rules: it isn't.
wish::Shortfall shortfall_of(const BuiltTown& town, const Lesson& lesson, const std::string& want) {
  const find::FindResult result = found(town, wish_at(town, lesson, {want}));
  REQUIRE(result.shortfall);
  return *result.shortfall;
}

}  // namespace

TEST_CASE("a bus lane is met as usable outside its hours and as in force within", "[find]") {
  const BuiltTown town = town_with(lane_at(peaks));
  CHECK(is_met(town, {14, 0}, {"bus-lane:usable=1"}));
  CHECK(is_met(town, {8, 0}, {"bus-lane:in-force=1"}));
  CHECK_FALSE(is_met(town, {8, 0}, {"bus-lane:usable=1"}));
  CHECK_FALSE(is_met(town, {14, 0}, {"bus-lane:in-force=1"}));
  CHECK(is_met(town, {8, 0}, {"bus-lane=1"}));
}

TEST_CASE("a shortfall tells what holds on the bus lane, and a start at which it is otherwise",
          "[find]") {
  const BuiltTown town = town_with(lane_at(peaks));
  const wish::Shortfall busy = shortfall_of(town, {8, 0}, "bus-lane:usable=1");
  CHECK(busy.why == "the only bus lane in reach is in force all through; from 10:00 it is usable");
  REQUIRE_FALSE(busy.better_starts.empty());
  for (const Instant& at : busy.better_starts) {
    wish::Wish then = wish_at(town, {}, {"bus-lane:usable=1"});
    then.start = at;
    CHECK_FALSE(found(town, then).shortfall);
  }
  CHECK(shortfall_of(town, {14, 0}, "bus-lane:in-force=1").why ==
        "the only bus lane in reach is usable all through; from 16:00 it is in force");
}

TEST_CASE("a bus lane at all times is in force at every hour and never usable", "[find]") {
  const BuiltTown town = town_with(lane_at("24/7"));
  CHECK(is_met(town, {3, 0}, {"bus-lane:in-force=1"}));
  const wish::Shortfall never = shortfall_of(town, {3, 0}, "bus-lane:usable=1");
  CHECK(never.why == "the only bus lane in reach is in force all through");
  CHECK(never.better_starts.empty());
}

TEST_CASE("a bus lane without hours counts for neither", "[find]") {
  const BuiltTown town = town_with("busway:left=lane");
  CHECK(is_met(town, {14, 0}, {"bus-lane=1"}));
  for (const char* want : {"bus-lane:usable=1", "bus-lane:in-force=1"}) {
    CHECK(shortfall_of(town, {14, 0}, want).why ==
          "the map can't tell of the only bus lane in reach when it may be used: check the plate");
  }
}

TEST_CASE("an area without bus lanes says so, whatever their hours", "[find]") {
  CHECK(shortfall_of(town_with("surface=asphalt"), {14, 0}, "bus-lane:usable=1").why ==
        "the map has no bus-lane in this area");
}

TEST_CASE("a lane that changes in mid-lesson is come to before or after, as asked", "[find]") {
  const BuiltTown town = town_with(lane_at(peaks));
  CHECK(is_met(town, {15, 45, 30}, {"bus-lane:usable=1"}));
  CHECK(is_met(town, {15, 45, 30}, {"bus-lane:in-force=1"}));
  CHECK(is_met(town, {15, 40, 45}, {"bus-lane:usable=1", "bus-lane:in-force=1"}));
  CHECK(is_met(town, {9, 40, 45}, {"bus-lane:usable=1", "bus-lane:in-force=1"}));
}

TEST_CASE("of two lanes one behind the other only what is driven of them counts", "[find]") {
  // From the roundabout a lane at all times, over the railway one of the morning: a turn lies between.
  std::string drawing(crossing_streets);
  for (const auto& [way, hours] :
       {std::pair<std::string, std::string>{"w9 pG    highway=tertiary", "24/7"},
        {"w11 GxH  highway=tertiary", "Mo-Fr 07:00-09:30"}})
    drawing.insert(drawing.find(way) + way.size(), " " + lane_at(hours));
  const BuiltTown town = built_town(draw_town(drawing, 100), "GB-ENG");
  CHECK(is_met(town, {14, 0, 20}, {"bus-lane:in-force=1"}));
  CHECK(is_met(town, {14, 0, 20}, {"bus-lane:usable=1"}));
  CHECK(is_met(town, {14, 0, 30}, {"bus-lane:usable=1", "bus-lane:in-force=1"}));
  CHECK(is_met(town, {8, 0, 20}, {"bus-lane:in-force=1"}));
  CHECK_FALSE(is_met(town, {8, 0, 20}, {"bus-lane:usable=1"}));
}

TEST_CASE("a drive counts for the verdict that the list of its bus lanes tells", "[find]") {
  const BuiltTown town = town_with(lane_at(peaks));
  int usable = 0, in_force = 0, neither = 0;
  for (int minute = 45; minute < 75; ++minute) {
    wish::Wish wish = wish_at(town, {15 + minute / 60, minute % 60},
                              {"bus-lane:usable=1", "bus-lane:in-force=1"});
    wish.minutes.reset();
    wish.through = {town.roads().nodes[town.node('G').index()].at};
    const find::FindResult result = found(town, wish);
    REQUIRE(result.loops.size() == 1);
    const wish::Loop& loop = result.loops.front();
    REQUIRE(loop.bus_lanes.size() == 1);
    const Verdict told = loop.bus_lanes.front().verdict;
    CHECK(loop.met[0].got == (told == Verdict::usable ? 1 : 0));
    CHECK(loop.met[1].got == (told == Verdict::in_force ? 1 : 0));
    ++(told == Verdict::usable ? usable : told == Verdict::in_force ? in_force : neither);
  }
  CHECK(usable > 0);
  CHECK(in_force > 0);
  CHECK(neither > 0);  // the interval of passing straddles 16:00
}

TEST_CASE("as many usable bus lanes as fit are passed before the hours begin", "[find]") {
  const BuiltTown town = town_with(lane_at(peaks));
  const find::FindResult result = found(town, wish_at(town, {15, 45, 30}, {"bus-lane:usable=max"}));
  REQUIRE(result.loops.size() == 1);
  CHECK(result.loops.front().met.front().got > 0);
}

TEST_CASE("the nearest bus lanes are those with the verdict on arriving there", "[find]") {
  const BuiltTown town = town_with(lane_at(peaks));
  const road::Roads roads = town.roads();
  const hours::Setting setting = setting_of(roads);
  const auto near = [&](int hour, const char* want) {
    const wish::Wish wish = wish_at(town, {hour, 0}, {want});
    return find::chances_near(roads, {wish, wish.wants.front(), 10}, setting).size();
  };
  CHECK(near(14, "bus-lane") > 0);
  CHECK(near(14, "bus-lane:usable") == near(14, "bus-lane"));
  CHECK(near(14, "bus-lane:in-force") == 0);
  CHECK(near(8, "bus-lane:usable") == 0);
  CHECK(near(8, "bus-lane:in-force") == near(8, "bus-lane"));
}

}  // namespace loopwright::test
