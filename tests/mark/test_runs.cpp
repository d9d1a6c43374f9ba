#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "support/built_town.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;

std::vector<road::Chance> chances(const test::BuiltTown& town, Kind kind) {
  std::vector<road::Chance> found;
  for (const road::Chance& chance : town.built.tables.chances) {
    if (chance.kind == kind) found.push_back(chance);
  }
  return found;
}

std::size_t places(const test::BuiltTown& town, Kind kind) {
  return static_cast<std::size_t>(
      std::ranges::count(town.built.tables.places, kind, &road::Place::kind));
}

bool is(const test::BuiltTown& town, std::string_view ends, Kind kind) {
  return (town.roads().stretch(town.stretch(ends)).runs & road::bit(kind)) != 0;
}

TEST_CASE("a town of plain streets has no runs", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B     C
  w1 ABC highway=tertiary
  )");
  CHECK(std::ranges::all_of(town.built.tables.stretches,
                            [](const road::Stretch& s) { return s.runs == 0; }));
  CHECK(town.built.tables.run_facts.empty());
}

TEST_CASE("a narrow road is met from both its ends", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B       C     D
  w1 AB highway=tertiary
  w2 BC highway=tertiary width=4.5
  w3 CD highway=tertiary
  )");
  CHECK(is(town, "BC", Kind::narrow_road));
  CHECK(is(town, "CB", Kind::narrow_road));
  CHECK_FALSE(is(town, "AB", Kind::narrow_road));
  REQUIRE(places(town, Kind::narrow_road) == 1);
  const auto found = chances(town, Kind::narrow_road);
  REQUIRE(found.size() == 2);
  CHECK(found[0].entry == town.stretch("BC"));
  CHECK(found[0].exit == town.stretch("BC"));
  CHECK(found[0].movement == road::Movement::none);
  CHECK(found[0].hardness == 3);
  CHECK(found[0].confidence == Confidence::certain);
  CHECK(town.roads().text(found[0].tag) == "width=4.5");
  CHECK(town.built.tables.places[found[0].place.index()].length_m == Approx(200).margin(1));
}

TEST_CASE("less than 100 m of narrow road is none", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B  C     D
  w1 AB highway=tertiary
  w2 BC highway=tertiary width=4.5
  w3 CD highway=tertiary
  )");
  CHECK_FALSE(is(town, "BC", Kind::narrow_road));
  CHECK(chances(town, Kind::narrow_road).empty());
}

TEST_CASE("pieces that hang together are one run", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B  C  E     D
             |
             F
  w1 AB highway=tertiary
  w2 BC highway=tertiary width=4.5
  w4 CE highway=tertiary narrow=yes
  w3 ED highway=tertiary
  w5 CF highway=residential
  )");
  CHECK(places(town, Kind::narrow_road) == 1);
  const auto found = chances(town, Kind::narrow_road);
  const auto from_a = std::ranges::find(found, town.stretch("BC"), &road::Chance::entry);
  REQUIRE(from_a != found.end());
  CHECK(from_a->exit == town.stretch("CE"));
  CHECK(from_a->path_count == 2);
}

TEST_CASE("narrow and single-track make one run, told by its special part", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B   C       E     D
  w1 AB highway=tertiary
  w2 BC highway=tertiary width=4.5
  w4 CE highway=tertiary lanes=1
  w3 ED highway=tertiary
  )");
  CHECK(is(town, "BC", Kind::narrow_road));
  CHECK(is(town, "CE", Kind::single_track));
  CHECK_FALSE(is(town, "CE", Kind::narrow_road));
  CHECK(places(town, Kind::narrow_road) == 0);
  REQUIRE(places(town, Kind::single_track) == 1);
  const auto narrow_end = chances(town, Kind::narrow_road);
  const auto single_end = chances(town, Kind::single_track);
  REQUIRE(narrow_end.size() == 1);
  REQUIRE(single_end.size() == 1);
  CHECK(narrow_end[0].entry == town.stretch("BC"));
  CHECK(single_end[0].entry == town.stretch("EC"));
  CHECK(single_end[0].place == narrow_end[0].place);
  CHECK(single_end[0].hardness == 4);
}

