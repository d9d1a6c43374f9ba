// 1. From a stretch one may go on to every drivable stretch that leaves its end node,
//    - except back on itself, which is allowed at dead ends only (DEVELOPERS.md: no U-turns elsewhere);
//    - and at a wall back on itself is the only way;
//    - nor from one half of a divided road into its other half where the two meet: that is a U-turn
//      round the tip of the island, which no map forbids and no lesson makes. A hairpin of one
//      way is its own next piece and stays;
//    - nor back over the same nodes by another way: two ways drawn over one line are one road.
// 2. Turn rules over a node (two stretches) are a sorted list of banned pairs and one of musts.
//    Those with a condition bind only at some hours: they ban nothing here.
// 3. Rules over ways are asked of the memory; it also tells which copy of the next stretch one is
//    then on.
// 4. The angle is the change of heading between the last metres of one and the first of the next.
#include "turn_table.hpp"

#include <algorithm>
#include <cmath>
#include <utility>
#include "loopwright/base/equal_rows.hpp"

namespace loopwright::read {
namespace {

// A change of heading that only turning round makes, between halves of one road. The halves of a
// splitter island part at 10 to 40 degrees, so this turn is 140 to 170; a crossing of two carriageways
// that bear the same name has turns near 90. Ours.
constexpr double round_an_island_deg = 120;

using Pairs = std::vector<std::pair<StretchId, StretchId>>;

class TurnLayer {
 public:
  TurnLayer(mark::Draft& draft, const ViaMemory& memory);
  void lay_out();

 private:
  [[nodiscard]] bool may_turn(StretchId from, StretchId to) const;
  [[nodiscard]] bool rules_allow(StretchId from, StretchId to) const;
  [[nodiscard]] bool round_an_island(StretchId from, StretchId to) const;
  [[nodiscard]] bool back_over_its_line(StretchId from, StretchId to) const;
  [[nodiscard]] road::Turn turn(StateId from, StretchId to) const;

  /// Change of heading from the last metres of one to the first of the other, of bearings as exact as a float.
  [[nodiscard]] double change_deg(StretchId from, StretchId to) const {
    return heading_change_deg(static_cast<float>(draft_.bearing_in_deg(from)),
                              static_cast<float>(draft_.bearing_out_deg(to)));
  }

  const mark::Draft& draft_;
  road::Tables& tables_;
  road::Roads roads_;
  const ViaMemory& memory_;
  Pairs banned_, musts_;
};

TurnLayer::TurnLayer(mark::Draft& draft, const ViaMemory& memory)
    : draft_(draft), tables_(draft.tables), roads_(draft.roads()), memory_(memory) {
  for (const road::TurnRule& rule : roads_.turn_rules) {
    if (rule.path_count != 2 || !roads_.text(rule.condition).empty()) continue;
    const auto path = roads_.path_of(rule);
    (rule.only != 0 ? musts_ : banned_).emplace_back(path[0], path[1]);
  }
  std::ranges::sort(banned_);
  std::ranges::sort(musts_);
}

bool TurnLayer::rules_allow(StretchId from, StretchId to) const {
  if (std::ranges::binary_search(banned_, std::pair(from, to))) return false;
  const auto must = equal_rows(musts_, from, &Pairs::value_type::first);
  return std::ranges::all_of(must, [to](const auto& pair) { return pair.second == to; });
}

bool TurnLayer::round_an_island(StretchId from, StretchId to) const {
  const road::Piece &here = roads_.piece(from), &there = roads_.piece(to);
  const bool one_road =
      here.name == there.name && here.ref == there.ref && here.road_class == there.road_class;
  const bool halves = !roads_.drivable(from.back()) && !roads_.drivable(to.back());
  return one_road && halves && here.way != there.way &&
         std::abs(change_deg(from, to)) > round_an_island_deg;
}

/// The point of a stretch next to its begin, or next to its end.
Point next_to(const road::Roads& roads, StretchId stretch, bool at_begin) {
  const std::span<const Point> shape = roads.shape_of(stretch.piece());
  return at_begin != stretch.against() ? shape[1] : shape[shape.size() - 2];
}

bool TurnLayer::back_over_its_line(StretchId from, StretchId to) const {
  return to != from.back() && next_to(roads_, from, false) == next_to(roads_, to, true);
}

bool TurnLayer::may_turn(StretchId from, StretchId to) const {
  if (!roads_.drivable(to)) return false;
  const std::uint32_t flags = roads_.nodes[roads_.to_node(from).index()].flags;
  const bool back = to == from.back();
  if (back && (flags & road::node_flag::dead_end) == 0) return false;
  if (!back && (flags & road::node_flag::wall) != 0) return false;
  if (round_an_island(from, to) || back_over_its_line(from, to)) return false;
  return rules_allow(from, to);
}

road::Turn TurnLayer::turn(StateId from, StretchId to) const {
  const StretchId before = roads_.stretch_of(from);
  road::Turn turn;
  turn.to = memory_.next(from, to);
  const double change = to == before.back() ? 180.0 : change_deg(before, to);
  turn.angle_deg = static_cast<std::int16_t>(std::lround(change));
  return turn;
}

void TurnLayer::lay_out() {
  const std::size_t states = roads_.state_count();
  std::vector<road::Turn> turns;
  std::vector<std::uint32_t> first{0};
  first.reserve(states + 1);
  for (std::size_t s = 0; s < states; ++s) {
    const StateId state{s};
    const StretchId stretch = roads_.stretch_of(state);
    if (roads_.drivable(stretch)) {
      for (const StretchId to : roads_.leaving(roads_.to_node(stretch))) {
        if (may_turn(stretch, to) && memory_.allows(state, to)) turns.push_back(turn(state, to));
      }
    }
    first.push_back(static_cast<std::uint32_t>(turns.size()));
  }
  tables_.turns = std::move(turns);
  tables_.turn_first = std::move(first);
}

}  // namespace

void lay_out_turns(mark::Draft& draft, const ViaMemory& memory) {
  TurnLayer(draft, memory).lay_out();
}

}  // namespace loopwright::read
