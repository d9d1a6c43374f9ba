// What each turn makes a driver deal with, in this order; the first that applies counts.
//
// 1. Back on itself: turn round.
// 2. Into a roundabout or over a mini: its control. On the ring and out of it: none, the wait was at
//    the entry.
// 3. At a signalled junction: signals, once, at the first light that faces the driver; inside it
//    nothing more.
// 4. Onto a level crossing or over a signal crossing, once for all its nodes.
// 5. At a junction of three or more roads: stop or give way, near side or far side, by who gives way
//    (priority.cpp); across when turning off over oncoming traffic; else priority. Between equal
//    roads the angle decides, and going ahead counts as far side when four or more meet.
// 6. A zebra, then a gate that may be passed.
// Copies of states (they remember turn bans) get the controls of the turns they copy.
#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>

#include "approach.hpp"
#include "arms.hpp"
#include "facing.hpp"
#include "loopwright/base/in_parts.hpp"
#include "loopwright/mark/rules.hpp"
#include "passing.hpp"
#include "priority.hpp"

namespace loopwright::mark {
namespace {

using road::Control;
using road::Kind;
using road::Movement;

Control control_of(Kind kind) {
  switch (kind) {
    case Kind::mini_roundabout:
    case Kind::double_mini:
      return Control::mini_roundabout;
    case Kind::multi_lane_roundabout:
      return Control::multi_lane_roundabout;
    case Kind::signal_roundabout:
      return Control::signal_roundabout;
    case Kind::level_crossing:
      return Control::level_crossing;
    case Kind::signal_crossing:
      return Control::signal_crossing;
    case Kind::zebra:
      return Control::zebra;
    default:
      return Control::roundabout;
  }
}

bool is_gate(const Tags& tags) {
  constexpr std::array<std::string_view, 6> gates = {
      "gate", "lift_gate", "swing_gate", "sliding_gate", "toll_booth", "border_control"};
  return std::ranges::find(gates, tags.get("barrier")) != gates.end();
}

/// One node and the turns over it.
class NodeControls {
 public:
  NodeControls(const Draft& draft, const road::Roads& roads, NodeId node)
      : draft_(draft), roads_(roads), node_(node) {
    if (road_ends(roads, node) < 3) return;
    arms_ = arms_at(draft, roads, node);
    rules_ = priorities(draft, roads, node, arms_);
  }

  Control at(StretchId from, const road::Turn& turn) const {
    const StretchId to = roads_.stretch_of(turn.to);
    if (to == from.back()) return Control::turn_round;
    if (const auto control = at_ring(from)) return *control;
    if (const auto control = at_lights(from)) return *control;
    for (const Kind kind : {Kind::level_crossing, Kind::signal_crossing}) {
      const PlaceId place = draft_.place_at(node_, kind);
      if (place.known()) return is_inside(place, from) ? Control::none : control_of(kind);
    }
    const Control control = by_priority(from, to, turn_movement(turn.angle_deg));
    if (control != Control::none && control != Control::priority) return control;
    if (draft_.place_at(node_, Kind::zebra).known()) return Control::zebra;
    return is_gate(draft_.node_tags(node_)) ? Control::barrier : control;
  }

 private:
  [[nodiscard]] bool is_inside(PlaceId place, StretchId s) const {
    const auto& tables = draft_.tables;
    const auto begin = tables.place_pieces.begin() + tables.place_piece_first[place.index()];
    const auto end = tables.place_pieces.begin() + tables.place_piece_first[place.index() + 1];
    return std::find(begin, end, s.piece()) != end;
  }

  [[nodiscard]] std::optional<Control> at_ring(StretchId from) const {
    for (const Kind kind : {Kind::roundabout, Kind::mini_roundabout}) {
      const PlaceId place = draft_.place_at(node_, kind);
      if (!place.known()) continue;
      return is_inside(place, from) ? Control::none
                                    : control_of(draft_.tables.places[place.index()].kind);
    }
    return std::nullopt;
  }

  [[nodiscard]] bool light_holds(StretchId arriving) const {
    constexpr std::uint32_t lights = road::node_flag::signals | road::node_flag::signal_crossing;
    const std::uint32_t flags = roads_.nodes[roads_.to_node(arriving).index()].flags;
    return (flags & lights) != 0 && faces(draft_, roads_, arriving, Sign::light);
  }

