// Places of the same form, and a drive past them. Arms, angles and limits are those of the drawing.
#include <catch2/catch.hpp>

#include "loopwright/find/alike.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/find/in_order.hpp"
#include "loopwright/hours/zone.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

using find::Differs;
using road::Kind;
using road::Movement;

const BuiltTown& town() {
  static const BuiltTown built = built_town(draw_town(crossing_streets, 100), "GB-ENG");
  return built;
}

wish::Wish wish_in_town() {
  const road::Roads roads = town().roads();
  const Point a = roads.nodes[town().node('A').index()].at;
  wish::Wish wish;
  wish.home = point_from_degrees(a.lat(), a.lon() + 0.003);
  wish.start = hours::instant_in("Europe/London", {{2026, 11, 30}, 11, 0, 0});
  return wish;
}

/// Ways of passing the nearest place of a kind by a movement.
std::vector<ChanceId> nearest_ways(const road::Roads& roads, Kind kind, Movement movement) {
  const wish::Wish wish = wish_in_town();
  wish::Want want;
  want.kind = kind;
  want.movement = movement;
  const auto near = find::chances_near(roads, {wish, want, 25}, setting_of(roads));
  REQUIRE_FALSE(near.empty());
  const road::Chance& first = roads.chances[near.front().chance.index()];
  std::vector<ChanceId> ways;
  for (std::size_t row = 0; row < roads.chances.size(); ++row) {
    const road::Chance& one = roads.chances[row];
    if (one.place == first.place && one.kind == first.kind && one.movement == first.movement)
      ways.emplace_back(row);
  }
  return ways;
}

find::Alike alike_of(Kind kind, Movement movement, std::size_t most = 3) {
  const road::Roads roads = town().roads();
  const wish::Wish wish = wish_in_town();
  return find::alike_places(roads, wish, {nearest_ways(roads, kind, movement), 25, most},
                            setting_of(roads));
}

TEST_CASE("forms differ in arms, lanes, angle and what follows", "[find][alike]") {
  const find::PassForm one{4, 1, 1, 90, {Kind::zebra}};
  CHECK(find::differences(one, one).empty());
  CHECK(find::differences(one, {3, 1, 1, 90, {Kind::zebra}}) == std::set{Differs::arms});
  CHECK(find::differences(one, {4, 2, 1, 90, {Kind::zebra}}) == std::set{Differs::lanes});
  CHECK(find::differences(one, {4, 1, 0, 90, {Kind::zebra}}) == std::set{Differs::lanes});
  CHECK(find::differences(one, {4, 1, 1, 120, {Kind::zebra}}).empty());
  CHECK(find::differences(one, {4, 1, 1, 121, {Kind::zebra}}) == std::set{Differs::angle});
  CHECK(find::differences(one, {4, 1, 1, 90, {}}) == std::set{Differs::next});
  // Across the straight back: 170 to the right and 170 to the left are 20 degrees apart.
  CHECK(find::differences({4, 1, 1, 170, {}}, {4, 1, 1, -170, {}}).empty());
}

TEST_CASE("a turn to the right has an angle to the right, and the drawing's arms",
          "[find][alike]") {
  const road::Roads roads = town().roads();
  for (const ChanceId way : nearest_ways(roads, Kind::roundabout, Movement::right)) {
    const find::PassForm form = find::form_of(roads, roads.chances[way.index()]);
    CHECK(form.arms == 4);
    CHECK(form.angle_deg > 45);
    CHECK(form.angle_deg < 135);
  }
  for (const ChanceId way : nearest_ways(roads, Kind::roundabout, Movement::left)) {
    CHECK(find::form_of(roads, roads.chances[way.index()]).angle_deg < -45);
  }
}

TEST_CASE("others are of the same kind and movement, elsewhere, the easiest first",
          "[find][alike]") {
  const road::Roads roads = town().roads();
  for (const Movement movement : {Movement::left, Movement::right}) {
    const find::Alike alike = alike_of(Kind::emerge, movement);
    REQUIRE(alike.first);
    REQUIRE_FALSE(alike.others.empty());
    CHECK(alike.others.size() <= 3);
    const road::Chance& first = roads.chances[alike.first->chance.index()];
    int hardness = 1;
    for (const find::AlikePlace& place : alike.others) {
      const road::Chance& chance = roads.chances[place.chance.index()];
      CHECK(chance.kind == first.kind);
      CHECK(chance.movement == movement);
      CHECK(chance.place != first.place);
      CHECK(chance.hardness >= hardness);
      CHECK(place.differs == find::differences(alike.first->form, place.form));
      hardness = chance.hardness;
    }
  }
}

