// Everything with hours in an area, each thing once. Tags as of the OSM wiki, pages Bus lanes and
// Conditional restrictions; the drawn towns are invented.
#include <catch2/catch.hpp>

#include "loopwright/lanes/area_things.hpp"
#include "support/built_town.hpp"

namespace loopwright::test {
namespace {

using lanes::AreaThing;
using lanes::Thing;

/// A street of three ways from west to east, 250 m each, with a side street at both joints.
BuiltTown street(const std::string& first, const std::string& second, const std::string& third) {
  const std::string drawing = R"(
    A         B         C         D

              E         F
  w4 BE highway=residential name=Side_Street
  w5 CF highway=residential name=Side_Street
  )";
  const std::string road = " highway=tertiary name=Osk_Road lanes=2 ";
  return built_town(drawing + "\n  w1 AB" + road + first + "\n  w2 BC" + road + second +
                    "\n  w3 CD" + road + third + "\n");
}

std::vector<AreaThing> things(const BuiltTown& town) {
  const road::Roads roads = town.roads();
  return lanes::things_in(roads, setting_of(roads));
}

std::string heading(const BuiltTown& town, const AreaThing& one) {
  return std::string(lanes::heading_words(town.roads(), one));
}

using Ways = std::vector<std::int64_t>;

const std::string lane = "lanes:bus:forward:conditional=\"1 @ (Mo-Fr 07:00-10:00)\"";
const std::string school = "motor_vehicle:conditional=\"no @ (Mo-Fr 08:00-09:00)\"";

}  // namespace

TEST_CASE("an area without hours has no things", "[lanes]") {
  CHECK(things(street("", "", "")).empty());
}

TEST_CASE("one bus lane on three ways is one thing with all its length", "[lanes]") {
  const BuiltTown town = street(lane, lane, lane);
  const auto all = things(town);
  REQUIRE(all.size() == 1);
  CHECK(all[0].thing.thing == Thing::bus_lane);
  CHECK(all[0].thing.street == "Osk Road");
  CHECK(all[0].ways == Ways{1, 2, 3});
  CHECK(all[0].thing.source.id == 1);
  CHECK(all[0].length_m == Approx(750).margin(5));
  CHECK_FALSE(all[0].both_ways);
  CHECK(heading(town, all[0]) == "east");
}

TEST_CASE("a gap parts a lane, and so do other hours", "[lanes]") {
  CHECK(things(street(lane, "", lane)).size() == 2);
  const std::string later = "lanes:bus:forward:conditional=\"1 @ (Mo-Fr 16:00-19:00)\"";
  const auto all = things(street(lane, lane, later));
  REQUIRE(all.size() == 2);
  CHECK(all[0].ways == Ways{1, 2});
  CHECK(all[1].ways == Ways{3});
}

TEST_CASE("a school street is one thing for both ways, its length counted once", "[lanes]") {
  const BuiltTown town = street(school, school, "");
  const auto all = things(town);
  REQUIRE(all.size() == 1);
  CHECK(all[0].thing.thing == Thing::street);
  CHECK(all[0].both_ways);
  CHECK(all[0].length_m == Approx(500).margin(5));
  CHECK(heading(town, all[0]).empty());
}

TEST_CASE("buses let through a short bit of road is a gate, through a long one a street for buses",
          "[lanes]") {
  const std::string gate = "motor_vehicle:conditional=\"no @ (Mo-Sa 07:00-19:00)\" bus=yes";
  const auto all = things(street("", gate, ""));
  REQUIRE(all.size() == 1);
  CHECK(all[0].thing.thing == Thing::bus_only_street);
  const auto near =
      things(built_town("A    B  C    D\n  w1 AB highway=tertiary\n  w2 BC "
                        "highway=tertiary " +
                        gate + "\n  w3 CD highway=tertiary\n"));
  REQUIRE(near.size() == 1);
  CHECK(near[0].thing.thing == Thing::bus_gate);
}

TEST_CASE("a lane on a road that cars never drive is never ours", "[lanes]") {
  const auto all = things(street("", "motor_vehicle=no lanes:bus:forward=1", ""));
  REQUIRE(all.size() == 1);
  CHECK(all[0].thing.never == "cars may not drive through this road");
  CHECK(all[0].thing.map_text.ends_with("; motor_vehicle=no"));
}

TEST_CASE("a turn by the hour is named by the streets it leads from and into", "[lanes]") {
  const BuiltTown town = built_town(R"town(
    A         B         C

              E
  w1 AB highway=tertiary name=Osk_Road
  w2 BC highway=tertiary name=Osk_Road
  w4 BE highway=residential name=Side_Street
  r1 - from=w1 via=B to=w4 restriction:conditional="no_right_turn @ (Mo-Fr 07:00-10:00)"
  )town");
  const auto all = things(town);
  REQUIRE(all.size() == 1);
  CHECK(all[0].thing.street == "Osk Road into Side Street");
  CHECK(all[0].thing.words == "no right turn Monday to Friday, seven till ten");
  CHECK(heading(town, all[0]).empty());
}

}  // namespace loopwright::test
