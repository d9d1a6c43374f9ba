// What the clock shuts while a lesson is on the road: it is never driven while it may be shut, and is
// driven when it may not. The meaning of the tags: OSM wiki, pages Conditional restrictions and
// Key:opening_hours/specification. Every drive found here is proved as well.
#include <catch2/catch.hpp>
#include <string>

#include "loopwright/find/find.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/proof/proof.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

/// The crossing streets, with more tags on the street over the railway and more relations.
BuiltTown town_with(const std::string& hay_street_tags, const std::string& relations = {}) {
  std::string drawing(crossing_streets);
  const std::string way = "w11 GxH  highway=tertiary name=Hay_Street";
  drawing.insert(drawing.find(way) + way.size(), " " + hay_street_tags);
  return built_town(draw_town(drawing + relations, 100), "GB-ENG");
}

struct Lesson {
  int hour = 0, minute = 0;
  int minutes = 15;
};

/// A wish for the level crossing, from Lantern Row on Monday 30 November 2026.
wish::Wish wish_at(const BuiltTown& town, const Lesson& lesson) {
  const road::Roads roads = town.roads();
  const Point a = roads.nodes[town.node('A').index()].at;
  wish::Wish wish;
  wish.home = point_from_degrees(a.lat(), a.lon() + 0.003);
  wish.start = hours::instant_in("Europe/London", {{2026, 11, 30}, lesson.hour, lesson.minute, 0});
  wish.minutes = lesson.minutes;
  wish.wants.push_back(wish::read_want("level-crossing=1"));
  return wish;
}

struct Found {
  find::FindResult result;
  std::string false_claim;
  [[nodiscard]] bool crosses() const {
    return !result.loops.empty() && result.loops.front().met.front().got > 0;
  }
};

Found found(const BuiltTown& town, const Lesson& lesson, hours::SchoolTerms terms = {}) {
  const road::Roads roads = town.roads();
  const hours::Setting setting = road::setting_of(roads.info(), std::nullopt, std::move(terms));
  const wish::Wish wish = wish_at(town, lesson);
  Found found{find::find_loops(roads, wish, setting), {}};
  wish::Answer answer;
  answer.area = {"drawn.area", roads.info().id, "GB-ENG", "left", "", ""};
  answer.wish = wish;
  answer.loops = found.result.loops;
  answer.shortfall = found.result.shortfall;
  answer.fewer_because = found.result.fewer_because;
  found.false_claim = proof::prove(roads, answer, setting).false_claim.value_or("");
  return found;
}

const std::string school = "motor_vehicle:conditional=\"no @ (Mo-Fr 08:15-09:15)\"";

}  // namespace

TEST_CASE("a street shut all through the lesson is left out, and the shortfall says so", "[find]") {
  const BuiltTown town = town_with(school);
  const Found shut = found(town, {8, 20});
  CHECK(shut.false_claim == "");
  CHECK_FALSE(shut.crosses());
  REQUIRE(shut.result.shortfall);
  const Found free = found(town, {10, 0});
  CHECK(free.false_claim == "");
  CHECK(free.crosses());
}

TEST_CASE("what is shut for a part of the lesson takes nothing from the bound",
          "[find][certificate]") {
  const BuiltTown town = town_with(school);
  const road::Roads roads = town.roads();
  const hours::Setting setting = road::setting_of(roads.info(), std::nullopt, {});
  const auto certificate_at = [&](int hour, int minute) {
    wish::Wish wish = wish_at(town, {hour, minute, 20});
    wish.wants = {wish::read_want("roundabout=max")};
    const auto result = find::find_loops(roads, wish, setting);
    REQUIRE_FALSE(result.loops.empty());
    return result.loops.front().certificate;
  };
  const wish::Certificate open = certificate_at(10, 0);
  for (const int minute : {0, 5, 10}) {  // shut from 08:15 on
    const wish::Certificate partly = certificate_at(8, minute);
    CAPTURE(minute);
    REQUIRE(partly.bound);
    CHECK(*partly.bound >= partly.value);
    CHECK(*partly.bound >= open.value);
  }
}

TEST_CASE("a street that opens in mid-lesson is driven after it does", "[find]") {
  const BuiltTown town = town_with(school);
  const Found late = found(town, {9, 5, 30});
  CHECK(late.false_claim == "");
  CHECK(late.crosses());
}

TEST_CASE("a street that shuts in mid-lesson is driven before it does", "[find]") {
  const BuiltTown town = town_with(school);
  const Found early = found(town, {8, 0, 30});
  CHECK(early.false_claim == "");
  CHECK(early.crosses());
}

