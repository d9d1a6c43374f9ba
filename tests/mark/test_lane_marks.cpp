// The lanes of a stretch as a driver meets them. Source: OSM wiki, pages Key:lanes, Key:turn.
#include <catch2/catch.hpp>
#include <string>

#include "support/built_town.hpp"

namespace loopwright::test {
namespace {

/// "left|through x2 certain turn:lanes=…" of a stretch; empty without a row.
std::string lanes_of(const BuiltTown& town, std::string_view stretch) {
  const road::Roads roads = town.roads();
  const auto rows = roads.lane_marks_of(town.stretch(stretch));
  if (rows.empty()) return {};
  const road::LaneMarks& marks = rows.front();
  return std::string(roads.text(marks.arrows)) + " x" + std::to_string(marks.count) +
         (marks.certain != 0 ? " certain " : " half ") + std::string(roads.text(marks.source));
}

BuiltTown road_with(const std::string& tags) {
  return built_town("A   B\nw1 AB highway=primary " + tags + "\n");
}

}  // namespace

TEST_CASE("a road without mapped lanes has no row of lanes", "[mark][lanes]") {
  const BuiltTown town = road_with("");
  CHECK(town.roads().lane_marks.empty());
}

TEST_CASE("arrows and number of a direction", "[mark][lanes]") {
  const BuiltTown town =
      road_with("lanes=3 lanes:forward=2 lanes:backward=1 turn:lanes:forward=left|through;right");
  CHECK(lanes_of(town, "AB") ==
        "left|through;right x2 certain turn:lanes:forward=left|through;right");
  CHECK(lanes_of(town, "BA") == " x1 certain lanes:backward=1");
}

TEST_CASE("spaces in the arrows are a slip of the pen", "[mark][lanes]") {
  CHECK(lanes_of(road_with("oneway=yes turn:lanes=\"left | right\""), "AB") ==
        "left|right x2 certain turn:lanes=left | right");
}

TEST_CASE("half of a total is a number without certainty", "[mark][lanes]") {
  CHECK(lanes_of(road_with("lanes=4"), "AB") == " x2 half lanes=4");
}

TEST_CASE("a number that contradicts the arrows is no number", "[mark][lanes]") {
  CHECK(lanes_of(road_with("oneway=yes lanes=3 turn:lanes=left|right"), "AB") ==
        "left|right x0 half turn:lanes=left|right");
}

TEST_CASE("a lane for buses is among the arrows, and no car's", "[mark][lanes]") {
  CHECK(lanes_of(road_with("oneway=yes lanes=3 turn:lanes=through|through|right "
                           "bus:lanes=designated|yes|yes motor_vehicle:lanes=no|yes|yes"),
                 "AB") == "through|through|right x2 certain turn:lanes=through|through|right");
}

TEST_CASE("a way that may not be driven has no lanes", "[mark][lanes]") {
  CHECK(lanes_of(road_with("oneway=yes lanes=2"), "BA").empty());
}

}  // namespace loopwright::test
