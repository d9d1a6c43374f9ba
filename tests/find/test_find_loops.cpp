// Loops on a drawn town: time window, wants, avoids, alternatives, shortfalls.
// Definitions: DEVELOPERS.md, "Time", "Value of a loop". What they claim is proved in every case.
#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/wish/turn_round.hpp"
#include "loopwright/wish/wish.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {

namespace {

const BuiltTown& streets() {
  static const BuiltTown town = built_town(draw_town(crossing_streets, 100), "GB-ENG");
  return town;
}

wish::Wish wish_for(int minutes, std::initializer_list<std::string_view> wants) {
  const road::Roads roads = streets().roads();
  const Point a = roads.nodes[streets().node('A').index()].at;
  wish::Wish wish;
  wish.home = point_from_degrees(a.lat(), a.lon() + 0.003);
  wish.start = {1795878000, 0};
  wish.minutes = minutes;
  for (const std::string_view want : wants) wish.wants.push_back(wish::read_want(want));
  return wish;
}

void check_window(const wish::Loop& loop, int minutes) {
  CHECK(loop.seconds.likely >= 0.95 * 60 * minutes);
  CHECK(loop.seconds.likely <= 60.0 * minutes);
}

}  // namespace

TEST_CASE("a wish for nothing but minutes is a loop that fills them", "[find]") {
  const auto result = find::find_loops(streets().roads(), wish_for(15, {}), {});
  REQUIRE(result.loops.size() == 1);
  CHECK_FALSE(result.shortfall);
  check_window(result.loops[0], 15);
}

TEST_CASE("a loop begins and ends at home", "[find]") {
  const auto result = find::find_loops(streets().roads(), wish_for(15, {"roundabout=1"}), {});
  REQUIRE(result.loops.size() == 1);
  const wish::LoopStretch& first = result.loops[0].stretches.front();
  const wish::LoopStretch& last = result.loops[0].stretches.back();
  CHECK(first.way == last.way);
  REQUIRE(first.partial_m);
  REQUIRE(last.partial_m);
  const double length = streets().roads().piece(first.stretch).length_m;
  const double start = first.against ? length - (*first.partial_m)[0] : (*first.partial_m)[0];
  const double end = last.against ? length - (*last.partial_m)[1] : (*last.partial_m)[1];
  CHECK(start == Approx(end));
}

TEST_CASE("what is wanted is driven as often as asked", "[find]") {
  const auto wish = wish_for(20, {"roundabout:right=2", "level-crossing=1", "mini-roundabout=2"});
  const auto result = find::find_loops(streets().roads(), wish, {});
  REQUIRE(result.loops.size() == 1);
  CHECK_FALSE(result.shortfall);
  check_window(result.loops[0], 20);
  for (const wish::Met& met : result.loops[0].met) CHECK(met.got >= met.want.count.value_or(0));
}

TEST_CASE("as many as fit are worth more than one asked for by number", "[find]") {
  const auto one = find::find_loops(streets().roads(), wish_for(20, {"roundabout=1"}), {});
  const auto many = find::find_loops(streets().roads(), wish_for(20, {"roundabout=max"}), {},
                                     find::Effort::thorough);
  REQUIRE(many.loops.size() == 1);
  CHECK_FALSE(one.loops[0].met[0].practised);
  CHECK(many.loops[0].met[0].practised->size() >= 3);
  CHECK(many.loops[0].certificate.value > 2000);
}

TEST_CASE("what is avoided is not driven", "[find]") {
  auto wish = wish_for(15, {"level-crossing=1"});
  wish.avoids = {{road::Kind::roundabout}, {road::Kind::narrow_road}};
  const auto result = find::find_loops(streets().roads(), wish, {});
  REQUIRE(result.loops.size() == 1);
  for (const wish::Pass& pass : result.loops[0].passes) {
    CHECK_FALSE(road::meets(pass.kind, road::Kind::roundabout));
    CHECK_FALSE(road::meets(pass.kind, road::Kind::narrow_road));
  }
}

