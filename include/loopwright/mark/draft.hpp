// The road graph while rules add to it: what they may read, and where they put what they find.
//
//   mark_roundabouts(draft);   // appends places, arms and chances to draft.tables
//
// When a marking rule runs, these columns are done: nodes, pieces, stretches, shape, node_first,
// node_out, copies, turn_first, turns (controls not yet), turn_rules. Rules append places, arms,
// chances, run facts through the functions below; `finish` sorts them into the form Roads promises.
// Rules: a rule that finds a contradiction adds an Oddity with the object's id.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "loopwright/mark/heights.hpp"
#include "loopwright/mark/raw_map.hpp"
#include "loopwright/road/report.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

class Draft {
 public:
  Draft(const RawMap& raw, road::AreaInfo info, road::Report& report);

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
  std::unordered_map<std::string, TextId> texts_;
  std::vector<std::vector<StretchId>> paths_;  // of chances, in the order added
  std::unordered_multimap<std::uint32_t, PlaceId> places_by_node_;
};

/// Left, ahead, right or round by the change of heading between entry and exit: ahead within 45
/// degrees, round beyond 160 (rings and minis). Rules: -180 to 180, positive to the right.
road::Movement movement_of(double heading_change_deg);

}  // namespace loopwright::mark
