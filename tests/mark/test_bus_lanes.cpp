#include <catch2/catch.hpp>
#include <string>

#include "loopwright/hours/timetable.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

using road::LaneDirection;
using road::LaneSide;

std::string told(const BusLaneFact& lane) {
  const char* directions[] = {"along", "against", "unknown direction"};
  const char* sides[] = {"unknown side", "left", "right"};
  std::string text = directions[static_cast<int>(lane.direction)];
  text += std::string(", ") + sides[static_cast<int>(lane.side)];
  if (lane.contraflow) text += ", contraflow";
  if (lane.doubtful()) text += ", doubtful";
  return text + (lane.hours.empty() ? std::string(", no hours") : ", " + lane.hours);
}

/// The lanes of a road in words, one after the other; drives on the left.
std::string lanes(Tags tags, Side side = Side::left) {
  std::string all;
  const OneWay one_way = one_way_of(tags, road::RoadClass::primary);
  for (const BusLaneFact& lane : bus_lanes_of(tags, one_way, side)) {
    all += (all.empty() ? "" : " | ") + told(lane);
  }
  return all.empty() ? "none" : all;
}

/// What isn't in those words: "2/3 bus;taxi", the lane, and in how many, and who may use it.
std::string users(Tags tags) {
  std::string all;
  const OneWay one_way = one_way_of(tags, road::RoadClass::primary);
  for (const BusLaneFact& lane : bus_lanes_of(tags, one_way, Side::left)) {
    all += (all.empty() ? "" : " | ") + std::to_string(lane.lane) + "/" +
           std::to_string(lane.lanes) + " " + lane.who;
  }
  return all;
}

/// What contradicts what, of the first lane.
std::string doubt(Tags tags) {
  const auto found = bus_lanes_of(tags, one_way_of(tags, road::RoadClass::primary), Side::left);
  return found.empty() ? "none" : found.front().doubt;
}

std::string source(Tags tags) {
  const auto found = bus_lanes_of(tags, one_way_of(tags, road::RoadClass::primary), Side::left);
  return found.empty() ? "none" : found.front().source;
}

TEST_CASE("a road that says nothing of buses has no bus lane", "[mark]") {
  CHECK(lanes({}) == "none");
  CHECK(lanes({{"lanes", "2"}, {"bus", "designated"}}) == "none");
}

// OSM wiki, Key:lanes:bus and Bus lanes.
TEST_CASE("a counted bus lane has a direction but no side", "[mark]") {
  CHECK(lanes({{"lanes:bus:forward", "1"}}) == "along, unknown side, no hours");
  CHECK(lanes({{"lanes:psv:backward", "1"}}) == "against, unknown side, no hours");
  CHECK(lanes({{"lanes:bus", "0"}}) == "none");
  CHECK(source({{"lanes:bus:forward", "1"}}) == "lanes:bus:forward=1");
}

TEST_CASE("lanes:bus=1 on a two-way road doesn't say on which side", "[mark]") {
  CHECK(lanes({{"lanes:bus", "1"}}) == "unknown direction, unknown side, no hours");
  CHECK(lanes({{"lanes:bus", "2"}}) ==
        "along, unknown side, no hours | against, unknown side, no hours");
}

TEST_CASE("on a one-way road a bus lane goes with the traffic", "[mark]") {
  CHECK(lanes({{"oneway", "yes"}, {"lanes:bus", "1"}}) == "along, unknown side, no hours");
  CHECK(lanes({{"oneway", "-1"}, {"lanes:bus", "1"}}) == "against, unknown side, no hours");
  CHECK(lanes({{"oneway", "yes"}, {"lanes:bus:backward", "1"}}) ==
        "against, unknown side, contraflow, no hours");
  CHECK(lanes({{"oneway", "-1"}, {"lanes:bus:forward", "1"}}) ==
        "along, unknown side, contraflow, no hours");
}