TEST_CASE("what is avoided by one movement is driven by the others", "[find]") {
  auto wish = wish_for(15, {"emerge:left=1"});
  wish.avoids = {wish::read_avoid("emerge:right")};
  const auto result = find::find_loops(streets().roads(), wish, {});
  REQUIRE(result.loops.size() == 1);
  CHECK_FALSE(result.shortfall);
  CHECK(result.loops[0].met[0].got >= 1);
  for (const wish::Pass& pass : result.loops[0].passes)
    CHECK_FALSE(wish::is_avoided(wish.avoids[0], pass.kind, pass.movement));
}

TEST_CASE("a level keeps out what is two above it, unless asked for by name", "[find]") {
  auto wish = wish_for(15, {"twenty-limit=1"});
  wish.level = 1, wish.level_given = true;
  const auto easy = find::find_loops(streets().roads(), wish, {});
  for (const wish::Loop& loop : easy.loops)
    for (const wish::Pass& pass : loop.passes) CHECK(pass.hardness <= 2);
  wish.wants = {wish::read_want("roundabout=1")};
  const auto asked = find::find_loops(streets().roads(), wish, {});
  REQUIRE(asked.loops.size() == 1);
  CHECK(asked.loops[0].met[0].got >= 1);
}

TEST_CASE("the reserve is kept free", "[find]") {
  auto wish = wish_for(20, {});
  wish.reserve_minutes = 5;
  const auto result = find::find_loops(streets().roads(), wish, {});
  REQUIRE(result.loops.size() == 1);
  check_window(result.loops[0], 15);
}

TEST_CASE("the same wish gives the same loops", "[find]") {
  const auto wish = wish_for(20, {"roundabout=2", "level-crossing=1"});
  const auto one = find::find_loops(streets().roads(), wish, {});
  const auto two = find::find_loops(streets().roads(), wish, {});
  REQUIRE(one.loops.size() == two.loops.size());
  for (std::size_t k = 0; k < one.loops.size(); ++k) {
    REQUIRE(one.loops[k].stretches.size() == two.loops[k].stretches.size());
    for (std::size_t i = 0; i < one.loops[k].stretches.size(); ++i)
      CHECK(one.loops[k].stretches[i].stretch == two.loops[k].stretches[i].stretch);
  }
}

TEST_CASE("alternatives share less than two fifths of their road, or are said to be fewer",
          "[find]") {
  auto wish = wish_for(15, {"level-crossing=1"});
  wish.alternatives = 3;
  const auto result = find::find_loops(streets().roads(), wish, {});
  REQUIRE_FALSE(result.loops.empty());
  for (std::size_t a = 0; a < result.loops.size(); ++a)
    for (std::size_t b = a + 1; b < result.loops.size(); ++b)
      CHECK(find::shared_part(result.loops[a], result.loops[b], 500) < 0.4);
  CHECK((result.loops.size() == 3) == result.fewer_because.empty());
}

TEST_CASE("a loop may end elsewhere than it begins", "[find]") {
  auto wish = wish_for(15, {});
  const road::Roads roads = streets().roads();
  wish.end = roads.nodes[streets().node('P').index()].at;
  const auto result = find::find_loops(roads, wish, {});
  REQUIRE(result.loops.size() == 1);
  check_window(result.loops[0], 15);
  CHECK(result.loops[0].stretches.back().street != result.loops[0].stretches.front().street);
}

TEST_CASE("a kind the map doesn't have is a shortfall that says so", "[find]") {
  const auto result = find::find_loops(streets().roads(), wish_for(15, {"zebra=1"}), {});
  REQUIRE(result.shortfall);
  CHECK(result.shortfall->why == "the map has no zebra in this area");
  REQUIRE(result.shortfall->missing.size() == 1);
  CHECK(result.shortfall->missing[0].got == 0);
  CHECK(result.loops.size() == 1);  // the loop there is
}

TEST_CASE("a kind too far for the minutes is named with its distance", "[find]") {
  const auto result = find::find_loops(streets().roads(), wish_for(3, {"level-crossing=1"}), {});
  REQUIRE(result.shortfall);
  REQUIRE(result.shortfall->missing.size() == 1);
  CHECK(result.shortfall->missing[0].nearest_minutes > 0.5);
  CHECK(*result.shortfall->missing[0].needs_minutes > 3);
}

