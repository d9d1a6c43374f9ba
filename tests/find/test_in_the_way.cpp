// What a shortfall says of hours: only streets that are really in the way, "may be shut" where nobody
// can tell, and starts at which they are open. The meaning of the tags: OSM wiki, pages Conditional
// restrictions and Key:opening_hours/specification.
#include <catch2/catch.hpp>
#include <string>

#include "loopwright/find/find.hpp"
#include "loopwright/hours/zone.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

/// The crossing streets with more tags on some ways: "w11", tags, "w24", tags …
BuiltTown town_with(const std::vector<std::pair<std::string, std::string>>& tags) {
  std::string drawing(crossing_streets);
  for (const auto& [way, more] : tags) {
    const std::size_t at = drawing.find("  " + way + " ");
    REQUIRE(at != std::string::npos);
    drawing.insert(drawing.find('\n', at), " " + more);
  }
  return built_town(draw_town(drawing, 100), "GB-ENG");
}

/// Monday 30 November 2026 in Britain.
Instant monday(int hour, int minute) {
  return hours::instant_in("Europe/London", {{2026, 11, 30}, hour, minute, 0});
}

wish::Wish wish_at(const BuiltTown& town, const Instant& start, int minutes) {
  const road::Roads roads = town.roads();
  const Point a = roads.nodes[town.node('A').index()].at;
  wish::Wish wish;
  wish.home = point_from_degrees(a.lat(), a.lon() + 0.003);
  wish.start = start;
  wish.minutes = minutes;
  return wish;
}

wish::Wish over_the_crossing(const BuiltTown& town, const Instant& start, int minutes = 15) {
  wish::Wish wish = wish_at(town, start, minutes);
  wish.wants.push_back(wish::read_want("level-crossing=1"));
  return wish;
}

/// What falls short. Rules: something does.
wish::Shortfall shortfall_of(const BuiltTown& town, const wish::Wish& wish) {
  const road::Roads roads = town.roads();
  const find::FindResult result = find::find_loops(roads, wish, setting_of(roads));
  REQUIRE(result.shortfall);
  return *result.shortfall;
}

std::vector<std::string> clocks(const std::vector<Instant>& moments) {
  std::vector<std::string> all;
  for (const Instant& at : moments) all.push_back(write_clock(at));
  return all;
}

const std::string school = "motor_vehicle:conditional=\"no @ (Mo-Fr 08:15-09:15)\"";
const std::string always = "motor_vehicle:conditional=\"no @ (Mo-Su 00:00-24:00)\"";
const std::string in_term = "motor_vehicle:conditional=\"no @ (Mo-Fr 08:15-09:15; SH off)\"";

}  // namespace

TEST_CASE("a shortfall without any hours says nothing of them", "[find]") {
  const BuiltTown town = town_with({});
  wish::Wish wish = wish_at(town, monday(8, 20), 15);
  wish.wants.push_back(wish::read_want("zebra=1"));
  const wish::Shortfall shortfall = shortfall_of(town, wish);
  CHECK(shortfall.why == "the map has no zebra in this area");
  CHECK(shortfall.better_starts.empty());
}

TEST_CASE("a street in the way is named with its hours, and starts at which it is open", "[find]") {
  const BuiltTown town = town_with({{"w11", school}});
  const wish::Shortfall shortfall = shortfall_of(town, over_the_crossing(town, monday(8, 20)));
  CHECK(shortfall.why ==
        "no road leads to level-crossing and home again at that time: Hay Street is shut Monday to "
        "Friday, quarter past eight till quarter past nine");
  CHECK(clocks(shortfall.better_starts) == std::vector<std::string>{"07:55", "09:15"});
}

TEST_CASE("at a better start the wish is met", "[find]") {
  const BuiltTown town = town_with({{"w11", school}});
  const road::Roads roads = town.roads();
  for (const Instant& at :
       shortfall_of(town, over_the_crossing(town, monday(8, 20))).better_starts) {
    const auto then = find::find_loops(roads, over_the_crossing(town, at), setting_of(roads));
    CHECK_FALSE(then.shortfall);
  }
}