TEST_CASE("hours of a counted lane are kept without their brackets", "[mark]") {
  const char* key = "lanes:bus:forward:conditional";
  CHECK(lanes({{key, "1 @ (Mo-Sa 07:00-10:00,16:00-19:00)"}}) ==
        "along, unknown side, Mo-Sa 07:00-10:00,16:00-19:00");
  CHECK(lanes({{key, "1 @ Mo-Fr 07:00-10:00"}}) == "along, unknown side, Mo-Fr 07:00-10:00");
  CHECK(lanes({{key, "1 @ (24/7)"}}) == "along, unknown side, 24/7");
  CHECK(lanes({{key, "1 @ (00:00-00:00)"}}) == "along, unknown side, 00:00-00:00");
  CHECK(lanes({{key, "1 @ (Mo-Fr 07:00-10:00; PH off)"}}) ==
        "along, unknown side, Mo-Fr 07:00-10:00; PH off");
  CHECK(lanes({{key, "1 @ Mo-Fr 07:00-10:00; PH off"}}) ==  // no brackets: still one clause
        "along, unknown side, Mo-Fr 07:00-10:00; PH off");
  CHECK(source({{key, "1 @ (24/7)"}}) == "lanes:bus:forward:conditional=1 @ (24/7)");
  CHECK(lanes({{"lanes:psv:forward", "1"}, {"lanes:psv:forward:times", "Mo-Fr 07:00-10:00"}}) ==
        "along, unknown side, Mo-Fr 07:00-10:00");
}

TEST_CASE("several clauses are kept one behind the other", "[mark]") {
  const char* key = "lanes:bus:forward:conditional";
  CHECK(lanes({{key, "1 @ (Mo-Fr 07:00-10:00); 1 @ (Mo-Fr 16:00-19:00)"}}) ==
        "along, unknown side, yes @ (Mo-Fr 07:00-10:00); yes @ (Mo-Fr 16:00-19:00)");
  CHECK(lanes({{key, "1 @ (Mo-Sa 07:00-19:00); 0 @ (Sa)"}}) ==
        "along, unknown side, yes @ (Mo-Sa 07:00-19:00); no @ (Sa)");
}

TEST_CASE("a condition on other vehicles or on the weather", "[mark]") {
  const char* key = "lanes:bus:forward:conditional";
  CHECK(lanes({{key, "1 @ (Mo-Fr 07:00-10:00 AND weight<3.5)"}}) ==
        "along, unknown side, Mo-Fr 07:00-10:00");
  CHECK(lanes({{key, "1 @ (weight>7.5)"}}) == "none");
  CHECK(lanes({{key, "1 @ (Mo-Fr 07:00-10:00 AND wet)"}}) ==
        "along, unknown side, Mo-Fr 07:00-10:00 AND wet");
  CHECK(lanes({{key, "1 @ flashing"}}) == "along, unknown side, flashing");
}

TEST_CASE("always, and also only at times: the hours are believed, in doubt", "[mark]") {
  CHECK(lanes({{"lanes:bus:forward", "1"},
               {"lanes:bus:forward:conditional", "1 @ (Mo-Fr 07:00-10:00)"}}) ==
        "along, unknown side, doubtful, Mo-Fr 07:00-10:00");
  CHECK(doubt({{"lanes:bus", "1"}, {"lanes:bus:conditional", "1 @ (Mo-Fr 07:00-10:00)"}}) ==
        "lanes:bus=1 says always, lanes:bus:conditional says Mo-Fr 07:00-10:00");
  // Another family that has the lane without hours settles nothing.
  CHECK(doubt({{"busway:left", "lane"},
               {"lanes:bus:forward", "1"},
               {"lanes:bus:forward:conditional", "1 @ (Su)"}}) ==
        "lanes:bus:forward=1 says always, lanes:bus:forward:conditional says Su");
}

