// Everything with hours in an area, each thing once. Tags as of the OSM wiki, pages Bus lanes and
// Conditional restrictions; the drawn towns are invented.
#include <catch2/catch.hpp>

#include "loopwright/lanes/area_things.hpp"
#include "loopwright/mark/noted.hpp"
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

TEST_CASE("a lane of which parts are mapped or noted otherwise, at the same hours, is one",
          "[lanes]") {
  const std::string by_side =
      "busway:left=lane busway:left:conditional=\"lane @ (Mo-Fr 07:00-10:00)\"";
  const BuiltTown mapped = street(by_side, by_side, by_side);
  const road::Roads base = mapped.roads();
  std::vector<road::Note> notes;
  for (const auto& [ends, day] : {std::pair("AB", 3), std::pair("CD", 9)}) {
    const StretchId stretch = mapped.stretch(ends);
    const Point middle =
        point_along(base.shape_of(stretch.piece()), base.piece(stretch).length_m / 2);
    notes.push_back({.says = road::NoteKind::plate, .line = {middle}, .seen = {2026, 10, day}});
    notes.back().hours = "Mo-Sa 07:00-10:00";
  }
  const hours::Setting setting = setting_of(base);
  const road::LessonTime lesson = road::lesson_time({1795878000, 0}, 60, setting);
  CHECK(lanes::things_in(mark::with_notes(base, notes, lesson).roads(), setting).size() == 3);
  notes.push_back(notes.front());
  const StretchId between = mapped.stretch("BC");
  notes.back().line = {
      point_along(base.shape_of(between.piece()), base.piece(between).length_m / 2)};
  const mark::Noted noted = mark::with_notes(base, notes, lesson);
  const auto all = lanes::things_in(noted.roads(), setting);
  REQUIRE(all.size() == 1);
  CHECK(all[0].ways == Ways{1, 2, 3});
  CHECK(all[0].thing.map_text == "noted 2026-10-03: plate; noted 2026-10-09: plate");
}

TEST_CASE("what no drive on the map leads through is told as such, not as usable", "[lanes]") {
  // E and F are joined to nothing else, as at the edge of a clip.
  const BuiltTown town = built_town(R"town(
    A         B         C         D

    E         F
  w1 ABCD highway=tertiary
  w2 EF highway=tertiary name=Osk_Road oneway=yes bus=yes motor_vehicle:conditional="no @ (Mo-Fr 07:00-10:00)"
  )town");
  const auto all = things(town);
  REQUIRE(all.size() == 1);
  CHECK(all[0].thing.never == "no drive on this map leads through it");
  const hours::Setting setting = setting_of(town.roads());
  const Instant saturday{1795878000, 0};
  CHECK(lanes::verdict_words(all[0].thing, lanes::verdict_on(all[0].thing, {saturday, saturday},
                                                             setting)) == "keep out");
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
