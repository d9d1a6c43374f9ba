// The traps of reading OpenStreetMap for driving lessons, in the order in which we listed them;
// traps 8 to 15, about hours, are in tests/lanes/test_hour_traps.cpp. Whole drawn towns, each as a
// map might have it. Sources: the OSM wiki pages and laws named beside the cases.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A road A to B of 200 m with these tags.
BuiltTown street(const std::string& tags, std::string_view region = "GB-ENG") {
  return built_town("A       B\nw1 AB " + tags + "\n", region);
}

/// "30 km/h check": the limit of AB on 28 November 2026.
std::string limit(const BuiltTown& town) {
  const road::LimitFact& fact = town.roads().stretch(town.stretch("AB")).limit;
  const road::LimitLaw law(town.built.info.region, Date{2026, 11, 1});
  const road::LimitOnDay day = law.on(fact, {2026, 11, 28});
  return std::to_string(day.value) + " " + std::string(name(day.unit)) + " " +
         std::string(name(day.confidence));
}

/// A crossing of two roads, with some lines added.
BuiltTown crossing(const std::string& lines, const std::string& west = "") {
  return built_town(R"(
    N
W . X . E
    S
w1 WX highway=primary )" +
                    west + R"(
w2 XE highway=primary
w3 XN highway=residential
w4 XS highway=residential
)" + lines);
}

/// A ring of 40 m with four arms, the southern one parted by a splitter island; 10 m a character.
/// Clockwise: a b c e d.
BuiltTown ring(const std::string& lines) {
  return built_town(draw_town(R"(
       N
.
.
       a
.
W    d   b    E
.
      e c
.
       P
.
.
       S
w2 Na highway=tertiary
w3 Eb highway=tertiary
w4 Wd highway=tertiary
w5 cP highway=tertiary oneway=yes
w6 Pe highway=tertiary oneway=yes
w7 PS highway=tertiary
)" + lines,
                              10),
                    "GB-ENG");
}

const road::Piece& piece(const BuiltTown& town) {
  return town.built.tables.pieces.at(0);
}

}  // namespace

// Key:maxspeed: a number without a unit is km/h. In Britain it is nearly always a slip for mph.
TEST_CASE("trap 1: a bare maxspeed=30 is read as km/h, to be checked, and reported",
          "[mark][traps]") {
  const BuiltTown town = street("highway=residential maxspeed=30");
  CHECK(limit(town) == "30 km/h check");
  CHECK(oddities(town) == Texts{"w1 speed limit without a unit"});
  CHECK(oddities(street("highway=residential maxspeed=30_mph")).empty());
}

// The Restricted Roads (20 mph Speed Limit) (Wales) Order 2022; lamps alone don't prove the road
// is a restricted one.
TEST_CASE("trap 2: lit=yes in Wales is 20 to be checked, in England an inferred 30",
          "[mark][traps]") {
  CHECK(limit(street("highway=residential lit=yes", "GB-WLS")) == "20 mph check");
  CHECK(limit(street("highway=residential lit=yes", "GB-ENG")) == "30 mph inferred");
}

// Tag:junction=circular.
TEST_CASE("trap 3: two ring pieces, one tagged circular, are one roundabout", "[mark][traps]") {
  const BuiltTown town = ring(
      "w1 abc highway=tertiary junction=roundabout\n"
      "w8 ceda highway=tertiary junction=circular\n");
  CHECK(places(town, Kind::roundabout) == Texts{"w1"});
  CHECK(oddities(town) == Texts{});
}

// Tag:junction=roundabout: drawn in the direction of traffic, clockwise where one drives on the
// left.
TEST_CASE("trap 4: a ring drawn anticlockwise in Britain is reported, and not practised",
          "[mark][traps]") {
  const BuiltTown town = ring("w1 adecba highway=tertiary junction=roundabout\n");
  CHECK(chances(town, Kind::roundabout).empty());
  CHECK_THAT(oddities(town),
             Catch::VectorContains(std::string("w1 roundabout is driven the wrong way round")));
}

// The exits are counted as the signs do: the two halves of the south arm are one.
TEST_CASE("trap 5: an arm split by its flare is one arm and one exit", "[mark][traps]") {
  const BuiltTown town = ring("w1 abceda highway=tertiary junction=roundabout\n");
  CHECK(arms(town, Kind::roundabout).size() == 4);
  const Texts all = chances(town, Kind::roundabout);
  CHECK_THAT(all, Catch::VectorContains(std::string("NabcedW right 3")));
  CHECK_THAT(all, Catch::VectorContains(std::string("NabcedaN round 4")));
}

// Tag:highway=mini_roundabout: on the node of a junction.
TEST_CASE("trap 6: a mini in the middle of a way is doubted, at a junction it is certain",
          "[mark][traps]") {
  const BuiltTown middle =
      built_town("W   m   E\nw1 WmE highway=tertiary\nnm highway=mini_roundabout\n");
  CHECK(reasons(middle, Kind::mini_roundabout) == Texts{"inferred highway=mini_roundabout nm"});
  CHECK(oddities(middle) == Texts{"nm mini-roundabout where no road joins"});
  const BuiltTown junction = crossing("nX highway=mini_roundabout\n");
  CHECK(reasons(junction, Kind::mini_roundabout) == Texts{"certain highway=mini_roundabout nX"});
}

