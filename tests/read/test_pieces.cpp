// How roads become pieces and nodes.
#include <catch2/catch.hpp>

#include "support/built_town.hpp"

namespace loopwright::read {
namespace {

using test::built_town;
using test::BuiltTown;

bool has_oddity(const road::Report& report, std::string_view what, OsmObject object) {
  for (const road::Oddity& oddity : report.oddities()) {
    if (oddity.what == what && oddity.object == object) return true;
  }
  return false;
}

bool has_flag(const BuiltTown& town, char letter, std::uint32_t flag) {
  return (town.roads().nodes[town.node(letter).index()].flags & flag) != 0;
}

std::uint32_t flags_of(const BuiltTown& town, std::string_view two_letters) {
  return town.roads().piece(town.stretch(two_letters)).flags;
}

}  // namespace

TEST_CASE("a map with no roads gives empty columns", "[read]") {
  const BuiltTown town = built_town(mark::RawMap{}, "GB-ENG");
  CHECK(town.roads().pieces.empty());
  CHECK(town.roads().turn_first.size() == 1);
  CHECK(town.roads().node_first.size() == 1);
}

TEST_CASE("a road is cut where another joins it, not at its bends", "[read]") {
  const BuiltTown town = built_town(R"(
    A B C D
      .   .
      E   F
w1 ABCD highway=primary name=Mill_Street ref=A4
w2 CE   highway=residential
)");
  const road::Roads roads = town.roads();
  CHECK(roads.pieces.size() == 3);
  CHECK(roads.nodes.size() == 4);  // not B, which is a bend
  const road::Piece& first = roads.piece(town.stretch("AC"));
  CHECK(first.way == 1);
  CHECK(first.from_index == 0);
  CHECK(first.to_index == 2);
  CHECK(first.road_class == road::RoadClass::primary);
  CHECK(roads.text(first.name) == "Mill Street");
  CHECK(roads.text(first.ref) == "A4");
  CHECK(roads.shape_of(town.stretch("AC").piece()).size() == 3);
  CHECK(first.length_m == Approx(100).epsilon(1e-4));  // four columns of 25 m
  CHECK(town.report.counted("roads") == 2);
  CHECK(town.report.counted("pieces") == 3);
}

TEST_CASE("nodes are in order of map id and pieces in order of way and position", "[read]") {
  const BuiltTown town = built_town(R"(
   c b a
     d
w7 cba highway=residential
w2 bd  highway=residential
)");
  const road::Roads roads = town.roads();
  REQUIRE(roads.pieces.size() == 3);
  CHECK(roads.pieces[0].way == 2);
  CHECK(roads.pieces[1].way == 7);
  CHECK(roads.pieces[2].from_index == 1);
  for (std::size_t n = 1; n < roads.nodes.size(); ++n) {
    CHECK(roads.nodes[n - 1].osm_id < roads.nodes[n].osm_id);
  }
}

TEST_CASE("a road is cut at what a driver must heed", "[read]") {
  const BuiltTown town = built_town(R"(
A B C D E F G H
w1 ABCDEFGH highway=tertiary
w9 CA railway=rail
nB highway=traffic_signals
nC railway=level_crossing
nD highway=mini_roundabout
nE highway=give_way
nF highway=crossing crossing=zebra
nG highway=street_lamp
)");
  CHECK(town.roads().pieces.size() == 6);
  CHECK(has_flag(town, 'B', road::node_flag::signals));
  CHECK(has_flag(town, 'C', road::node_flag::level_crossing));
  CHECK(has_flag(town, 'D', road::node_flag::mini_roundabout));
  CHECK(has_flag(town, 'E', road::node_flag::give_way));
  CHECK(has_flag(town, 'F', road::node_flag::zebra));
  CHECK_FALSE(town.roads().find_node(test::osm_node('G')).known());
  CHECK(town.report.counted("nodes: traffic lights") == 1);
}

TEST_CASE("a dead end is where one road ends, or where only a private one goes on", "[read]") {
  const BuiltTown town = built_town(R"(
A   B   C   D
    E
w1 ABC highway=tertiary
w2 BE  highway=residential
w3 CD  highway=residential access=private
)");
  CHECK(has_flag(town, 'A', road::node_flag::dead_end));
  CHECK_FALSE(has_flag(town, 'B', road::node_flag::dead_end));
  CHECK(has_flag(town, 'C', road::node_flag::dead_end));
  CHECK(has_flag(town, 'E', road::node_flag::dead_end));
}

TEST_CASE("a road for access only is seen, not driven", "[read]") {
  const BuiltTown town = built_town(R"(
A   B   C
    E
w1 ABC highway=tertiary
w2 BE  highway=residential motor_vehicle=destination
)");
  CHECK_FALSE(town.roads().drivable(town.stretch("BE")));
  CHECK((flags_of(town, "BE") & road::piece_flag::destination_only) != 0);
  CHECK((flags_of(town, "BE") & road::piece_flag::no_access) == 0);
}

TEST_CASE("a motorway is driven only when asked for, and counts as a road either way", "[read]") {
  const mark::RawMap raw = test::draw_town(R"(
A   B   C
    E
w1 ABC highway=trunk
w2 EB  highway=motorway
w3 CE  highway=trunk_link
)");
  const BuiltTown without = built_town(raw, "GB-ENG");
  CHECK_FALSE(without.roads().drivable(without.stretch("EB")));
  CHECK((flags_of(without, "EB") & road::piece_flag::no_access) == 0);
  BuildOptions options;
  options.motorways = true;
  const BuiltTown with = built_town(raw, "GB-ENG", options);
  CHECK(with.roads().drivable(with.stretch("EB")));
  CHECK(with.built.info.motorways);
}

TEST_CASE("a street shut at some hours may be driven, with a rule for each direction", "[read]") {
  const BuiltTown town = built_town(R"town(
A   B   C
    E
w1 ABC highway=tertiary
w2 BE  highway=residential motor_vehicle:conditional="no @ (Mo-Fr 08:00-09:00)"
)town");
  const road::Roads roads = town.roads();
  REQUIRE(roads.timed_rules.size() == 2);
  for (const char* ends : {"BE", "EB"}) {
    const StretchId stretch = town.stretch(ends);
    CHECK(roads.drivable(stretch));
    CHECK((roads.stretch(stretch).flags & road::stretch_flag::timed) != 0);
    REQUIRE(roads.timed_rules_of(stretch).size() == 1);
    const road::TimedRule& rule = roads.timed_rules_of(stretch)[0];
    CHECK(rule.about == road::Timed::access);
    CHECK(roads.text(rule.base) == "yes");
    CHECK(roads.text(rule.text) == "no @ (Mo-Fr 08:00-09:00)");
    CHECK(roads.text(rule.who).empty());
    CHECK(roads.text(rule.source) == "motor_vehicle:conditional=no @ (Mo-Fr 08:00-09:00)");
  }
  CHECK((flags_of(town, "BE") & road::piece_flag::no_access) == 0);
  CHECK((roads.stretch(town.stretch("AB")).flags & road::stretch_flag::timed) == 0);
}

TEST_CASE("a bus gate with hours is a gate, one without is shut", "[read]") {
  const BuiltTown town = built_town(R"town(
A   B   C
    E   F
w1 ABC highway=tertiary
w2 BE  highway=residential motor_vehicle:conditional="no @ (Mo-Sa 07:00-19:00)" bus=yes taxi=yes
w3 CF  highway=residential motor_vehicle=no bus=designated
w4 EF  highway=residential
)town");
  const road::Roads roads = town.roads();
  REQUIRE(roads.timed_rules_of(town.stretch("BE")).size() == 1);
  const road::TimedRule& gate = roads.timed_rules_of(town.stretch("BE"))[0];
  CHECK(gate.about == road::Timed::gate);
  CHECK(roads.text(gate.who) == "bus;taxi");
  CHECK_FALSE(roads.drivable(town.stretch("CF")));
  CHECK(roads.timed_rules_of(town.stretch("CF")).empty());
  CHECK((flags_of(town, "CF") & road::piece_flag::no_access) != 0);
  CHECK(town.report.counted("directions through bus gates, by the hour") == 2);
  CHECK(town.report.counted("roads for buses alone at all hours") == 1);
}

TEST_CASE("a gate with hours is a wall at all of them, and told", "[read]") {
  const BuiltTown town = built_town(R"town(
A   g   C
w1 AgC highway=residential
ng     barrier=gate motor_vehicle=yes motor_vehicle:conditional="no @ (20:00-06:00)"
)town");
  CHECK_FALSE(town.drives("AgC"));
  REQUIRE(town.report.oddities().size() == 1);
  CHECK(town.report.oddities()[0].what == "barrier with hours is shut at all of them");
  CHECK(town.report.oddities()[0].detail == "motor_vehicle:conditional=no @ (20:00-06:00)");
}

TEST_CASE("driveways are left out and counted, and cut no road", "[read]") {
  const BuiltTown town = built_town(R"(
A B C
  E
w1 ABC highway=tertiary
w2 BE  highway=service service=driveway
)");
  CHECK(town.roads().pieces.size() == 1);
  CHECK(town.report.counted("ways left out: driveways, aisles and the like") == 1);
}

TEST_CASE("a ring road knows where it starts, and each way round it", "[read]") {
  const BuiltTown town = built_town(R"(
A   B   C
    E   D
w1 AB    highway=tertiary
w2 BCDEB highway=residential
)");
  const road::Roads roads = town.roads();
  const StretchId ring = town.stretch("BB");
  CHECK(roads.piece(ring).from_index == 0);
  CHECK(roads.piece(ring).to_index == 4);
  CHECK(town.drives("ABBA"));
  CHECK(town.drives("BBB"));  // and round again, but never back on itself
  for (const road::Turn& turn : roads.turns_from(StateId{ring.index()})) {
    CHECK(roads.stretch_of(turn.to) != ring.back());
  }
}

TEST_CASE("a way that crosses itself is cut there, with its positions told apart", "[read]") {
  const BuiltTown town = built_town(R"(
    D   C
A   B   E
    F
w1 ABECDBF highway=residential
)");
  const road::Roads roads = town.roads();
  REQUIRE(roads.pieces.size() == 3);
  CHECK(roads.pieces[1].from_index == 1);
  CHECK(roads.pieces[1].to_index == 5);
  CHECK(roads.pieces[2].from_index == 5);
  CHECK(roads.pieces[2].to_index == 6);
}

TEST_CASE("a point named twice in a row counts once", "[read]") {
  const BuiltTown town = built_town(R"(
A B C
w1 AABBC highway=residential
)");
  const road::Roads roads = town.roads();
  REQUIRE(roads.pieces.size() == 1);
  CHECK(roads.pieces[0].from_index == 0);
  CHECK(roads.pieces[0].to_index == 4);
  CHECK(roads.shape.size() == 3);
}

TEST_CASE("a road that leaves the extract is cut, told once, and no turning place", "[read]") {
  mark::RawMap raw = test::draw_town(R"(
A   B   C   D   E
    F
w1 ABCDE highway=tertiary
w2 BF    highway=residential
)");
  std::erase_if(raw.nodes, [](const auto& node) { return node.id == test::osm_node('D'); });
  const BuiltTown town = built_town(raw, "GB-ENG");
  REQUIRE(town.roads().pieces.size() == 3);
  CHECK(has_oddity(town.report, "road runs out of the extract", {1, ObjectType::way}));
  CHECK(has_oddity(town.report, "road can't be driven into and out of", {1, ObjectType::way}));
  CHECK(town.report.oddities().size() == 2);
  CHECK(town.report.oddities()[0].detail == "1 of 5 points are missing");
  CHECK_FALSE(has_flag(town, 'C', road::node_flag::dead_end));
  CHECK_FALSE(town.roads().drivable(town.stretch("BC")));  // there is no way back
}

TEST_CASE("a way with one point is no road and is told", "[read]") {
  const BuiltTown town = built_town(R"(
A   B
w1 AB highway=tertiary
w2 BB highway=residential
)");
  CHECK(town.roads().pieces.size() == 1);
  CHECK(has_oddity(town.report, "road has fewer than two different points", {2, ObjectType::way}));
}

TEST_CASE("a bollard on a junction shuts it and is told", "[read]") {
  const BuiltTown town = built_town(R"(
A   B   C
    E
w1 ABC highway=tertiary
w2 BE  highway=residential
nB barrier=bollard
)");
  CHECK_FALSE(town.drives("ABC"));
  CHECK(has_oddity(town.report, "barrier stands on a junction", {2, ObjectType::node}));
}

TEST_CASE("every road is found near its own points", "[read]") {
  const BuiltTown town = built_town(R"(
A                                  B


   C
w1 AB highway=tertiary
w2 AC highway=tertiary
)");
  const road::Roads roads = town.roads();
  for (std::size_t p = 0; p < roads.pieces.size(); ++p) {
    const double length = roads.pieces[p].length_m;
    for (const double share : {0.0, 0.3, 0.5, 1.0}) {
      const Point at = point_along(roads.shape_of(PieceId{p}), share * length);
      const std::vector<PieceId> near = road::pieces_near(roads, at, 10);
      CHECK(std::find(near.begin(), near.end(), PieceId{p}) != near.end());
    }
  }
}

}  // namespace loopwright::read