TEST_CASE("passing places make the whole way single-track", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B       p      C
  w1 AB  highway=tertiary
  w2 BpC highway=unclassified
  np     highway=passing_place
  )");
  CHECK(is(town, "Bp", Kind::single_track));
  CHECK(is(town, "pC", Kind::single_track));
  const road::Chance chance = chances(town, Kind::single_track)[0];
  CHECK(chance.confidence == Confidence::certain);
  CHECK(town.roads().text(chance.tag) ==
        "highway=passing_place (node/" + std::to_string(test::osm_node('p')) + ")");
}

TEST_CASE("a passing place on a road with room for two is a lay-by mapped wrongly", "[mark]") {
  for (const char* room : {"lanes=2", "width=5.5"}) {
    const test::BuiltTown town = test::built_town(std::string(R"(
    A     B       p      C
  w1 AB  highway=tertiary
  np     highway=passing_place
  w2 BpC highway=unclassified )") + room + "\n");
    CHECK_FALSE(is(town, "Bp", Kind::single_track));
  }
}

TEST_CASE("a 20 zone and a 20 limit are two kinds", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A      B      C      D
  w1 AB highway=residential maxspeed="20 mph" maxspeed:type=GB:zone20
  w2 BC highway=residential maxspeed="20 mph" maxspeed:type=sign
  w3 CD highway=residential maxspeed="30 mph"
  )");
  CHECK(is(town, "AB", Kind::twenty_zone));
  CHECK_FALSE(is(town, "AB", Kind::twenty_limit));
  CHECK(is(town, "BC", Kind::twenty_limit));
  CHECK_FALSE(is(town, "BC", Kind::twenty_zone));
  CHECK_FALSE(is(town, "CD", Kind::twenty_limit));
  CHECK(chances(town, Kind::twenty_zone).size() == 1);
  CHECK(chances(town, Kind::twenty_limit).size() == 2);
}

TEST_CASE("a Welsh default 20 is neither zone nor limit", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A      B      C
  w1 AB highway=residential maxspeed="20 mph" maxspeed:type=GB:nsl_restricted
  w2 BC highway=residential maxspeed="20 mph"
  )",
                                                "GB-WLS");
  CHECK_FALSE(is(town, "AB", Kind::twenty_limit));
  CHECK_FALSE(is(town, "AB", Kind::twenty_zone));
  REQUIRE(is(town, "BC", Kind::twenty_limit));
  CHECK(town.roads().run_facts_of(town.stretch("BC"))[0].confidence == Confidence::inferred);
}

TEST_CASE("a one-way street counts in its direction only", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B      C     D
    |                  |
    E                  F
  w1 AB   highway=tertiary
  w2 BC   highway=tertiary oneway=yes
  w3 CD   highway=tertiary
  w4 AEFD highway=tertiary
  )");
  CHECK(is(town, "BC", Kind::one_way));
  CHECK_FALSE(is(town, "CB", Kind::one_way));
  REQUIRE(chances(town, Kind::one_way).size() == 1);
  CHECK(town.roads().text(chances(town, Kind::one_way)[0].tag) == "oneway=yes");
}

TEST_CASE("a street that is one-way only at some hours is no one-way street", "[mark]") {
  const test::BuiltTown town = test::built_town(R"town(
    A     B      C     D
    |                  |
    E                  F
  w1 AB   highway=tertiary
  w2 BC   highway=tertiary oneway=yes oneway:conditional="no @ (Su)"
  w3 CD   highway=tertiary
  w4 AEFD highway=tertiary
  )town");
  CHECK(town.roads().drivable(town.stretch("CB")));
  CHECK(chances(town, Kind::one_way).empty());
}

TEST_CASE("a one-way street cut short by side roads is one all the same", "[mark]") {
  const test::BuiltTown town = test::built_town(test::draw_town(R"(
            b  c  d  e
    A    B  C  D  E  F    G

    H                     I
  w1 AB      highway=residential
  w2 BCDEFG  highway=residential oneway=yes
  w3 Cb      highway=residential
  w4 Dc      highway=residential
  w5 Ed      highway=residential
  w6 Fe      highway=residential
  w7 GIHA    highway=residential
  )",
                                                                8),
                                                "GB-ENG");
  for (const std::string_view ends : {"BC", "CD", "DE", "EF", "FG"}) {
    CHECK(is(town, ends, Kind::one_way));
  }
}