TEST_CASE("a street that hangs on school holidays is driven when the terms are known", "[find]") {
  const BuiltTown town =
      town_with("motor_vehicle:conditional=\"no @ (Mo-Fr 08:15-09:15; SH off)\"");
  CHECK_FALSE(found(town, {8, 20}).crosses());
  const hours::SchoolTerms holidays(std::vector<hours::TermPart>{{{2026, 9, 1}, {2026, 11, 20}},
                                                                 {{2026, 12, 7}, {2026, 12, 18}}});
  const hours::SchoolTerms term(std::vector<hours::TermPart>{{{2026, 9, 1}, {2026, 12, 18}}});
  const Found in_holidays = found(town, {8, 20}, holidays);
  CHECK(in_holidays.crosses());
  CHECK(in_holidays.false_claim == "");
  CHECK_FALSE(found(town, {8, 20}, term).crosses());
}

TEST_CASE("what nobody can tell beforehand keeps the car out", "[find]") {
  CHECK_FALSE(found(town_with("motor_vehicle:conditional=\"no @ flashing\""), {12, 0}).crosses());
  CHECK_FALSE(
      found(town_with("motor_vehicle:conditional=\"no @ (when busy)\""), {12, 0}).crosses());
}

TEST_CASE("a bus gate is driven outside its hours alone", "[find]") {
  const BuiltTown town =
      town_with("motor_vehicle:conditional=\"no @ (Mo-Sa 07:00-19:00)\" bus=yes");
  CHECK_FALSE(found(town, {12, 0}).crosses());
  const Found evening = found(town, {20, 0});
  CHECK(evening.crosses());
  REQUIRE_FALSE(evening.result.loops.empty());
  const auto& lanes = evening.result.loops.front().bus_lanes;
  REQUIRE_FALSE(lanes.empty());
  CHECK(lanes.front().what == "bus-only street");  // it is 500 m long
  CHECK(lanes.front().verdict == wish::Verdict::usable);
}

TEST_CASE("a turn banned by the hour is made at other hours", "[find]") {
  // Over the crossing from the roundabout only ahead, and from Bell Yard not at all, in the morning.
  const BuiltTown town =
      town_with("oneway=yes",
                "  r1 - from=w9 via=G to=w11 restriction:conditional=\"no_straight_on @ (Mo-Fr "
                "07:00-10:00)\"\n"
                "  r2 - from=w14 via=G to=w11 restriction:conditional=\"no_left_turn @ (Mo-Fr "
                "07:00-10:00)\"\n"
                "  r3 - from=w15 via=G to=w11 restriction:conditional=\"no_right_turn @ (Mo-Fr "
                "07:00-10:00)\"\n");
  const Found morning = found(town, {8, 0});
  CHECK_FALSE(morning.crosses());
  CHECK(morning.false_claim == "");
  const Found later = found(town, {11, 0});
  CHECK(later.crosses());
  CHECK(later.false_claim == "");
}

TEST_CASE("in the night in which the clocks go back a street keeps to the clock on the wall",
          "[find]") {
  const BuiltTown town = town_with("motor_vehicle:conditional=\"no @ (01:30-02:00)\"");
  const road::Roads roads = town.roads();
  const hours::Setting setting = setting_of(roads);
  wish::Wish wish = wish_at(town, {0, 0});
  // 00:50 UTC is 01:50 by summer time: shut until two, when it is one again, and shut at half past.
  wish.start = setting.on_clock({1792889400, 0});
  wish.minutes = 30;
  const find::FindResult result = find::find_loops(roads, wish, setting);
  REQUIRE_FALSE(result.loops.empty());
  CHECK(result.loops.front().met.front().got > 0);
}

TEST_CASE("the instructor's own drive over a street is refused while it is shut", "[find]") {
  const BuiltTown town = town_with(school);
  const road::Roads roads = town.roads();
  const hours::Setting setting = setting_of(roads);
  const auto over_hay_street = [&](int hour) {
    wish::Wish wish = wish_at(town, {hour, 20});
    wish.wants.clear(), wish.minutes.reset();
    const StretchId hay_street = town.stretch("Gx");
    wish.through = {point_along(roads.shape_of(hay_street.piece()), 100)};
    return find::route_through(roads, wish, setting);
  };
  const find::FindResult shut = over_hay_street(8);
  CHECK(shut.loops.empty());
  REQUIRE(shut.shortfall);
  CHECK_THAT(shut.shortfall->why,
             Catch::Contains("Hay Street is shut Monday to Friday, quarter past "
                             "eight till quarter past nine"));
  const find::FindResult free = over_hay_street(10);
  REQUIRE(free.loops.size() == 1);
  CHECK(std::ranges::count(free.loops.front().stretches, 11, &wish::LoopStretch::way) > 0);
}

}  // namespace loopwright::test