TEST_CASE("when only the free hours are given, the lane is in force at all others", "[mark]") {
  const Tags tags{{"lanes:bus:forward", "1"},
                  {"lanes:bus:forward:conditional", "0 @ (Mo-Fr 10:00-16:00)"}};
  CHECK(lanes(tags) == "along, unknown side, yes @ (24/7); no @ (Mo-Fr 10:00-16:00)");
  const hours::Timetable in_force(
      bus_lanes_of(tags, one_way_of(tags, road::RoadClass::primary), Side::left).front().hours);
  const hours::Setting anywhere;
  const std::int64_t monday = days_since_epoch({2026, 11, 30}) * 86400;
  CHECK(in_force.at({monday + 9 * 3600, 0}, anywhere).in_force == hours::Tri::yes);
  CHECK(in_force.at({monday + 12 * 3600, 0}, anywhere).in_force == hours::Tri::no);
  CHECK(in_force.at({monday - 12 * 3600, 0}, anywhere).in_force == hours::Tri::yes);
}

TEST_CASE("free hours of two rules are cut out of always too", "[mark]") {
  CHECK(lanes({{"lanes:bus:forward", "1"},
               {"lanes:bus:forward:conditional", "0 @ (Mo-Fr 10:00-16:00, Sa 08:00-12:00)"}}) ==
        "along, unknown side, yes @ (24/7); no @ (Mo-Fr 10:00-16:00, Sa 08:00-12:00)");
}

// OSM wiki, Key:bus:lanes: designated alone forbids nobody; that needs "no" for vehicles.
TEST_CASE("the first lane shut to cars and kept for buses is on the left", "[mark]") {
  CHECK(lanes({{"oneway", "yes"},
               {"bus:lanes", "designated|yes"},
               {"motor_vehicle:lanes", "no|yes"}}) == "along, left, no hours");
  CHECK(lanes({{"bus:lanes:forward", "yes|designated"}, {"vehicle:lanes:forward", "yes|no"}}) ==
        "along, right, no hours");
  CHECK(lanes({{"bus:lanes:backward", "designated|yes"}, {"access:lanes:backward", "no|yes"}}) ==
        "against, left, no hours");
}

TEST_CASE("a lane for bicycles alone is no bus lane", "[mark]") {
  CHECK(lanes({{"oneway", "yes"},
               {"bus:lanes", "no|yes"},
               {"bicycle:lanes", "designated|yes"},
               {"vehicle:lanes", "no|yes"}}) == "none");
}

TEST_CASE("designated lanes that shut out nobody are bus lanes in doubt", "[mark]") {
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"}}) == "along, left, doubtful, no hours");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"motor_vehicle:lanes:forward", "yes|yes"}}) == "none");
  CHECK(doubt({{"bus:lanes:forward", "designated|yes"}}) ==
        "bus:lanes:forward=designated|yes shuts nobody else out");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"}, {"lanes:bus:forward", "1"}}) ==
        "along, left, no hours");
}

TEST_CASE("hours on the bus key alone contradict a ban on cars at all times", "[mark]") {
  const Tags tags{{"bus:lanes:forward", "yes|yes"},
                  {"bus:lanes:forward:conditional", "designated|yes @ (Mo-Fr 07:00-09:00)"},
                  {"motor_vehicle:lanes:forward", "no|yes"}};
  CHECK(lanes(tags) == "along, left, doubtful, Mo-Fr 07:00-09:00");
  CHECK(doubt(tags) ==
        "motor_vehicle:lanes:forward=no|yes says always, bus:lanes:forward:conditional says "
        "Mo-Fr 07:00-09:00");
}

TEST_CASE("a listed lane has its number from the left as its buses drive", "[mark]") {
  CHECK(users({{"bus:lanes:forward", "yes|designated|yes"},
               {"vehicle:lanes:forward", "yes|no|yes"}}) == "2/3 bus");
  CHECK(users({{"oneway", "yes"}, {"psv:lanes", "designated|yes"}, {"access:lanes", "no|yes"}}) ==
        "1/2 psv");
  CHECK(users({{"lanes:bus:forward", "1"}}) == "0/0 bus");
  CHECK(users({{"bus:lanes", "designated|yes"}, {"vehicle:lanes", "no|yes"}}) == "0/0 bus");
  // Two lanes of one direction stay two.
  CHECK(lanes({{"oneway", "yes"},
               {"bus:lanes", "designated|designated|yes"},
               {"vehicle:lanes", "no|no|yes"}}) ==
        "along, unknown side, no hours | along, left, no hours");
}

