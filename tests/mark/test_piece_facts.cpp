#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "support/built_town.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::piece_flag;

/// A street from A to B, 500 m long, with these tags.
test::BuiltTown street(const std::string& tags, std::string_view region = "GB-ENG") {
  return test::built_town("A                   B\nw1 AB " + tags + "\n", region);
}

const road::Piece& piece(const test::BuiltTown& town, std::string_view ends = "AB") {
  return town.built.tables.pieces[town.stretch(ends).piece().index()];
}

bool has(const test::BuiltTown& town, std::uint32_t bit, std::string_view ends = "AB") {
  return (piece(town, ends).flags & bit) != 0;
}

TEST_CASE("a plain road has no facts but its class and length", "[mark]") {
  const test::BuiltTown town = street("highway=tertiary");
  CHECK(piece(town).flags == 0);
  CHECK(piece(town).lanes == 0);
  CHECK(piece(town).width_m == 0);
  CHECK(piece(town).length_m == Approx(500).margin(1));
}

TEST_CASE("bridges, tunnels, lamps and lanes are kept", "[mark]") {
  const test::BuiltTown town =
      street("highway=tertiary bridge=yes tunnel=no lit=yes lanes=3 oneway=yes");
  CHECK(has(town, flag::bridge));
  CHECK_FALSE(has(town, flag::tunnel));
  CHECK(has(town, flag::lit));
  CHECK(has(town, flag::one_way));
  CHECK(piece(town).lanes == 3);
  CHECK(piece(street("highway=tertiary lanes:forward=2 lanes:backward=1")).lanes == 3);
}

TEST_CASE("oneway=-1 with lanes:forward is driven against the way, its lanes counted", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A       B
    D       C
  w1 AB   highway=tertiary oneway=-1 lanes:forward=2 lanes:bus:forward=1
  w2 ADCB highway=tertiary
  )");
  const StretchId back{PieceId{0U}, true};
  CHECK(piece(town, "BA").lanes == 2);
  CHECK(town.roads().drivable(back));
  CHECK_FALSE(town.roads().drivable(back.back()));
  REQUIRE(town.built.tables.bus_lanes.size() == 1);
  CHECK(town.built.tables.bus_lanes[0].contraflow == 1);
}

TEST_CASE("a width is kept with what says it", "[mark]") {
  const test::BuiltTown town = street("highway=residential width=6 parking:both=lane");
  CHECK(piece(town).width_m == 6);
  CHECK(piece(town).usable_width_m == 2);
  CHECK(has(town, flag::parked_both));
  CHECK(town.roads().text(piece(town).width_source) == "width=6 parking:both=lane");
}

TEST_CASE("a residential street is quiet until a bus runs in it or it is faster than 30",
          "[mark]") {
  CHECK(has(street("highway=residential"), flag::quiet));
  CHECK(has(street("highway=unclassified lit=yes"), flag::quiet));
  CHECK(has(street("highway=residential maxspeed=50", "LI"), flag::quiet));
  CHECK_FALSE(has(street("highway=residential maxspeed=\"40 mph\""), flag::quiet));
  CHECK_FALSE(has(street("highway=unclassified"), flag::quiet));
  CHECK_FALSE(has(street("highway=tertiary lit=yes"), flag::quiet));
  const test::BuiltTown bus = test::built_town(R"(
    A          B
  w1 AB highway=residential
  r1 bus_route=w1
  )");
  CHECK(has(bus, flag::bus_route));
  CHECK_FALSE(has(bus, flag::quiet));
}

TEST_CASE("humps slow a street that has one every 150 m, or says so itself", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A   h        B            C
  w1 AhB highway=residential
  w2 BC  highway=residential traffic_calming=table;choker
  nh     traffic_calming=hump
  )");
  CHECK(has(town, flag::humps, "BC"));
  CHECK(has(town, flag::humps, "Ah"));
  CHECK_FALSE(has(town, flag::humps, "hB"));  // one hump on its 200 m
  const test::BuiltTown close = test::built_town(R"(
    A  h  B
  w1 AhB highway=residential
  nh     traffic_calming=cushion
  )");
  CHECK(has(close, flag::humps, "hB"));
  CHECK_FALSE(has(street("highway=residential traffic_calming=island"), flag::humps));
}

TEST_CASE("a lane that keeps turning is winding, one with a single bend isn't", "[mark]") {
  const test::BuiltTown winding = test::built_town(R"(
       b     d     f
    A     c     e     G
  w1 AbcdefG highway=unclassified
  )");
  CHECK(has(winding, flag::winding, "AG"));
  const test::BuiltTown bend = test::built_town(R"(
    A                   b



                                    G
  w1 AbG highway=unclassified
  )");
  CHECK_FALSE(has(bend, flag::winding, "AG"));
}

TEST_CASE("a bus lane is kept with its side and hours", "[mark]") {
  const test::BuiltTown town = street(
      "highway=primary busway:left=lane busway:left:conditional=\"lane @ (Mo-Fr 07:00-10:00)\"");
  const auto lanes = town.roads().bus_lanes_of(town.stretch("AB").piece());
  REQUIRE(lanes.size() == 1);
  CHECK(lanes[0].direction == road::LaneDirection::along);
  CHECK(lanes[0].side == road::LaneSide::left);
  CHECK(town.roads().text(lanes[0].hours) == "Mo-Fr 07:00-10:00");
}

/// "key: text" of each rule with hours.
std::string timed(const test::BuiltTown& town) {
  std::string all;
  for (const road::TimedRule& rule : town.built.tables.timed_rules) {
    all += std::string(town.roads().text(rule.key)) + ": " +
           std::string(town.roads().text(rule.text)) + "\n";
  }
  return all;
}

TEST_CASE("rules with hours are kept once each, those for lorries not", "[mark]") {
  const test::BuiltTown town = street(
      "highway=tertiary motor_vehicle:conditional=\"no @ (Mo-Fr 08:00-09:00)\" "
      "maxspeed:conditional=\"20 mph @ (Mo-Fr 08:15-09:15)\" hgv:conditional=\"no @ "
      "(20:00-07:00)\" "
      "access:conditional=\"no @ (weight>7.5)\"");
  CHECK(timed(town) ==
        "motor_vehicle:conditional: no @ (Mo-Fr 08:00-09:00)\n"
        "maxspeed:conditional: 20 mph @ (Mo-Fr 08:15-09:15)\n");
  CHECK(has(town, flag::no_access));
  CHECK_FALSE(town.roads().drivable(town.stretch("AB")));
}

TEST_CASE("a school's flashing 20 is kept as it stands, the limit too", "[mark]") {
  const test::BuiltTown town =
      street("highway=tertiary maxspeed=\"30 mph\" maxspeed:conditional=\"20 mph @ flashing\"");
  CHECK(timed(town) == "maxspeed:conditional: 20 mph @ flashing\n");
  CHECK(town.roads().stretch(town.stretch("AB")).limit.value == 30);
}

TEST_CASE("words that can't be read are told with their way", "[mark]") {
  const test::BuiltTown town = street("highway=tertiary width=narrow oneway=sometimes");
  const auto& odd = town.report.oddities();
  const auto told = [&](std::string_view what, std::string_view detail) {
    return std::ranges::any_of(odd, [&](const road::Oddity& o) {
      return o.what == what && o.detail == detail && o.object.id == 1;
    });
  };
  CHECK(told("width can't be read", "width=narrow"));
  CHECK(told("oneway can't be read", "oneway=sometimes"));
}

}  // namespace
}  // namespace loopwright::mark