// Key:lanes:bus.
TEST_CASE("trap 7: lanes:bus=1 on a two-way road has neither side nor direction, 2 is one each way",
          "[mark][traps]") {
  const BuiltTown one = street("highway=primary lanes:bus=1");
  REQUIRE(one.built.tables.bus_lanes.size() == 1);
  CHECK(one.built.tables.bus_lanes[0].direction == road::LaneDirection::unknown);
  CHECK(one.built.tables.bus_lanes[0].side == road::LaneSide::unknown);
  const BuiltTown two = street("highway=primary lanes:bus=2");
  REQUIRE(two.built.tables.bus_lanes.size() == 2);
  CHECK(two.built.tables.bus_lanes[0].direction == road::LaneDirection::along);
  CHECK(two.built.tables.bus_lanes[1].direction == road::LaneDirection::against);
}

// Relation:restriction.
TEST_CASE("trap 16: no right turn over a via way binds whoever came by its from way",
          "[mark][traps]") {
  const BuiltTown town = built_town(R"(
A . B . C
    .
D . E . F
w1 AB highway=primary
w2 BC highway=primary
w3 BE highway=primary_link
w4 DE highway=primary
w5 EF highway=primary
r1 no_right_turn from=w1 via=w3 to=w4
)");
  CHECK_FALSE(town.drives("ABED"));
  CHECK(town.drives("CBED"));
  CHECK(town.drives("ABEF"));
}

// Relation:restriction, except.
TEST_CASE("trap 17: a ban that excepts motorcar doesn't bind us, one that excepts buses does",
          "[mark][traps]") {
  CHECK_FALSE(crossing("r1 no_right_turn from=w1 via=X to=w4\n").drives("WXS"));
  CHECK(crossing("r1 no_right_turn from=w1 via=X to=w4 except=motorcar\n").drives("WXS"));
  CHECK_FALSE(crossing("r1 no_right_turn from=w1 via=X to=w4 except=psv\n").drives("WXS"));
}

// Key:barrier, Key:access.
TEST_CASE("trap 18: a bollard is a wall, with motor_vehicle=yes it lets us through",
          "[mark][traps]") {
  const std::string road =
      "A   b   C\nw1 AbC highway=residential\nw2 bA highway=service\nnb barrier=bollard";
  CHECK_FALSE(built_town(road + "\n").drives("AbC"));
  CHECK_FALSE(built_town(road + " bicycle=yes\n").drives("AbC"));
  CHECK(built_town(road + " motor_vehicle=yes\n").drives("AbC"));
}

// Key:oneway: -1 is against the way's nodes; Key:lanes: forward is along them all the same.
TEST_CASE("trap 19: oneway=-1 is driven against the way's nodes, whatever lanes:forward says",
          "[mark][traps]") {
  const BuiltTown town = built_town(R"(
A . B
.   .
D . C
w1 AB highway=primary oneway=-1 lanes=2 lanes:forward=2
w2 BCDA highway=primary
)");
  CHECK(town.roads().drivable(town.stretch("BA")));
  CHECK_FALSE(town.roads().drivable(town.stretch("AB")));
}

// Key:crossing:barrier: a missing tag is unknown, not "no".
TEST_CASE("trap 20: a half barrier without crossing:light says nothing of lights",
          "[mark][traps]") {
  const std::string town = R"(
    p
W   c   E
    s
w1 WcE highway=unclassified
w2 pcs railway=rail
nc railway=level_crossing crossing:barrier=half)";
  CHECK(reasons(built_town(town + "\n"), Kind::level_crossing) ==
        Texts{"certain railway=level_crossing crossing:barrier=half nc"});
  CHECK(reasons(built_town(town + " crossing:light=no\n"), Kind::level_crossing) ==
        Texts{"certain railway=level_crossing crossing:barrier=half crossing:light=no nc"});
}

// Key:width: feet and inches are written 12'6".
TEST_CASE("trap 21: a width of 12'6\" is 3.81 m: room for one", "[mark][traps]") {
  const mark::RawMap raw = [] {
    mark::RawMap drawn = draw_town("A       B\nw1 AB highway=unclassified\n");
    drawn.ways[0].tags.add("width", "12'6\"");
    return drawn;
  }();
  const BuiltTown town = built_town(raw, "GB-ENG");
  CHECK(piece(town).width_m == Approx(3.81));
  CHECK(places(town, Kind::single_track) == Texts{"w1"});
}

// Manual for Streets: 2 m is the usual parallel bay; two metres left is single file.
TEST_CASE("trap 22: cars parked on both sides of a 6 m road leave 2 m: single file, not blocked",
          "[mark][traps]") {
  const BuiltTown town = street("highway=residential width=6 parking:both=lane");
  CHECK(piece(town).usable_width_m == Approx(2.0));
  CHECK((piece(town).flags & road::piece_flag::parked_both) != 0);
  CHECK(town.roads().drivable(town.stretch("AB")));
  CHECK((town.roads().stretch(town.stretch("AB")).runs & bit(Kind::meeting_traffic)) != 0);
}

// Key:busway: discouraged since 2024, and still on the maps.
TEST_CASE("trap 23: busway:left=lane is deprecated and still a bus lane", "[mark][traps]") {
  const BuiltTown town = street("highway=primary busway:left=lane");
  REQUIRE(town.built.tables.bus_lanes.size() == 1);
  CHECK(town.built.tables.bus_lanes[0].direction == road::LaneDirection::along);
  CHECK(town.built.tables.bus_lanes[0].side == road::LaneSide::left);
}

// Relation:restriction: via is one node, or ways, never both.
TEST_CASE("trap 24: a restriction whose via is both node and way is skipped and listed",
          "[mark][traps]") {
  const BuiltTown town = crossing("r1 no_right_turn from=w1 via=X,w2 to=w4\n");
  CHECK(town.drives("WXS"));
  REQUIRE(town.report.oddities().size() == 1);
  CHECK(oddities(town) == Texts{"r1 turn restriction can't be used"});
  CHECK(town.report.oddities()[0].detail == "via is both node and way");
}

}  // namespace loopwright::test
