// What is near a door, when the way home is much longer than the way there, and when there is none at this hour.
// Conditional restrictions: OSM wiki, page Conditional restrictions.
#include <catch2/catch.hpp>
#include <set>
#include <string_view>

#include "loopwright/find/find.hpp"
#include "loopwright/hours/zone.hpp"
#include "support/built_town.hpp"

namespace loopwright::test {
namespace {

/// The door is on AB. Past the zebra z one drives on for miles before one is back; past the zebra p there is no way on
/// but by a street that is shut by day.
constexpr std::string_view far_round = R"town(
    A B z C
      p
      F   G







    D     E
  w1 AB  highway=residential name=Lantern_Row maxspeed="30 mph"
  w2 BzC highway=residential name=Cooper's_Reach oneway=yes maxspeed="30 mph"
  w3 CG  highway=tertiary oneway=yes maxspeed="30 mph"
  w4 GE  highway=tertiary oneway=yes maxspeed="30 mph"
  w5 ED  highway=tertiary oneway=yes maxspeed="30 mph"
  w6 DA  highway=tertiary oneway=yes maxspeed="30 mph"
  w7 BpF highway=residential name=Weir_Street oneway=yes maxspeed="30 mph"
  w8 FG  highway=residential oneway=yes maxspeed="30 mph" motor_vehicle:conditional="no @ (Mo-Fr 10:00-16:00)"
  nz highway=crossing crossing=zebra
  np highway=crossing crossing=zebra
)town";

const BuiltTown& town() {
  static const BuiltTown built = built_town(draw_town(far_round, 300), "GB-ENG");
  return built;
}

/// The map nodes of the zebras within three minutes, on Monday 30 November 2026 at this hour.
std::set<std::int64_t> zebras_at(int hour) {
  const road::Roads roads = town().roads();
  const Point a = roads.nodes[town().node('A').index()].at;
  wish::Wish wish;
  wish.home = point_from_degrees(a.lat(), a.lon() + 0.002);
  wish.start = hours::instant_in("Europe/London", {{2026, 11, 30}, hour, 0, 0});
  std::set<std::int64_t> nodes;
  for (const find::NearChance& near :
       find::chances_near(roads, {wish, wish::read_want("zebra=1"), 3}, setting_of(roads))) {
    CHECK(near.there_minutes < 3);
    CHECK(near.back_minutes > 6);  // farther than the sweep back looks at first
    nodes.insert(roads.places[roads.chances[near.chance.index()].place.index()].source.id);
  }
  return nodes;
}

const std::int64_t z = 126, p = 116;  // as drawn towns number their letters

TEST_CASE("what has a way home is near, however long that way is", "[find]") {
  CHECK(zebras_at(18) == std::set{z, p});
}

TEST_CASE("what has no way home at this hour isn't near, and hides nothing else", "[find]") {
  CHECK(zebras_at(11) == std::set{z});
}

}  // namespace
}  // namespace loopwright::test