// Some streets round two blocks, which a lane too narrow for a hardness of 3 leads out of.
TEST_CASE("streets too few to fill the minutes are told so, and no want is called missing",
          "[find]") {
  const BuiltTown town = built_town(draw_town(R"(
    A     B     C     x     D     H

    E     F     G           I     J
  w1 AB    highway=residential name=Ostler_Street maxspeed="30 mph"
  w2 BC    highway=residential name=Ostler_Street maxspeed="30 mph"
  w3 AE    highway=residential name=Hay_Street maxspeed="30 mph"
  w4 EFG   highway=residential name=Mill_Street maxspeed="30 mph"
  w5 CG    highway=residential name=Weir_Street maxspeed="30 mph"
  w6 BF    highway=residential name=Fold_Street maxspeed="30 mph"
  w7 CxD   highway=residential name=Bell_Lane width=2.4 maxspeed="30 mph"
  w8 DHJID highway=tertiary name=East_Way maxspeed="30 mph"
)",
                                              200),
                                    "GB-ENG");
  const road::Roads roads = town.roads();
  wish::Wish wish;
  wish.home = roads.nodes[town.node('A').index()].at;
  wish.start = {1795878000, 0};
  wish.minutes = 45;
  wish.hardest = 3;
  wish.wants.push_back(wish::read_want("turn-off=1"));
  const auto result = find::find_loops(roads, wish, {});
  CHECK(result.loops.empty());
  REQUIRE(result.shortfall);
  CHECK(result.shortfall->missing.empty());
  CHECK_THAT(result.shortfall->why,
             Catch::StartsWith("no loop of 43 to 45 minutes was found that drives no quiet "
                               "residential street more than 2 times; only ") &&
                 Catch::EndsWith(" % of the roads within the minutes may be driven: the others are "
                                 "avoided or too hard, or lie behind such"));
  REQUIRE(result.shortfall->least_minutes);
  CHECK(*result.shortfall->least_minutes < 10);
  wish.hardest.reset();
  wish.minutes = 10;
  const auto shorter = find::find_loops(roads, wish, {});
  CHECK_FALSE(shorter.shortfall);
}

// A single-track lane, of hardness 4 by the table, leads to the only zebra.
TEST_CASE(
    "of what lies behind something too hard it is told what would do, of a lesson that is easy "
    "first too",
    "[find]") {
  const BuiltTown town = built_town(draw_town(R"(
    A     B     C     x     D     H

    E     F     G           I     J
  w1 ABC   highway=tertiary name=Ostler_Street maxspeed="30 mph"
  w3 AE    highway=tertiary name=Hay_Street maxspeed="30 mph"
  w4 EFG   highway=tertiary name=Mill_Street maxspeed="30 mph"
  w5 CG    highway=tertiary name=Weir_Street maxspeed="30 mph"
  w7 CxD   highway=residential name=Bell_Lane width=2.4 maxspeed="30 mph"
  w8 DHJID highway=tertiary name=East_Way maxspeed="30 mph"
  nH  highway=crossing crossing=zebra crossing_ref=zebra
)",
                                              200),
                                    "GB-ENG");
  const road::Roads roads = town.roads();
  wish::Wish wish;
  wish.home = roads.nodes[town.node('A').index()].at;
  wish.start = {1795878000, 0};
  wish.minutes = 30;
  wish.level = 2, wish.level_given = true;
  wish.wants.push_back(wish::read_want("zebra=1"));
  const std::string barred = "every way to zebra passes something that is avoided or too hard";
  const auto why = [&] {
    const auto shortfall = find::find_loops(roads, wish, {}).shortfall;
    REQUIRE(shortfall);
    return shortfall->why;
  };
  CHECK(why() == barred + " for the level; at level 3 some can be reached");
  wish.easy_first = true;
  CHECK(why() == barred + " for the level; at level 3 some can be reached");
  wish.easy_first = wish.level_given = false;
  wish.hardest = 3;
  CHECK(why() == barred + "; with hardness 4 some can be reached");
}

