// 1. A give way or stop sign on an arm, within 40 m and before any other junction, that faces the
//    junction: certain. Arms without one then keep priority.
// 2. No sign: with three arms the one of lower class than both others gives way; else, when two of
//    the same class run straight through (within 35 degrees), the third does. With more arms, when
//    exactly two are of the best class, the others do. All inferred: most British give way lines
//    are not mapped (seen on real maps: Newport has 5 give-way nodes).
// 3. Otherwise nobody can tell: equal roads.
#include "priority.hpp"

#include <algorithm>
#include <cmath>

#include "approach.hpp"
#include "facing.hpp"
#include "passing.hpp"

namespace loopwright::mark {
namespace {

constexpr double sign_within_m = 40;
constexpr double straight_within_deg = 35;

using Rules = std::vector<ArmRule>;

const road::Piece& piece_of(const road::Roads& roads, const JunctionArm& arm) {
  return roads.piece(arm.parts.front().away);
}

std::string class_tag(road::RoadClass road_class) {
  return "highway=" + std::string(road::name(road_class));
}

std::optional<ArmRule> sign_on(const Draft& draft, const road::Roads& roads,
                               const JunctionArm& arm) {
  constexpr std::uint32_t signs = road::node_flag::give_way | road::node_flag::stop;
  for (const ArmPart& part : arm.parts) {
    if (!part.in) continue;
    for (const Met& met : met_before(roads, part.away, sign_within_m, signs)) {
      const bool stop = (roads.nodes[met.node.index()].flags & road::node_flag::stop) != 0;
      if (!faces(draft, roads, met.arriving, stop ? Sign::stop : Sign::give_way)) continue;
      return ArmRule{stop ? Yield::stops : Yield::gives_way,
                     road::Confidence::certain,
                     stop ? Telling::stop_sign : Telling::give_way_sign,
                     {},
                     {},
                     node_object(roads, met.node)};
    }
  }
  return std::nullopt;
}

bool apply_signs(const Draft& draft, const road::Roads& roads, const std::vector<JunctionArm>& arms,
                 Rules& rules) {
  bool any = false;
  for (std::size_t i = 0; i < arms.size(); ++i) {
    if (auto rule = sign_on(draft, roads, arms[i])) rules[i] = *rule, any = true;
  }
  for (ArmRule& rule : rules) {
    if (any && !rule.yields())
      rule.yield = Yield::keeps, rule.confidence = road::Confidence::certain;
  }
  return any;
}

/// Lets the arms of a class below the best one, which exactly two have, give way.
bool apply_classes(const road::Roads& roads, NodeId node, const std::vector<JunctionArm>& arms,
                   Rules& rules) {
  std::vector<int> ranks;
  for (const JunctionArm& arm : arms) ranks.push_back(rank(piece_of(roads, arm).road_class));
  std::vector<int> sorted = ranks;
  std::ranges::sort(sorted);
  // Of three arms the last must be below both others, which may differ; of more, two are best.
  const int best = sorted[1];
  if (sorted[2] <= best || (arms.size() > 3 && sorted[0] != best)) return false;
  const auto major = std::ranges::find(ranks, sorted[0]) - ranks.begin();
  for (std::size_t i = 0; i < arms.size(); ++i) {
    if (ranks[i] <= best) {
      rules[i].yield = Yield::keeps;
      continue;
    }
    rules[i] = {Yield::gives_way,
                road::Confidence::inferred,
                Telling::better_road,
                piece_of(roads, arms[i]).road_class,
                piece_of(roads, arms[static_cast<std::size_t>(major)]).road_class,
                node_object(roads, node)};
  }
  return true;
}

/// Of three arms, the one that the other two, running straight through, leave over.
std::optional<std::size_t> beside_straight_road(const Draft& draft, const road::Roads& roads,
                                                const std::vector<JunctionArm>& arms) {
  std::optional<std::size_t> best;
  double least = straight_within_deg;
  for (std::size_t stem = 0; stem < 3; ++stem) {
    const JunctionArm& a = arms[(stem + 1) % 3];
    const JunctionArm& b = arms[(stem + 2) % 3];
    if (rank(piece_of(roads, a).road_class) != rank(piece_of(roads, b).road_class)) continue;
    const double into = draft.bearing_out_deg(a.parts.front().away) + 180;
    const double out = draft.bearing_out_deg(b.parts.front().away);
    const double bend = std::abs(heading_change_deg(into, out));
    if (bend <= least) best = stem, least = bend;
  }
  return best;
}

void apply_shape(const Draft& draft, const road::Roads& roads, NodeId node,
                 const std::vector<JunctionArm>& arms, Rules& rules) {
  const auto stem = beside_straight_road(draft, roads, arms);
  if (!stem) return;
  for (ArmRule& rule : rules) rule.yield = Yield::keeps;
  rules[*stem] = {Yield::gives_way,
                  road::Confidence::inferred,
                  Telling::straight_road,
                  piece_of(roads, arms[*stem]).road_class,
                  {},
                  node_object(roads, node)};
}

}  // namespace

std::string ArmRule::tag() const {
  switch (telling) {
    case Telling::stop_sign:
      return "highway=stop";
    case Telling::give_way_sign:
      return "highway=give_way";
    case Telling::better_road:
      return class_tag(own) + " meets " + class_tag(other);
    case Telling::straight_road:
      return class_tag(own) + " ends at a straight road";
    case Telling::four_roads_meet:
      return "four roads meet";
    case Telling::nothing:
      break;
  }
  return {};
}

std::vector<ArmRule> priorities(const Draft& draft, const road::Roads& roads, NodeId node,
                                const std::vector<JunctionArm>& arms) {
  Rules rules(arms.size());
  if (arms.size() < 3 || apply_signs(draft, roads, arms, rules)) return rules;
  if (apply_classes(roads, node, arms, rules)) return rules;
  if (arms.size() == 3) apply_shape(draft, roads, node, arms, rules);
  return rules;
}

std::optional<std::size_t> only_minor(const std::vector<ArmRule>& rules) {
  const auto minor = std::ranges::find_if(rules, &ArmRule::yields);
  if (std::ranges::count_if(rules, &ArmRule::yields) != 1) return std::nullopt;
  return static_cast<std::size_t>(minor - rules.begin());
}

}  // namespace loopwright::mark