TEST_CASE("who may use a bus lane is told as mapped, by all families together", "[mark]") {
  CHECK(users({{"bus:lanes:forward", "designated|yes"},
               {"taxi:lanes:forward", "yes|yes"},
               {"bicycle:lanes:forward", "designated|yes"},
               {"motorcycle:lanes:forward", "no|yes"},
               {"vehicle:lanes:forward", "no|yes"}}) == "1/2 bus;taxi;bicycle");
  CHECK(users({{"lanes:psv:forward", "1"}, {"busway:left", "lane"}}) == "0/0 psv;bus");
  CHECK(users({{"busway:left", "lane"}, {"cycleway:left", "share_busway"}}) == "0/0 bus;bicycle");
}

TEST_CASE("a contraflow lane in a list is numbered as its buses see it", "[mark]") {
  const Tags tags{
      {"oneway", "yes"}, {"bus:lanes:backward", "designated"}, {"vehicle:lanes:backward", "no"}};
  CHECK(lanes(tags) == "against, unknown side, contraflow, no hours");
  CHECK(users(tags) == "1/1 bus");
}

TEST_CASE("oneway=-1 with lanes:forward: that lane runs against the traffic", "[mark]") {
  CHECK(lanes({{"oneway", "-1"}, {"lanes:forward", "1"}, {"lanes:bus:forward", "1"}}) ==
        "along, unknown side, contraflow, no hours");
}

TEST_CASE("lanes for buses and taxis count, and fill the gaps of bus:lanes", "[mark]") {
  CHECK(lanes({{"psv:lanes:forward", "designated|yes"}, {"vehicle:lanes:forward", "no|yes"}}) ==
        "along, left, no hours");
  CHECK(lanes({{"bus:lanes:forward", "|yes"},
               {"psv:lanes:forward", "designated|"},
               {"vehicle:lanes:forward", "no|yes"}}) == "along, left, no hours");
}

TEST_CASE("listed lanes have their hours from the bus key or from the ban on cars", "[mark]") {
  CHECK(lanes({{"bus:lanes:forward:conditional", "designated|yes @ Mo-Fr 07:00-09:00"}}) ==
        "along, left, Mo-Fr 07:00-09:00");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"motor_vehicle:lanes:forward:conditional", "no|yes @ (Mo-Fr 07:00-09:00)"}}) ==
        "along, left, Mo-Fr 07:00-09:00");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"motor_vehicle:lanes:forward", "no|yes"},
               {"motor_vehicle:lanes:forward:conditional", "yes|yes @ (Mo-Fr 10:00-16:00)"}}) ==
        "along, left, yes @ (24/7); no @ (Mo-Fr 10:00-16:00)");
}

// OSM wiki, Conditional restrictions (the last clause wins), Key:access (the more special mode wins).
TEST_CASE("of lists with hours that speak of one lane the most special key's wins", "[mark]") {
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"motor_vehicle:lanes:forward:conditional", "yes|yes @ (Mo-Fr 12:00-13:00)"},
               {"access:lanes:forward:conditional", "no|yes @ (Mo-Fr 07:00-19:00)"}}) ==
        "along, left, yes @ (Mo-Fr 07:00-19:00); no @ (Mo-Fr 12:00-13:00)");
}

TEST_CASE("a list with hours for all frees no lane that one for cars reserves, but may reserve one",
          "[mark]") {
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"motor_vehicle:lanes:forward", "no|yes"},
               {"access:lanes:forward:conditional", "yes|yes @ (Su)"}}) == "along, left, no hours");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"motor_vehicle:lanes:forward", "yes|yes"},
               {"access:lanes:forward:conditional", "no|yes @ (Mo-Fr 07:00-10:00)"}}) ==
        "along, left, Mo-Fr 07:00-10:00");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"access:lanes:forward", "no|yes"},
               {"motor_vehicle:lanes:forward:conditional", "yes|yes @ (Su)"}}) ==
        "along, left, yes @ (24/7); no @ (Su)");
}