TEST_CASE("rings and service roads are no one-way streets", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B      C     D
    |                  |
    E                  F
  w1 AB   highway=tertiary
  w2 BC   highway=service oneway=yes
  w3 CD   highway=tertiary
  w4 AEFD highway=tertiary
  )");
  CHECK(chances(town, Kind::one_way).empty());
}

TEST_CASE("a dual carriageway is no one-way street", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A               B
    C               D
  w1 BA highway=primary oneway=yes ref=A7901
  w2 CD highway=primary oneway=yes ref=A7901
  w3 AC highway=primary
  w4 BD highway=primary
  )");
  CHECK(is(town, "CD", Kind::dual_carriageway));
  CHECK(is(town, "BA", Kind::dual_carriageway));
  CHECK_FALSE(is(town, "CD", Kind::one_way));
  const auto found = chances(town, Kind::dual_carriageway);
  REQUIRE(found.size() == 2);
  CHECK(found[0].confidence == Confidence::inferred);
}

TEST_CASE("a bus lane counts however short, on the side its buses use", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B C     D
  w1 AB highway=tertiary
  w2 BC highway=tertiary busway:left=lane
  w3 CD highway=tertiary
  )");
  CHECK(is(town, "BC", Kind::bus_lane));
  CHECK_FALSE(is(town, "CB", Kind::bus_lane));
  REQUIRE(chances(town, Kind::bus_lane).size() == 1);
  CHECK(chances(town, Kind::bus_lane)[0].path_count == 1);
}

TEST_CASE("bus lanes that touch are one run at the same hours, and two at others or in doubt",
          "[mark]") {
  const auto runs_of = [](const std::string& first, const std::string& second) {
    const test::BuiltTown town =
        test::built_town("A     B     C     D\nw1 AB highway=tertiary\nw2 BC highway=tertiary " +
                         first + "\nw3 CD highway=tertiary " + second + "\n");
    std::set<PlaceId> places;
    for (const road::RunFact& fact : town.roads().run_facts)
      if (fact.kind == Kind::bus_lane) places.insert(fact.place);
    return places.size();
  };
  const std::string peak = "lanes:bus:forward:conditional=\"1 @ (Mo-Fr 07:00-10:00)\"";
  CHECK(runs_of(peak, peak) == 1);
  CHECK(runs_of(peak, "lanes:psv:forward:conditional=\"1 @ (Mo-Fr 07:00-10:00)\"") == 1);
  CHECK(runs_of(peak, "busway:left=lane") == 2);
  CHECK(runs_of(peak, "lanes:bus:forward:conditional=\"1 @ (Mo-Fr 16:00-19:00)\"") == 2);
  CHECK(runs_of(peak, "lanes:bus:forward=1 " + peak) == 2);
}

TEST_CASE("a bus lane of unknown direction may be on either side", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A     B     C
  w1 AB highway=tertiary
  w2 BC highway=tertiary lanes:bus=1
  )");
  CHECK(is(town, "BC", Kind::bus_lane));
  CHECK(is(town, "CB", Kind::bus_lane));
  CHECK(town.roads().run_facts_of(town.stretch("BC"))[0].confidence == Confidence::inferred);
}

TEST_CASE("motorways are runs only in an area built with them", "[mark]") {
  const char* drawing = R"(
    A      B      C
  w1 AB highway=primary
  w2 BC highway=motorway oneway=no
  w3 CB highway=primary
  )";
  CHECK(places(test::built_town(drawing), Kind::motorway) == 0);
  read::BuildOptions options;
  options.motorways = true;
  const test::BuiltTown town = test::built_town(test::draw_town(drawing), "GB-ENG", options);
  CHECK(places(town, Kind::motorway) == 1);
  CHECK(places(town, Kind::dual_carriageway) == 0);
}

}  // namespace
}  // namespace loopwright::mark