TEST_CASE("gradients the map lacks are told where to come from", "[find]") {
  const auto result = find::find_loops(streets().roads(), wish_for(15, {"uphill-start=1"}), {});
  REQUIRE(result.shortfall);
  CHECK(result.shortfall->why ==
        "the map has no uphill-start in this area; few gradients are mapped: build it with "
        "--heights to have them");
}

TEST_CASE("a pupil who lives in what is avoided is told so", "[find]") {
  auto wish = wish_for(15, {});
  const road::Roads roads = streets().roads();
  const Point k = roads.nodes[streets().node('K').index()].at;
  wish.home = point_from_degrees(k.lat(), k.lon() + 0.004);
  wish.avoids = {{road::Kind::narrow_road}};
  const auto result = find::find_loops(roads, wish, {});
  CHECK(result.loops.empty());
  REQUIRE(result.shortfall);
  CHECK(result.shortfall->why ==
        "the road at the home can't be driven within this wish: it is itself a single-track, "
        "which is avoided or too hard for the level");
}

TEST_CASE("a home far from any road is refused with the distance", "[find]") {
  auto wish = wish_for(15, {});
  wish.home = point_from_degrees(54.31, 2.60);
  CHECK_THROWS_WITH(find::find_loops(streets().roads(), wish, {}),
                    Catch::StartsWith("home 54.31000,2.60000 is ") &&
                        Catch::Contains(" m from the nearest road a learner may use, at "));
  wish.home = point_from_degrees(10, 10);
  CHECK_THROWS_AS(find::find_loops(streets().roads(), wish, {}), UsageError);
}

namespace {

/// Streets round a block, with a zebra up a street that ends.
wish::Wish up_a_dead_end(const BuiltTown& town) {
  const road::Roads roads = town.roads();
  wish::Wish wish;
  wish.home = roads.nodes[town.node('A').index()].at;
  wish.start = {1795878000, 0};
  wish.minutes = 20;
  wish.street_passes = 20;
  wish.wants.push_back(wish::read_want("zebra=1"));
  return wish;
}

}  // namespace

namespace {

/// A road x beyond a ring of roads, up which there is a zebra and no way on.
BuiltTown town_with_dead_end(const std::string& up) {
  return built_town(draw_town(R"(
    A     B     C     x     D

    E     F     G
  w1 ABC   highway=tertiary name=Ostler_Street maxspeed="30 mph"
  w2 CxD   name=Bell_Yard maxspeed="30 mph" highway=)" +
                                  up + R"(
  w3 AE    highway=tertiary name=Hay_Street maxspeed="30 mph"
  w4 EFG   highway=tertiary name=Mill_Street maxspeed="30 mph"
  w5 CG    highway=tertiary name=Weir_Street maxspeed="30 mph"
  w6 BF    highway=tertiary name=Fold_Street maxspeed="30 mph"
  nx  highway=crossing crossing=zebra crossing_ref=zebra
)",
                              100),
                    "GB-ENG");
}

}  // namespace

// A turn in the road is a manoeuvre that is taught: Highway Code, 200 to 203.
TEST_CASE("the car is turned round in a street that ends only when that is asked for", "[find]") {
  const BuiltTown town = town_with_dead_end("unclassified");
  wish::Wish wish = up_a_dead_end(town);
  const auto without = find::find_loops(town.roads(), wish, {});
  REQUIRE(without.shortfall);
  for (const wish::Loop& loop : without.loops) CHECK(wish::turns_round(loop).empty());
  wish.welcome.push_back(road::Kind::turn_in_road);
  const auto with = find::find_loops(town.roads(), wish, {});
  REQUIRE(with.loops.size() == 1);
  CHECK_FALSE(with.shortfall);
  CHECK(wish::turns_round(with.loops[0]).size() >= 1);
}

// That a main road ends only where the extract does is our own judgement.
TEST_CASE("nobody turns the car round where a main road ends", "[find]") {
  const BuiltTown town = town_with_dead_end("tertiary");
  wish::Wish wish = up_a_dead_end(town);
  wish.welcome.push_back(road::Kind::turn_in_road);
  const auto found = find::find_loops(town.roads(), wish, {});
  CHECK(found.shortfall);
  for (const wish::Loop& loop : found.loops) CHECK(wish::turns_round(loop).empty());
}

}  // namespace loopwright::test