  [[nodiscard]] std::optional<Control> at_lights(StretchId from) const {
    const PlaceId place = draft_.place_at(node_, Kind::signals);
    if (!place.known()) return std::nullopt;
    const bool inside = is_inside(place, from);
    if (light_holds(from) && !(inside && held_before(place, from))) return Control::signals;
    return inside ? std::optional(Control::none) : std::nullopt;
  }

  /// True when a light holds those who come by an inside stretch before they are on it.
  [[nodiscard]] bool held_before(PlaceId place, StretchId from) const {
    std::set<StretchId> seen = {from};
    std::vector<StretchId> open = {from};
    while (!open.empty()) {
      const StretchId s = open.back();
      open.pop_back();
      for (const StretchId away : roads_.leaving(roads_.from_node(s))) {
        const StretchId before = away.back();
        if (away == s || !roads_.drivable(before)) continue;
        if (light_holds(before)) return true;
        if (is_inside(place, before) && seen.insert(before).second) open.push_back(before);
      }
    }
    return false;
  }

  [[nodiscard]] std::size_t arm_of(StretchId s) const {
    const auto holds = [s](const JunctionArm& arm) {
      return std::ranges::any_of(
          arm.parts, [s](const ArmPart& part) { return part.away.piece() == s.piece(); });
    };
    return static_cast<std::size_t>(std::ranges::find_if(arms_, holds) - arms_.begin());
  }

  [[nodiscard]] Control by_priority(StretchId from, StretchId to, Movement movement) const {
    if (arms_.size() < 3) return Control::none;
    const std::size_t a = arm_of(from);
    const std::size_t b = arm_of(to);
    if (a == b) return Control::none;
    const bool near = movement == (draft_.side() == Side::left ? Movement::left : Movement::right);
    const bool merges = movement == Movement::ahead && arms_.size() == 3;
    switch (rules_[a].yield) {
      case Yield::stops:
        return near || merges ? Control::stop_near : Control::stop_far;
      case Yield::gives_way:
        return near || merges ? Control::give_way_near : Control::give_way_far;
      case Yield::unknown:
        if (merges) return Control::priority;
        return near ? Control::give_way_near : Control::give_way_far;
      case Yield::keeps:
        break;
    }
    const bool far = !near && movement != Movement::ahead;
    return far && rules_[b].yields() && has_oncoming(a, b) ? Control::across : Control::priority;
  }

  /// True when another arm's traffic keeps priority and comes towards a driver who turns off.
  [[nodiscard]] bool has_oncoming(std::size_t from, std::size_t to) const {
    for (std::size_t i = 0; i < arms_.size(); ++i) {
      if (i != from && i != to && arms_[i].can_enter() && !rules_[i].yields()) return true;
    }
    return false;
  }

  const Draft& draft_;
  const road::Roads& roads_;
  NodeId node_;
  std::vector<JunctionArm> arms_;
  std::vector<ArmRule> rules_;
};

std::multimap<NodeId, StateId> copies_by_end(const road::Roads& roads) {
  std::multimap<NodeId, StateId> copies;
  for (std::size_t s = roads.stretch_count(); s < roads.state_count(); ++s) {
    copies.emplace(roads.to_node(roads.stretch_of(StateId{s})), StateId{s});
  }
  return copies;
}

void set_controls(Draft& draft, const road::Roads& roads, const NodeControls& controls,
                  StateId state) {
  const StretchId from = roads.stretch_of(state);
  const std::uint32_t end = draft.tables.turn_first[state.index() + 1];
  for (std::uint32_t row = draft.tables.turn_first[state.index()]; row < end; ++row) {
    draft.tables.turns[row].control = controls.at(from, draft.tables.turns[row]);
  }
}

}  // namespace

void mark_controls(Draft& draft, const road::Roads& graph) {
  const auto copies = copies_by_end(graph);
  // Each turn is of one node: two threads never write the same.
  in_parts(graph.nodes.size(), [&](std::size_t first, std::size_t last) {
    for (std::size_t row = first; row < last; ++row) {
      const NodeId node{row};
      const NodeControls controls(draft, graph, node);
      for (const StretchId away : graph.leaving(node)) {
        set_controls(draft, graph, controls, StateId{away.back().index()});
      }
      const auto [begin, end] = copies.equal_range(node);
      for (auto copy = begin; copy != end; ++copy)
        set_controls(draft, graph, controls, copy->second);
    }
  });
}

}  // namespace loopwright::mark
