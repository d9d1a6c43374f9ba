// Sources: OSM wiki Key:cycleway, Key:cycleway:lane.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// Cycle lanes of a road of 150 m from A to B, and back by another road.
Texts lanes(const std::string& tags, std::string_view region = "GB-ENG") {
  const BuiltTown town = built_town(
      "A     B\n      C\nw1 AB highway=tertiary " + tags + "\nw2 BCA highway=tertiary\n", region);
  return run_facts(town, Kind::cycle_lane);
}

TEST_CASE("a road without a cycle lane has none", "[mark][cycle_lanes]") {
  CHECK(lanes("").empty());
  CHECK(lanes("cycleway=no").empty());
}

TEST_CASE("a cycle lane on both sides is met both ways", "[mark][cycle_lanes]") {
  CHECK(lanes("cycleway=lane") == Texts{"AB certain cycleway=lane", "BA certain cycleway=lane"});
  CHECK(lanes("cycleway:both=lane") ==
        Texts{"AB certain cycleway:both=lane", "BA certain cycleway:both=lane"});
}

TEST_CASE("a lane on the left is ours going along, where one drives on the left",
          "[mark][cycle_lanes]") {
  CHECK(lanes("cycleway:left=lane") == Texts{"AB certain cycleway:left=lane"});
  CHECK(lanes("cycleway:right=lane") == Texts{"BA certain cycleway:right=lane"});
}

TEST_CASE("where one drives on the right, the lane on the left is that of who comes back",
          "[mark][cycle_lanes]") {
  CHECK(lanes("cycleway:left=lane", "FR") == Texts{"BA certain cycleway:left=lane"});
  CHECK(lanes("cycleway:right=lane", "FR") == Texts{"AB certain cycleway:right=lane"});
}

TEST_CASE("the kind of line is told with the lane, or alone", "[mark][cycle_lanes]") {
  CHECK(lanes("cycleway:left=lane cycleway:left:lane=advisory") ==
        Texts{"AB certain cycleway:left=lane cycleway:left:lane=advisory"});
  CHECK(lanes("cycleway:left:lane=exclusive") == Texts{"AB certain cycleway:left:lane=exclusive"});
  CHECK(lanes("cycleway:lane=pictogram").empty());
}

TEST_CASE("a side's own tag comes before that of both", "[mark][cycle_lanes]") {
  CHECK(lanes("cycleway=lane cycleway:left=no") == Texts{"BA certain cycleway=lane"});
}

TEST_CASE("on a one-way street the near side counts, whichever way it is drawn",
          "[mark][cycle_lanes]") {
  CHECK(lanes("oneway=yes cycleway=lane") == Texts{"AB certain cycleway=lane"});
  CHECK(lanes("oneway=yes cycleway:right=lane").empty());
  CHECK(lanes("oneway=-1 cycleway:right=lane") == Texts{"BA certain cycleway:right=lane"});
}

TEST_CASE("cyclists who come towards us have no lane of ours", "[mark][cycle_lanes]") {
  CHECK(lanes("oneway=yes cycleway=opposite_lane").empty());
  CHECK(lanes("oneway=yes cycleway:left=lane cycleway:left:oneway=-1").empty());
}

TEST_CASE("tracks, shared lanes and bus lanes are no cycle lanes", "[mark][cycle_lanes]") {
  for (const char* value : {"track", "shared_lane", "share_busway", "separate", "crossing"}) {
    CHECK(lanes(std::string("cycleway=") + value).empty());
  }
}

TEST_CASE("a cycle lane on a service road isn't met, one on the street behind it is",
          "[mark][cycle_lanes]") {
  const BuiltTown town = built_town(R"(
A   B   C   D
w1 AB highway=service cycleway=lane
w2 BC highway=tertiary
w3 CD highway=tertiary cycleway:left=lane
)");
  CHECK(run_facts(town, Kind::cycle_lane) == Texts{"CD certain cycleway:left=lane"});
}

}  // namespace
}  // namespace loopwright::test