TEST_CASE("a street shut elsewhere is not blamed", "[find]") {
  const BuiltTown town = town_with({{"w11", school}, {"w24", always}, {"w23", always}});
  const wish::Shortfall shortfall = shortfall_of(town, over_the_crossing(town, monday(8, 20)));
  CHECK_THAT(shortfall.why, Catch::Contains("Hay Street is shut"));
  CHECK_THAT(shortfall.why, !Catch::Contains("Gate Street") && !Catch::Contains("South Street"));
}

TEST_CASE("hours are not blamed for what the map lacks, nor for an avoid", "[find]") {
  const BuiltTown town = town_with({{"w11", school}});
  wish::Wish wish = wish_at(town, monday(8, 20), 15);
  wish.wants.push_back(wish::read_want("zebra=1"));
  CHECK(shortfall_of(town, wish).why == "the map has no zebra in this area");
  wish = over_the_crossing(town, monday(10, 0));
  wish.avoids.push_back(wish::read_avoid("level-crossing"));
  const wish::Shortfall avoided = shortfall_of(town, wish);
  CHECK(avoided.why == "level-crossing is wanted and avoided by the same wish");
  CHECK(avoided.better_starts.empty());
}

TEST_CASE("two streets in the way one after the other are both named", "[find]") {
  // West of the railway the crossing can be come to over Hay Street alone, and east of it as well.
  const BuiltTown town =
      town_with({{"w11", school}, {"w12", always}, {"w13", always}, {"w25", always}});
  const wish::Shortfall shortfall = shortfall_of(town, over_the_crossing(town, monday(8, 20)));
  CHECK_THAT(shortfall.why, Catch::Contains("Hay Street is shut Monday to Friday"));
  CHECK_THAT(shortfall.why, Catch::Contains("East Way is shut"));
  // East Way is never open.
  CHECK(shortfall.better_starts.empty());
}

TEST_CASE("a street that may be shut for want of school terms is said so, with the remedy",
          "[find]") {
  const BuiltTown town = town_with({{"w11", in_term}});
  const wish::Shortfall shortfall = shortfall_of(town, over_the_crossing(town, monday(8, 20)));
  CHECK_THAT(shortfall.why, Catch::Contains("Hay Street may be shut, the map can't say ("));
  CHECK_THAT(shortfall.why, Catch::Contains("give --terms): shut Monday to Friday"));
  CHECK(clocks(shortfall.better_starts) == std::vector<std::string>{"07:55", "09:15"});
}

TEST_CASE("a turn in the way is told as its sign is spoken of", "[find]") {
  // Over the crossing only ahead from the roundabout, since Bell Yard ends before it.
  std::string drawing(crossing_streets);
  const std::size_t hay = drawing.find("  w11 GxH  ");
  drawing.insert(drawing.find('\n', hay), " oneway=yes");
  drawing +=
      "  r1 - from=w9 via=G to=w11 restriction:conditional=\"no_straight_on @ (Mo-Fr "
      "07:00-10:00)\"\n"
      "  r2 - from=w14 via=G to=w11 restriction:conditional=\"no_left_turn @ (Mo-Fr "
      "07:00-10:00)\"\n"
      "  r3 - from=w15 via=G to=w11 restriction:conditional=\"no_right_turn @ (Mo-Fr "
      "07:00-10:00)\"\n";
  const BuiltTown town = built_town(draw_town(drawing, 100), "GB-ENG");
  const wish::Shortfall shortfall = shortfall_of(town, over_the_crossing(town, monday(8, 0)));
  CHECK_THAT(shortfall.why, Catch::Contains("the turn into Hay Street is banned: no ") &&
                                Catch::Contains("Monday to Friday, seven till ten"));
  REQUIRE_FALSE(shortfall.better_starts.empty());
  CHECK(write_clock(shortfall.better_starts.back()) == "10:00");
}

TEST_CASE("a home whose street is shut at the start is told when it opens", "[find]") {
  const BuiltTown town = town_with({{"w1", school}});
  const wish::Shortfall shortfall = shortfall_of(town, wish_at(town, monday(9, 0), 15));
  CHECK(shortfall.why ==
        "the road at the home can't be driven within this wish: Lantern Row is shut Monday to "
        "Friday, quarter past eight till quarter past nine");
  CHECK(clocks(shortfall.better_starts) == std::vector<std::string>{"07:55", "09:15"});
}

