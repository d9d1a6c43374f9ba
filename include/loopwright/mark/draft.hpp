// The road graph while rules add to it: what they may read, and where they put what they find.
//
//   mark_roundabouts(draft);   // appends places, arms and chances to draft.tables
//
// When a marking rule runs, these columns are done: nodes, pieces, stretches, shape, node_first,
// node_out, copies, turn_first, turns (controls not yet), turn_rules. Rules append places, arms,
// chances, run facts through the functions below; `finish` sorts them into the form Roads promises.
// Rules: a rule that finds a contradiction adds an Oddity with the object's id.
#pragma once

#include <cstdint>
#include <functional>
#include <span>
#include <string>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "loopwright/mark/heights.hpp"
#include "loopwright/mark/raw_map.hpp"
#include "loopwright/road/bearings.hpp"
#include "loopwright/road/report.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

class Draft {
 public:
  Draft(const RawMap& raw, road::AreaInfo info, road::Report& report);
  Draft(const Draft&) = delete;  // its texts are found by where they stand in its own tables
  Draft& operator=(const Draft&) = delete;

  const RawMap& raw;
  road::AreaInfo info;
  road::LimitLaw law;  ///< of the region, knowing the age of the map
  road::Report& report;
  HeightSource heights;  ///< of the ground; empty when no elevation grid is given
  road::Tables tables;

  /// Row of a text, added when new. Row 0 is the empty text.
  TextId text(std::string_view text);
  /// The same text back.
  [[nodiscard]] std::string_view text(TextId id) const;

  /// Remembers which object of the raw map each node and piece is, so that nobody searches for it
  /// again. Once, when all of them are there; without it everything below works, but slowly.
  void learn_rows();

  /// Measures the bearings at the ends of all stretches, so that nobody measures one again: when pieces and shapes are
  /// done. Without it everything below works, but slowly.
  void learn_bearings() { bearings_ = road::Bearings(roads()); }
  /// Gives back their room when the rules that ask for many are done.
  void forget_bearings() { bearings_ = {}; }
  /// road::bearing_out_deg and road::bearing_in_deg.
  [[nodiscard]] double bearing_out_deg(StretchId stretch) const {
    return bearings_.empty() ? road::bearing_out_deg(roads(), stretch) : bearings_.out_deg(stretch);
  }
  [[nodiscard]] double bearing_in_deg(StretchId stretch) const {
    return bearings_.empty() ? road::bearing_in_deg(roads(), stretch) : bearings_.in_deg(stretch);
  }

  /// The whole OSM way a piece is part of.
  [[nodiscard]] const RawWay& way(PieceId piece) const;
  [[nodiscard]] const Tags& way_tags(PieceId piece) const;
  [[nodiscard]] const Tags& node_tags(NodeId node) const;
  [[nodiscard]] Side side() const { return info.region.side; }

  /// The graph so far, for the helpers of road (bearings, leaving …). Valid until tables change.
  [[nodiscard]] road::Roads roads() const;

  PlaceId add_place(const road::Place& place, std::span<const NodeId> nodes,
                    std::span<const PieceId> inside);
  void add_chance(road::Chance chance, std::span<const StretchId> path);
  void add_run_fact(const road::RunFact& fact);

  /// The junction-like place of a kind at a node; none when there is none. (Several kinds may
  /// share a node: a level crossing with lights.)
  [[nodiscard]] PlaceId place_at(NodeId node, road::Kind kind) const;
  /// True when the node belongs to a roundabout, mini or signalled junction.
  [[nodiscard]] bool is_controlled(NodeId node) const;

  /// Sorts chances, run facts, bus lanes and rules with hours; lays out the paths. Call once, last.
  void finish();

 private:
  /// Texts by what they say; only their rows are kept, the letters stand in the tables.
  struct TextHash {
    using is_transparent = void;
    const Draft* draft;
    std::size_t operator()(std::string_view text) const {
      return std::hash<std::string_view>{}(text);
    }
    std::size_t operator()(TextId id) const { return (*this)(draft->text(id)); }
  };
  struct SameText {
    using is_transparent = void;
    const Draft* draft;
    bool operator()(TextId a, TextId b) const { return a == b; }
    bool operator()(TextId a, std::string_view b) const { return draft->text(a) == b; }
    bool operator()(std::string_view a, TextId b) const { return a == draft->text(b); }
  };
  /// A place at a node, and where the next of that node stands.
  struct PlaceAtNode {
    PlaceId place;
    std::uint32_t next = 0;  ///< row + 1; 0: none
  };
  template <class F>
  void each_place_at(NodeId node, F&& f) const {
    if (node.value >= first_place_.size()) return;
    for (std::uint32_t at = first_place_[node.value]; at != 0; at = places_at_[at - 1].next)
      f(places_at_[at - 1].place);
  }

  std::unordered_set<TextId, TextHash, SameText> texts_;
  std::vector<std::vector<StretchId>> paths_;  // of chances, in the order added
  std::vector<std::uint32_t> first_place_;     // by node: row in places_at_ + 1; 0: none
  std::vector<PlaceAtNode> places_at_;
  road::Bearings bearings_;
  std::vector<std::uint32_t> way_rows_;       // by piece: row in raw.ways
  std::vector<std::uint32_t> node_tag_rows_;  // by node: row in raw.node_tags + 1; 0: no tags
};

/// Left, ahead, right or round by the change of heading between entry and exit: ahead within 45
/// degrees, round beyond 160 (rings and minis). Rules: -180 to 180, positive to the right.
road::Movement movement_of(double heading_change_deg);

}  // namespace loopwright::mark
