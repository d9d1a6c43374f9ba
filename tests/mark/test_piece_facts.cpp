#include <algorithm>
#include <catch2/catch.hpp>
#include <string>
#include <vector>

#include "loopwright/hours/condition.hpp"
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

/// "along, limit: 30 mph, 20 mph @ (…)" of each rule with hours of a one-piece town.
std::string timed(const test::BuiltTown& town) {
  constexpr const char* topics[] = {"access", "limit", "gate"};
  const road::Roads roads = town.roads();
  std::string all;
  for (const road::TimedRule& rule : roads.timed_rules) {
    CHECK((roads.stretch(rule.stretch).flags & road::stretch_flag::timed) != 0);
    all += std::string(rule.stretch.against() ? "against, " : "along, ") +
           topics[static_cast<int>(rule.about)] + ": " + std::string(roads.text(rule.base)) + ", " +
           std::string(roads.text(rule.text)) + "\n";
  }
  return all;
}

TEST_CASE("rules with hours are kept for each direction, those for lorries not", "[mark]") {
  const test::BuiltTown town = street(
      "highway=tertiary motor_vehicle:forward:conditional=\"no @ (Mo-Fr 08:00-09:00)\" "
      "maxspeed=\"30 mph\" maxspeed:conditional=\"20 mph @ (Mo-Fr 08:15-09:15)\" "
      "hgv:conditional=\"no @ (20:00-07:00)\" access:conditional=\"no @ (weight>7.5)\"");
  CHECK(timed(town) ==
        "along, access: yes, no @ (Mo-Fr 08:00-09:00)\n"
        "along, limit: 30 mph, 20 mph @ (Mo-Fr 08:15-09:15)\n"
        "against, limit: 30 mph, 20 mph @ (Mo-Fr 08:15-09:15)\n");
  CHECK_FALSE(has(town, flag::no_access));
  CHECK(town.roads().drivable(town.stretch("AB")));
  CHECK(town.roads().timed_rules_of(town.stretch("AB")).size() == 2);
  CHECK(town.report.counted("directions open to cars by the hour") == 1);
  CHECK(town.report.counted("directions whose limit changes by the hour") == 2);
  CHECK(timed(street("highway=tertiary")).empty());
}

TEST_CASE("a school's flashing 20 is kept as it stands, the limit too", "[mark]") {
  const test::BuiltTown town = street(
      "highway=tertiary maxspeed=\"30 mph\" maxspeed:forward:conditional=\"20 mph @ flashing\"");
  CHECK(timed(town) == "along, limit: 30 mph, 20 mph @ (flashing)\n");
  CHECK(town.roads().stretch(town.stretch("AB")).limit.value == 30);
}

// OSM wiki, Key:maxspeed:variable.
TEST_CASE("signs that are switched may say anything at any time", "[mark]") {
  CHECK(timed(street("highway=tertiary maxspeed:forward=\"50 mph\" "
                     "maxspeed:variable:forward=peak_traffic")) ==
        "along, limit: 50 mph, as the signs say @ (variable signs)\n");
  CHECK(timed(street("highway=tertiary maxspeed:backward=signals maxspeed=\"50 mph\"")) ==
        "against, limit: , as the signs say @ (variable signs)\n");
  CHECK(timed(street("highway=tertiary maxspeed:variable=no")).empty());
  const hours::Conditional limit =
      hours::read_conditional("50 mph", "as the signs say @ (variable signs)");
  CHECK_FALSE(limit.at({{2026, 11, 30}, 9, 0, 0}, {}).settled());
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

/// "what: detail" of each oddity about hours or bus lanes.
std::vector<std::string> odd_hours(const test::BuiltTown& town) {
  std::vector<std::string> all;
  for (const road::Oddity& odd : town.report.oddities()) {
    if (odd.what.find("hours") == std::string::npos && odd.what.find("bus") == std::string::npos)
      continue;
    all.push_back(odd.what + ": " + odd.detail);
  }
  return all;
}

TEST_CASE("hours that can't be read are told once for each way and tag", "[mark]") {
  using Texts = std::vector<std::string>;
  CHECK(odd_hours(street("highway=residential "
                         "motor_vehicle:conditional=\"no @ (school days)\" "
                         "maxspeed:conditional=\"20 mph @ flashing\" "
                         "parking:left:restriction:conditional=\"no_parking @ (term)\"")) ==
        Texts{"hours can't be read: motor_vehicle:conditional=no @ (school days)",
              "hours can't be read: "
              "parking:left:restriction:conditional=no_parking @ (term)"});
  CHECK(odd_hours(street("highway=primary lanes:bus:forward:conditional=\"1 @ (mornings)\"")) ==
        Texts{"hours can't be read: lanes:bus:forward:conditional=1 @ (mornings)"});
  CHECK(odd_hours(street("highway=primary motor_vehicle:conditional=\"no @ (SH 08:00-09:00)\"")) ==
        Texts{});
}

TEST_CASE("bus lanes whose tags leave a doubt are told with it", "[mark]") {
  using Texts = std::vector<std::string>;
  CHECK(odd_hours(street("highway=primary bus:lanes:forward=designated|yes")) ==
        Texts{"bus lane that shuts nobody else out: bus:lanes:forward=designated|yes shuts nobody "
              "else out"});
  const test::BuiltTown town = street(
      "highway=primary lanes:bus:forward=1 lanes:bus:forward:conditional=\"1 @ (Mo-Fr "
      "07:00-10:00)\" bus:lanes:forward=designated|yes");
  CHECK(odd_hours(town) ==
        Texts{"bus lane tags contradict each other: lanes:bus:forward=1 says always, "
              "lanes:bus:forward:conditional says Mo-Fr 07:00-10:00"});
  const road::Roads roads = town.roads();
  const road::BusLane& lane = roads.bus_lanes_of(town.stretch("AB").piece())[0];
  CHECK(lane.doubtful == 1);
  CHECK(lane.lane == 1);
  CHECK(lane.lanes == 2);
  CHECK(roads.text(lane.who) == "bus");
  CHECK(roads.text(lane.doubt).starts_with("lanes:bus:forward=1 says always"));
}

}  // namespace
}  // namespace loopwright::mark
