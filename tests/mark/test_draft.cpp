#include <array>
#include <catch2/catch.hpp>

#include "loopwright/mark/draft.hpp"
#include "support/drawn_town.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;

road::AreaInfo england() {
  road::AreaInfo info;
  info.region = *find_region("GB-ENG");
  return info;
}

/// A draft with two nodes and one piece, made by hand.
struct SmallDraft {
  RawMap raw = test::draw_town(R"(
      A   B
    w7 AB highway=residential name=Mill_Orchard
    nB  highway=stop
  )");
  road::Report report;
  Draft draft{raw, england(), report};

  SmallDraft() {
    draft.tables.nodes.resize(2);
    draft.tables.nodes[0].osm_id = test::osm_node('A');
    draft.tables.nodes[1].osm_id = test::osm_node('B');
    draft.tables.pieces.resize(1);
    draft.tables.pieces[0].way = 7;
    draft.tables.stretches.resize(2);
  }
};

TEST_CASE("a new draft knows only the empty text, in row 0", "[mark]") {
  SmallDraft s;
  CHECK(s.draft.text("").index() == 0);
  CHECK(s.draft.text(TextId{}).empty());
  CHECK(s.draft.tables.text_bytes.empty());
}

TEST_CASE("a text said twice is kept once", "[mark]") {
  SmallDraft s;
  const TextId lane = s.draft.text("Mill Orchard");
  CHECK(s.draft.text("Mill") != lane);
  CHECK(s.draft.text("Mill Orchard") == lane);
  CHECK(s.draft.text(lane) == "Mill Orchard");
  CHECK(s.draft.tables.text_bytes.size() == 16);
}

TEST_CASE("tags of ways and nodes are found from rows of the graph", "[mark]") {
  SmallDraft s;
  CHECK(s.draft.way(PieceId{0U}).id == 7);
  CHECK(s.draft.way_tags(PieceId{0U}).is("name", "Mill Orchard"));
  CHECK(s.draft.node_tags(NodeId{1U}).is("highway", "stop"));
  CHECK(s.draft.node_tags(NodeId{0U}).empty());
}

TEST_CASE("a place is found at its nodes, by its kind or a wider one", "[mark]") {
  SmallDraft s;
  const NodeId a{0U}, b{1U};
  road::Place crossing, ring;
  crossing.kind = Kind::level_crossing;
  ring.kind = Kind::signal_roundabout;
  const PlaceId first = s.draft.add_place(crossing, std::array{a}, {});
  const PlaceId second = s.draft.add_place(ring, std::array{a, b}, std::array{PieceId{0U}});
  CHECK(s.draft.place_at(a, Kind::level_crossing) == first);
  CHECK(s.draft.place_at(a, Kind::roundabout) == second);
  CHECK_FALSE(s.draft.place_at(b, Kind::level_crossing).known());
  CHECK(s.draft.is_controlled(b));
  CHECK(s.draft.tables.place_node_first == std::vector<std::uint32_t>{0, 1, 3});
  CHECK(s.draft.tables.place_piece_first == std::vector<std::uint32_t>{0, 0, 1});
}

TEST_CASE("a level crossing alone doesn't control a junction", "[mark]") {
  SmallDraft s;
  road::Place crossing;
  crossing.kind = Kind::level_crossing;
  s.draft.add_place(crossing, std::array{NodeId{0U}}, {});
  CHECK_FALSE(s.draft.is_controlled(NodeId{0U}));
}

TEST_CASE("chances come out by entry, each with its own path", "[mark]") {
  SmallDraft s;
  const StretchId along{0U}, against{1U};
  road::Chance late, early;
  late.place = early.place = PlaceId{0U};
  late.entry = late.exit = against;
  early.entry = along, early.exit = against;
  s.draft.add_chance(late, std::array{against});
  s.draft.add_chance(early, std::array{along, against});
  s.draft.finish();
  const road::Roads roads = s.draft.roads();
  REQUIRE(roads.chances.size() == 2);
  CHECK(roads.chances[0].entry == along);
  REQUIRE(roads.path_of(roads.chances[0]).size() == 2);
  CHECK(roads.path_of(roads.chances[0])[1] == against);
  REQUIRE(roads.path_of(roads.chances[1]).size() == 1);
  CHECK(roads.path_of(roads.chances[1])[0] == against);
}

TEST_CASE("rules with hours come out by stretch, then by what they are about", "[mark]") {
  SmallDraft s;
  const auto add = [&](std::size_t stretch, road::Timed about) {
    road::TimedRule rule;
    rule.stretch = StretchId{stretch};
    rule.about = about;
    s.draft.tables.timed_rules.push_back(rule);
  };
  add(1, road::Timed::access), add(0, road::Timed::gate), add(0, road::Timed::limit);
  s.draft.finish();
  const auto& rules = s.draft.tables.timed_rules;
  CHECK(rules[0].about == road::Timed::limit);
  CHECK(rules[1].about == road::Timed::gate);
  CHECK(rules[2].stretch == StretchId{1U});
}

TEST_CASE("a run fact sets the bit of its kind on its stretch", "[mark]") {
  SmallDraft s;
  road::RunFact fact;
  fact.stretch = StretchId{1U};
  fact.kind = Kind::one_way;
  s.draft.add_run_fact(fact);
  CHECK(s.draft.tables.stretches[1].runs == road::bit(Kind::one_way));
  CHECK(s.draft.tables.stretches[0].runs == 0);
}

}  // namespace
}  // namespace loopwright::mark
