// The lane to be in, where the map has the arrows. Source: OSM wiki, page Key:turn.
#include <catch2/catch.hpp>

#include "say/said.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {
namespace {

/// Crossroads with lights; the road from the west has these tags.
BuiltTown with_lanes(const std::string& tags, std::string_view region = "GB-ENG") {
  return town_of(R"(
            D
  A    B    C    F
            E
  w1 AB    highway=secondary ref=B9951
  w50 BC   highway=secondary ref=B9951 )" +
                     tags + R"(
  w51 CF   highway=secondary ref=B9951
  w2 DCE   highway=residential name=Mill_Orchard
  nC highway=traffic_signals
  )",
                 100, region);
}

std::string lane_of(const BuiltTown& town, std::string_view letters) {
  return rows_of(town, letters)[1].lane;
}

const std::string three = "lanes=4 lanes:forward=3 turn:lanes:forward=left|through|right";

}  // namespace

TEST_CASE("without mapped arrows no lane is told", "[say][lane]") {
  CHECK(lane_of(with_lanes("lanes=4"), "ABCECBA").empty());
}

TEST_CASE("the lane is the one whose arrows lead the way taken", "[say][lane]") {
  const BuiltTown town = with_lanes(three);
  CHECK(lane_of(town, "ABCECBA") == "right lane of three");
  CHECK(lane_of(town, "ABCDCBA") == "left lane of three");
  CHECK(rows_of(town, "ABCFCBA", {"signals:ahead=1"})[1].lane == "middle lane of three");
}

TEST_CASE("of two lanes that both lead there it may be either", "[say][lane]") {
  const BuiltTown town = with_lanes("turn:lanes:forward=left;right|right");
  CHECK(lane_of(town, "ABCECBA") == "either lane");
  CHECK(lane_of(town, "ABCDCBA") == "left lane of two");
}

TEST_CASE("several lanes of more are told by their side", "[say][lane]") {
  const BuiltTown town = with_lanes("turn:lanes:forward=left|through|right|right");
  CHECK(lane_of(town, "ABCECBA") == "right two lanes of four");
}

TEST_CASE("one lane is no choice, and arrows that don't lead there tell nothing", "[say][lane]") {
  CHECK(lane_of(with_lanes("turn:lanes:forward=left;through;right"), "ABCECBA").empty());
  CHECK(lane_of(with_lanes("turn:lanes:forward=left|through"), "ABCECBA").empty());
}

TEST_CASE("a bus lane is no lane to be in, one nobody can place leaves it untold", "[say][lane]") {
  const std::string arrows =
      "lanes=4 lanes:forward=3 turn:lanes:forward=through|left;through|right ";
  CHECK(lane_of(with_lanes(arrows + "bus:lanes:forward=designated|yes|yes "
                                    "motor_vehicle:lanes:forward=no|yes|yes"),
                "ABCDCBA") == "left lane of two");
  CHECK(lane_of(with_lanes(arrows + "lanes:bus:forward=1"), "ABCDCBA").empty());
}

TEST_CASE("at a roundabout the lane is that of the exit's side", "[say][lane]") {
  std::string drawing(crossing_streets);
  drawing.replace(drawing.find("w6 Bn "), 6, "w6 Bn turn:lanes:forward=left|through;right ");
  const BuiltTown town = town_of(drawing, 100);
  CHECK(rows_of(town, "ABnpGCBA")[2].lane == "left lane of two");
  CHECK(rows_of(town, "ABnpqJKGCBA")[2].lane == "right lane of two");
  CHECK(rows_of(town, "ABnpqrnBA")[2].lane == "right lane of two");  // all the way round
}

TEST_CASE("where one drives on the right, left is still left", "[say][lane]") {
  CHECK(lane_of(with_lanes(three, "LI"), "ABCECBA") == "right lane of three");
}

}  // namespace loopwright::test
