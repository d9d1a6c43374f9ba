#include <algorithm>
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "loopwright/road/bearings.hpp"
#include "loopwright/road/by_id.hpp"
#include "support/small_area.hpp"

namespace loopwright::road {
namespace {

StretchId along(std::size_t piece) {
  return {PieceId{piece}, false};
}
StretchId against(std::size_t piece) {
  return {PieceId{piece}, true};
}

TEST_CASE("an area without roads answers every question with nothing", "[road]") {
  const Tables empty;
  const Roads roads = view_of(empty, {});
  CHECK(roads.stretch_count() == 0);
  CHECK(roads.state_count() == 0);
  CHECK(roads.pieces_of_way(1).empty());
  CHECK_FALSE(roads.find_node(1).known());
  CHECK(roads.chances_from(along(0)).empty());
  CHECK(roads.run_facts_of(along(0)).empty());
  CHECK(roads.bus_lanes_of(PieceId{0}).empty());
  CHECK(roads.text(TextId{}).empty());
}

TEST_CASE("a map node is found by its id, and only the graph's", "[road]") {
  const test::SmallArea area;
  const Roads roads = area.roads();
  CHECK(roads.find_node(1) == NodeId{0});
  CHECK(roads.find_node(5) == NodeId{4});
  CHECK_FALSE(roads.find_node(0).known());
  CHECK_FALSE(roads.find_node(6).known());
}

TEST_CASE("rows are found by their id in whatever order they stand", "[road]") {
  test::SmallArea area;
  std::ranges::reverse(area.tables.nodes);
  std::ranges::rotate(area.tables.pieces, area.tables.pieces.begin() + 2);
  list_by_id(area.tables);
  const Roads roads = area.roads();
  for (const std::int64_t id : {1, 2, 3, 4, 5})
    CHECK(roads.nodes[roads.find_node(id).index()].osm_id == id);
  CHECK_FALSE(roads.find_node(0).known());
  CHECK_FALSE(roads.find_node(6).known());
  CHECK(roads.id_of(roads.pieces_of_way(10).front()) == PieceId{5});
  CHECK(roads.id_of(roads.pieces_of_way(11).front()) == PieceId{0});
  CHECK(roads.pieces_of_way(10).size() == 2);
  CHECK(whole_way(roads.pieces, PieceId{6}).data() == roads.pieces_of_way(10).data());
  CHECK(whole_way(roads.pieces, PieceId{3}).size() == 3);
  CHECK(roads.pieces_of_way(9).empty());
  CHECK(roads.pieces_of_way(14).empty());
}

TEST_CASE("the next way of a drive is found at the end of the stretch before, or wherever it is",
          "[road]") {
  test::SmallArea area;
  area.tables.node_first = {0, 1, 3, 4, 4, 4};  // 1: east; 2: east and north; 3: east
  area.tables.node_out = {along(0), along(1), along(2), along(4)};
  const Roads roads = area.roads();
  CHECK(pieces_of_next_way(roads, along(0), 11).data() == &roads.pieces[2]);
  CHECK(pieces_of_next_way(roads, along(0), 10).size() == 2);
  CHECK(pieces_of_next_way(roads, along(0), 13).size() == 3);
  CHECK(pieces_of_next_way(roads, {}, 12).size() == 1);
  CHECK(pieces_of_next_way(roads, along(0), 14).empty());
}

TEST_CASE("the pieces of a way come in its order", "[road]") {
  const test::SmallArea area;
  const Roads roads = area.roads();
  REQUIRE(roads.pieces_of_way(10).size() == 2);
  CHECK(roads.id_of(roads.pieces_of_way(10)[0]) == PieceId{0});
  CHECK(roads.pieces_of_way(10)[1].from_index == 2);
  CHECK(roads.pieces_of_way(13).size() == 3);
  CHECK(roads.pieces_of_way(9).empty());
  CHECK(roads.pieces_of_way(14).empty());
}

TEST_CASE("driven the other way a road has its ends swapped", "[road]") {
  const test::SmallArea area;
  const Roads roads = area.roads();
  CHECK(roads.from_node(along(1)) == roads.find_node(2));
  CHECK(roads.to_node(along(1)) == roads.find_node(3));
  CHECK(roads.from_node(against(1)) == roads.find_node(3));
  CHECK(roads.to_node(against(1)) == roads.find_node(2));
  CHECK(along(1).back() == against(1));
  CHECK(against(1).back() == along(1));
}

TEST_CASE("a state after the stretches is a copy of the stretch it stands for", "[road]") {
  test::SmallArea area;
  area.tables.copies = {against(2)};
  const Roads roads = area.roads();
  CHECK(roads.state_count() == 15);
  CHECK(roads.stretch_of(StateId{3}) == against(1));
  CHECK(roads.stretch_of(StateId{14}) == against(2));
}

TEST_CASE("chances and run facts are found by their stretch", "[road]") {
  test::SmallArea area;
  for (const std::size_t piece : {0U, 1U, 1U, 3U}) {
    Chance chance;
    chance.entry = along(piece);
    area.tables.chances.push_back(chance);
    RunFact run;
    run.stretch = against(piece);
    area.tables.run_facts.push_back(run);
  }
  const Roads roads = area.roads();
  CHECK(roads.chances_from(along(0)).size() == 1);
  CHECK(roads.chances_from(along(1)).size() == 2);
  CHECK(roads.chances_from(along(1)).data() == &roads.chances[1]);
  CHECK(roads.chances_from(along(2)).empty());
  CHECK(roads.run_facts_of(against(1)).size() == 2);
  CHECK(roads.run_facts_of(along(1)).empty());
}

TEST_CASE("bus lanes are found by their piece", "[road]") {
  test::SmallArea area;
  for (const std::size_t piece : {1U, 4U, 4U}) {
    BusLane lane;
    lane.piece = PieceId{piece};
    area.tables.bus_lanes.push_back(lane);
  }
  const Roads roads = area.roads();
  CHECK(roads.bus_lanes_of(PieceId{4}).size() == 2);
  CHECK(roads.bus_lanes_of(PieceId{0}).empty());
  CHECK(roads.bus_lanes_of(PieceId{5}).empty());
}

TEST_CASE("rules with hours are found by their stretch", "[road]") {
  test::SmallArea area;
  for (const StretchId stretch : {along(1), against(1), against(1)}) {
    TimedRule rule;
    rule.stretch = stretch;
    area.tables.timed_rules.push_back(rule);
  }
  const Roads roads = area.roads();
  CHECK(roads.timed_rules_of(along(1)).size() == 1);
  CHECK(roads.timed_rules_of(against(1)).size() == 2);
  CHECK(roads.timed_rules_of(along(0)).empty());
}

TEST_CASE("texts are cut out of one string", "[road]") {
  test::SmallArea area;
  const std::string_view bytes = "Mill StreetA48";
  area.tables.text_first = {0, 0, 11, 14};
  area.tables.text_bytes.assign(bytes.begin(), bytes.end());
  const Roads roads = area.roads();
  CHECK(roads.text(TextId{0}).empty());
  CHECK(roads.text(TextId{1}) == "Mill Street");
  CHECK(roads.text(TextId{2}) == "A48");
}

TEST_CASE("a view shows every column of the tables", "[road]") {
  Tables tables;
  for_each_column(tables, [](std::string_view, auto& column) { column.resize(3); });
  const Roads roads = view_of(tables, {});
  std::set<std::string> names;
  for_each_column(roads, [&](std::string_view column_name, const auto& column) {
    INFO(column_name);
    CHECK(column.size() == 3);
    names.emplace(column_name);
  });
  // Every column has three rows, so a column that for_each_column forgets is empty in the view.
  CHECK(names.size() == 34);
  CHECK(sizeof(Columns<View>) == names.size() * sizeof(View<char>));
}

TEST_CASE("a road's bearings are those of its first and last metres", "[road]") {
  const test::SmallArea area;
  const Roads roads = area.roads();
  CHECK(bearing_out_deg(roads, along(0)) == Approx(90).margin(0.01));
  CHECK(bearing_in_deg(roads, along(0)) == Approx(90).margin(0.01));
  CHECK(bearing_out_deg(roads, against(0)) == Approx(270).margin(0.01));
  // Way 11 leaves to the north and arrives eastwards.
  CHECK(bearing_out_deg(roads, along(2)) == Approx(0).margin(0.01));
  CHECK(bearing_in_deg(roads, along(2)) == Approx(90).margin(0.01));
  CHECK(bearing_out_deg(roads, against(2)) == Approx(270).margin(0.01));
  CHECK(bearing_in_deg(roads, against(2)) == Approx(180).margin(0.01));
}

TEST_CASE("bearings measured once are those measured one by one, to the last bit", "[road]") {
  const test::SmallArea area;
  const Roads roads = area.roads();
  CHECK(Bearings().empty());
  const Bearings bearings(roads);
  REQUIRE_FALSE(bearings.empty());
  for (std::size_t row = 0; row < roads.stretch_count(); ++row) {
    const StretchId stretch{row};
    CHECK(bearings.out_deg(stretch) == bearing_out_deg(roads, stretch));
    CHECK(bearings.in_deg(stretch) == bearing_in_deg(roads, stretch));
  }
}

TEST_CASE("a kink in a road's first metres doesn't turn its bearing", "[road]") {
  test::SmallArea area;
  // 2 m to the north, then 65 m to the east: over 15 m that is about 83 degrees, not 0.
  area.tables.shape[1] = point_from_degrees(54.300018, 2.60);
  const double bearing = bearing_out_deg(area.roads(), along(0));
  CHECK(bearing > 75);
  CHECK(bearing < 90);
}

TEST_CASE("a road shorter than 15 m has one bearing", "[road]") {
  test::SmallArea area;
  area.tables.shape[3] = point_from_degrees(54.30, 2.60);
  area.tables.shape[4] = point_from_degrees(54.30005, 2.60);
  CHECK(bearing_out_deg(area.roads(), along(1)) == Approx(0).margin(1e-6));
  CHECK(bearing_in_deg(area.roads(), along(1)) == Approx(0).margin(1e-6));
  area.tables.shape[4] = area.tables.shape[3];
  CHECK(bearing_out_deg(area.roads(), along(1)) == 0);
}

}  // namespace
}  // namespace loopwright::road