TEST_CASE("of bus lists with hours that of buses outranks that of buses and taxis", "[mark]") {
  CHECK(lanes({{"bus:lanes:forward:conditional", "yes|yes @ (Su)"},
               {"psv:lanes:forward:conditional", "designated|yes @ (07:00-19:00)"}}) ==
        "along, left, yes @ (07:00-19:00); no @ (Su)");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"bus:lanes:forward:conditional", "yes|yes @ (Su)"},
               {"psv:lanes:forward:conditional", "yes|yes @ (Sa)"}}) ==
        "along, left, yes @ (24/7); no @ (Su)");
}

TEST_CASE("of lists each lane is ranked for itself", "[mark]") {
  CHECK(lanes({{"bus:lanes:forward", "designated|designated|yes"},
               {"motor_vehicle:lanes:forward", "no||yes"},
               {"access:lanes:forward", "|no|yes"},
               {"access:lanes:forward:conditional", "yes|yes|yes @ (Su)"}}) ==
        "along, unknown side, yes @ (24/7); no @ (Su) | along, left, no hours");
}

TEST_CASE("a list without a direction on a two-way road tells neither direction nor side",
          "[mark]") {
  CHECK(lanes({{"bus:lanes", "designated|yes|yes"}, {"vehicle:lanes", "no|yes|yes"}}) ==
        "unknown direction, unknown side, no hours");
}

// OSM wiki, Key:busway; deprecated by the vote that ended on 15 November 2024.
TEST_CASE("busway:left=lane is deprecated but still a bus lane", "[mark]") {
  CHECK(lanes({{"busway:left", "lane"}}) == "along, left, no hours");
  CHECK(lanes({{"busway:right", "lane"}}) == "against, left, no hours");
  CHECK(lanes({{"busway:both", "lane"}}) == "along, left, no hours | against, left, no hours");
  CHECK(lanes({{"busway", "lane"}}) == "along, left, no hours | against, left, no hours");
  CHECK(lanes({{"busway", "opposite"}}) == "none");
}

TEST_CASE("where one drives on the right the sides are the other way round", "[mark]") {
  CHECK(lanes({{"busway:right", "lane"}}, Side::right) == "along, right, no hours");
  CHECK(lanes({{"busway:left", "lane"}}, Side::right) == "against, right, no hours");
}

TEST_CASE("busway on a one-way street", "[mark]") {
  CHECK(lanes({{"oneway", "yes"}, {"busway", "lane"}}) == "along, unknown side, no hours");
  CHECK(lanes({{"oneway", "yes"}, {"busway:right", "lane"}}) == "along, right, no hours");
  CHECK(lanes({{"oneway", "-1"}, {"busway:left", "lane"}}) == "against, right, no hours");
  CHECK(lanes({{"oneway", "yes"}, {"busway", "opposite_lane"}}) ==
        "against, unknown side, contraflow, no hours");
  CHECK(lanes({{"oneway", "yes"}, {"busway:right", "opposite_lane"}}) ==
        "against, left, contraflow, no hours");
}

TEST_CASE("hours in busway's conditional are accepted, though nobody documents them", "[mark]") {
  CHECK(
      lanes({{"busway:left", "lane"}, {"busway:left:conditional", "lane @ (Mo-Fr 07:00-10:00)"}}) ==
      "along, left, Mo-Fr 07:00-10:00");
  CHECK(lanes({{"busway:left", "lane"}, {"busway:left:conditional", "Mo-Fr 07:00-10:00"}}) ==
        "along, left, Mo-Fr 07:00-10:00");
}