TEST_CASE("those kept are at least as alike as those left out", "[find][alike]") {
  const find::Alike few = alike_of(Kind::emerge, Movement::right, 2);
  const find::Alike all = alike_of(Kind::emerge, Movement::right, 1000);
  REQUIRE(all.others.size() > few.others.size());
  std::size_t worst = 0;
  for (const find::AlikePlace& place : few.others) worst = std::max(worst, place.differs.size());
  std::size_t as_alike = 0;
  for (const find::AlikePlace& place : all.others)
    if (place.differs.size() < worst) ++as_alike;
  CHECK(as_alike < few.others.size());
}

TEST_CASE("a place that stands alone has none like it, one out of reach is none", "[find][alike]") {
  const find::Alike alone = alike_of(Kind::level_crossing, Movement::none);
  CHECK(alone.first);
  CHECK(alone.others.empty());
  const road::Roads roads = town().roads();
  const wish::Wish wish = wish_in_town();
  const auto ways = nearest_ways(roads, Kind::level_crossing, Movement::none);
  CHECK_FALSE(find::alike_places(roads, wish, {ways, 0.2}, setting_of(roads)).first);
  CHECK_FALSE(find::alike_places(roads, wish, {{}, 25}, setting_of(roads)).first);
}

TEST_CASE("no place like it is passed by a service road, which no point can name",
          "[find][alike]") {
  // A mini-roundabout at K too, of whose arms only the one to J is a street.
  std::string drawing(crossing_streets);
  for (const char* way : {"  w15 GK   highway=residential", "  w24 KO   highway=residential",
                          "  w18 KL   highway=residential"}) {
    const std::size_t at = drawing.find(way);
    REQUIRE(at != std::string::npos);
    const std::string_view street = "residential";
    drawing.replace(drawing.find(street, at), street.size(), "service");
  }
  drawing += "  nK  highway=mini_roundabout direction=clockwise\n";
  const BuiltTown built = built_town(draw_town(drawing, 100), "GB-ENG");
  const road::Roads roads = built.roads();
  const wish::Wish wish = wish_in_town();
  wish::Want want;
  want.kind = Kind::mini_roundabout;
  for (const Movement movement : {Movement::left, Movement::right}) {
    want.movement = movement;
    const auto near = find::chances_near(roads, {wish, want, 25}, setting_of(roads));
    REQUIRE(near.size() == 2);  // both can be driven to and passed
    for (std::size_t row = 0; row < roads.chances.size(); ++row) {
      const road::Chance& one = roads.chances[row];
      if (one.kind != want.kind || one.movement != movement) continue;
      const std::size_t at_k = roads.nodes_of(one.place).front() == built.node('K') ? 1 : 0;
      const auto alike = find::alike_places(roads, wish, {{ChanceId{row}}, 25}, setting_of(roads));
      REQUIRE(alike.first);
      CHECK(alike.others.size() == at_k);  // from K one finds J, from J nothing
    }
  }
}

TEST_CASE("the drive passes them in order and comes back to the first", "[find][alike]") {
  const road::Roads roads = town().roads();
  const wish::Wish wish = wish_in_town();
  for (const Movement movement : {Movement::left, Movement::right}) {
    const find::Alike alike = alike_of(Kind::emerge, movement);
    std::vector<ChanceId> chances;
    for (const find::AlikePlace& place : alike.others) chances.push_back(place.chance);
    chances.push_back(alike.first->chance);
    const find::InOrder drive = find::drive_in_order(roads, wish, chances, setting_of(roads));
    CHECK(drive.passed == chances.size());
    CHECK(drive.minutes > 0);
    // Driven once more by the points alone, and counted another way: each place's own pass is there.
    wish::Wish own = wish;
    own.through = drive.through;
    const auto found = find::route_through(roads, own, setting_of(roads));
    REQUIRE(found.loops.size() == 1);
    for (const ChanceId row : chances) {
      const road::Chance& chance = roads.chances[row.index()];
      CHECK(std::ranges::any_of(found.loops[0].passes, [&](const wish::Pass& pass) {
        return pass.source == chance.source && pass.movement == movement;
      }));
    }
  }
}

}  // namespace
}  // namespace loopwright::test