TEST_CASE("a home whose street shuts before the return is told when it doesn't", "[find]") {
  const BuiltTown town = town_with({{"w1", school}});
  const wish::Shortfall shortfall = shortfall_of(town, wish_at(town, monday(8, 5), 20));
  CHECK_THAT(shortfall.why, Catch::Contains("Lantern Row is shut Monday to Friday"));
  REQUIRE(shortfall.better_starts.size() == 2);
  const road::Roads roads = town.roads();
  for (const Instant& at : shortfall.better_starts)
    CHECK_FALSE(find::find_loops(roads, wish_at(town, at, 20), setting_of(roads)).shortfall);
}

TEST_CASE("no better start is told when none is within four hours", "[find]") {
  const BuiltTown town =
      town_with({{"w11", "motor_vehicle:conditional=\"no @ (Mo-Sa 03:00-20:00)\""}});
  const wish::Shortfall shortfall = shortfall_of(town, over_the_crossing(town, monday(12, 0)));
  CHECK_THAT(shortfall.why, Catch::Contains("Hay Street is shut Monday to Saturday"));
  CHECK(shortfall.better_starts.empty());
  const std::string none = "; no better start up to 4 hours earlier or later was found";
  CHECK_THAT(shortfall.why, Catch::EndsWith(none));
  CHECK_THAT(shortfall.missing.front().why, Catch::EndsWith(none));
}

TEST_CASE("a better start of an own drive counts the minutes of that drive alone", "[find]") {
  const BuiltTown town = town_with({{"w11", school}});
  const road::Roads roads = town.roads();
  wish::Wish wish = wish_at(town, monday(8, 20), 60);
  const StretchId hay = town.stretch("Gx");
  wish.through = {point_along(roads.shape_of(hay.piece()), roads.piece(hay).length_m / 2)};
  const find::FindResult shut = find::route_through(roads, wish, setting_of(roads));
  REQUIRE(shut.shortfall);
  REQUIRE(shut.shortfall->better_starts.size() == 2);
  const Instant before = shut.shortfall->better_starts.front();
  CHECK(before.unix_s > monday(8, 0).unix_s);
  wish.start = before;
  CHECK_FALSE(find::route_through(roads, wish, setting_of(roads)).shortfall);
}

TEST_CASE("a better start keeps to the clock on the wall when the clocks go back", "[find]") {
  // Shut from half past one till two: of 25 October 2026 that hour comes twice.
  const BuiltTown town = town_with({{"w11", "motor_vehicle:conditional=\"no @ (01:00-02:00)\""}});
  const Instant start = setting_of(town.roads()).on_clock({1792888200, 0});  // 01:30 summer time
  const wish::Shortfall shortfall = shortfall_of(town, over_the_crossing(town, start));
  CHECK(clocks(shortfall.better_starts) == std::vector<std::string>{"00:40", "02:00"});
  REQUIRE(shortfall.better_starts.size() == 2);
  CHECK(shortfall.better_starts[1].unix_s == 1792893600);  // an hour and a half later
}

TEST_CASE("near says which street keeps the nearest away", "[find]") {
  const BuiltTown town = town_with({{"w11", school}});
  const road::Roads roads = town.roads();
  const wish::Wish wish = wish_at(town, monday(8, 20), 15);
  const wish::Want crossing = wish::read_want("level-crossing");
  CHECK(find::chances_near(roads, {wish, crossing, 10}, setting_of(roads)).empty());
  CHECK(find::kept_from_near(roads, {wish, crossing, 10}, setting_of(roads)) ==
        "Hay Street is shut Monday to Friday, quarter past eight till quarter past nine");
  CHECK(clocks(find::better_starts_near(roads, {wish, crossing, 10}, setting_of(roads))) ==
        std::vector<std::string>{"07:50", "09:15"});
  const wish::Want zebra = wish::read_want("zebra");
  CHECK(find::kept_from_near(roads, {wish, zebra, 10}, setting_of(roads)) == "");
}

TEST_CASE("near lists what a street leads to that shuts long after one is back", "[find]") {
  const BuiltTown town = town_with({{"w11", school}});
  const road::Roads roads = town.roads();
  const wish::Wish wish = wish_at(town, monday(6, 45), 15);
  const wish::Want crossing = wish::read_want("level-crossing");
  CHECK_FALSE(find::chances_near(roads, {wish, crossing, 10}, setting_of(roads)).empty());
}

}  // namespace loopwright::test