TEST_CASE("two families that speak of one lane are joined", "[mark]") {
  CHECK(lanes({{"lanes:bus:forward:conditional", "1 @ (Mo-Fr 07:00-10:00)"},
               {"busway:left", "lane"}}) == "along, left, Mo-Fr 07:00-10:00");
  CHECK(lanes({{"lanes:bus", "1"}, {"busway:left", "lane"}}) == "along, left, no hours");
  CHECK(lanes({{"lanes:bus:forward", "1"}, {"lanes:psv:forward", "1"}}) ==
        "along, unknown side, no hours");
}

TEST_CASE("a side key and a list that lets cars into every lane contradict each other", "[mark]") {
  const Tags tags{{"busway:left", "lane"}, {"motor_vehicle:lanes:forward", "yes|yes"}};
  CHECK(lanes(tags) == "along, left, doubtful, no hours");
  CHECK(doubt(tags) ==
        "busway:left=lane says a bus lane, motor_vehicle:lanes:forward=yes|yes lets cars in "
        "everywhere");
  CHECK(lanes({{"busway:left", "lane"}, {"motor_vehicle:lanes:backward", "yes|yes"}}) ==
        "along, left, no hours");
  CHECK(lanes({{"busway:left", "lane"}, {"motor_vehicle:lanes:forward", "no|yes"}}) ==
        "along, left, no hours");
}

TEST_CASE("two families with different hours leave none", "[mark]") {
  CHECK(lanes({{"lanes:bus:forward:conditional", "1 @ (Mo-Fr 07:00-10:00)"},
               {"busway:left", "lane"},
               {"busway:left:conditional", "lane @ (Mo-Fr 16:00-19:00)"}}) ==
        "along, left, doubtful, no hours");
  CHECK(doubt({{"lanes:bus:forward:conditional", "1 @ (Mo-Fr 07:00-10:00)"},
               {"busway:left", "lane"},
               {"busway:left:conditional", "lane @ (Mo-Fr 16:00-19:00)"}}) ==
        "lanes:bus:forward:conditional says Mo-Fr 07:00-10:00, busway:left:conditional says "
        "Mo-Fr 16:00-19:00");
  CHECK(lanes({{"lanes:bus:forward:conditional", "1 @ (Mo-Fr 07:00-10:00, 16:00-19:00)"},
               {"busway:left", "lane"},
               {"busway:left:conditional", "Mo-Fr 07:00-10:00,16:00-19:00"}}) ==
        "along, left, Mo-Fr 07:00-10:00, 16:00-19:00");
}

TEST_CASE("a plain busway stays a lane whatever its conditional says", "[mark]") {
  const auto left = [](const char* conditional) {
    return lanes({{"busway:left", "lane"}, {"busway:left:conditional", conditional}});
  };
  CHECK(left("yes @ (Mo-Fr 07:00-10:00)") == "along, left, Mo-Fr 07:00-10:00");
  CHECK(left("designated @ (Mo-Fr 07:00-10:00)") == "along, left, Mo-Fr 07:00-10:00");
  CHECK(left("no @ (Sa-Su)") == "along, left, yes @ (24/7); no @ (Sa-Su)");
  CHECK(left("open @ (Mo-Fr 07:00-10:00)") == "along, left, doubtful, no hours");
  CHECK(left("@ (Mo-Fr 07:00-10:00)") == "along, left, doubtful, no hours");
  CHECK(left("no @ (24/7)") == "along, left, doubtful, no hours");
  CHECK(left("lane @ (weight>7.5)") == "along, left, no hours");
  CHECK(lanes({{"busway", "lane"}, {"busway:conditional", "yes @ (Mo-Fr 07:00-10:00)"}}) ==
        "along, left, Mo-Fr 07:00-10:00 | against, left, Mo-Fr 07:00-10:00");
  CHECK(doubt({{"busway:left", "lane"}, {"busway:left:conditional", "open @ (Su)"}}) ==
        "busway:left:conditional=open @ (Su) doesn't say when there is a lane");
}

TEST_CASE("counts that can't be read leave a lane at unknown hours", "[mark]") {
  const char* unknown = "along, unknown side, doubtful, no hours";
  const char* key = "lanes:bus:forward:conditional";
  CHECK(lanes({{key, "Mo-Fr 07:00-10:00"}}) == unknown);  // "1 @" forgotten
  CHECK(lanes({{key, "yes"}}) == unknown);
  CHECK(lanes({{"lanes:psv:forward:conditional", "1"}}) == unknown);
  CHECK(lanes({{key, "bus @ (Mo-Fr 07:00-10:00)"}}) == unknown);
  CHECK(lanes({{key, "@ (Mo-Fr 07:00-10:00)"}}) == unknown);
  CHECK(lanes({{"lanes:bus:forward", "1.5"}}) == unknown);
  CHECK(lanes({{"lanes:bus:forward", "-1"}}) == unknown);
  CHECK(lanes({{"lanes:bus", "many"}}) == "unknown direction, unknown side, doubtful, no hours");
  CHECK(lanes({{key, "0"}}) == "none");
  CHECK(lanes({{"lanes:bus:forward", "no"}}) == "none");
  CHECK(doubt({{key, "yes"}}) == "lanes:bus:forward:conditional=yes can't be read");
  // Hours of another family aren't believed against it.
  CHECK(lanes({{key, "yes"},
               {"busway:left", "lane"},
               {"busway:left:conditional", "lane @ (Mo-Fr 07:00-10:00)"}}) ==
        "along, left, doubtful, Mo-Fr 07:00-10:00");
}

TEST_CASE("lists that can't be read leave a lane at unknown hours", "[mark]") {
  CHECK(lanes({{"bus:lanes:forward", "designated;yes|yes"},
               {"motor_vehicle:lanes:forward", "no;private|yes"}}) == "along, left, no hours");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"motor_vehicle:lanes:forward", "no;yes|yes"}}) ==
        "along, left, doubtful, no hours");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"motor_vehicle:lanes:forward", "private|yes"}}) == "along, left, no hours");
  CHECK(lanes({{"bus:lanes:forward:conditional", "(designated|yes) @ (Mo-Fr 07:00-09:00)"}}) ==
        "along, left, Mo-Fr 07:00-09:00");
  CHECK(lanes({{"bus:lanes:forward:conditional", "designated|yes"}}) ==
        "along, unknown side, doubtful, no hours");
  CHECK(lanes({{"bus:lanes:forward:conditional", "Mo-Fr 07:00-09:00"}}) ==
        "along, unknown side, doubtful, no hours");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"},
               {"motor_vehicle:lanes:forward", "yes|yes"},
               {"motor_vehicle:lanes:forward:conditional", "Mo-Fr 07:00-09:00"}}) ==
        "along, unknown side, doubtful, no hours");
  CHECK(doubt({{"bus:lanes:forward:conditional", "designated|yes"}}) ==
        "bus:lanes:forward:conditional=designated|yes can't be read");
}

TEST_CASE("empty lists and other words are no bus lane", "[mark]") {
  CHECK(lanes({{"bus:lanes", "||"}}) == "none");
  CHECK(lanes({{"busway", "lines"}}) == "none");
}

TEST_CASE("a doubt that another family settles is none, whichever comes first", "[mark]") {
  // A designated lane alone shuts nobody out; a side key or a count says that it is a bus lane.
  const Tags list{{"bus:lanes:forward", "designated|yes"}};
  CHECK(lanes(list) == "along, left, doubtful, no hours");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"}, {"busway:left", "lane"}}) ==
        "along, left, no hours");
  CHECK(lanes({{"bus:lanes:forward", "designated|yes"}, {"lanes:bus:forward", "1"}}) ==
        "along, left, no hours");
}

TEST_CASE("on a road whose one direction changes nobody knows which way its bus lane goes",
          "[mark]") {
  OneWay both;
  both.one_way = true;
  const auto found = bus_lanes_of({{"lanes:bus", "1"}}, both, Side::left);
  REQUIRE(found.size() == 1);
  CHECK(found[0].direction == LaneDirection::unknown);
}

}  // namespace
}  // namespace loopwright::mark
