// Two side roads on opposite sides of one road, a little apart: crossing it is two turns that a
// driver plans as one.
//
// 1. From each T-junction whose minor arm is known, the main road is followed both ways, over nodes
//    where no public road joins, for at most 40 m (ours, from the trade's catalogue of practice: two
//    decisions that must be made together at town speeds).
// 2. It must come to another such T-junction, by the main road of that one too, whose minor arm
//    lies on the other side.
// 3. The way from one side road to the other and the way back are chances where they are legal:
//    ahead, be it left and then right or right and then left.
// One side of a dual carriageway has no other side to cross to. Four roads at one node are a
// crossroads. As certain as both signs are.
// Source: Highway Code rule 170 and its sign of a staggered junction.
#include <algorithm>
#include <map>
#include <optional>
#include <string>

#include "approach.hpp"
#include "junction_kinds.hpp"
#include "public_road.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::Movement;

constexpr double apart_within_m = 40;
constexpr std::uint32_t dual = road::piece_flag::dual | road::piece_flag::dual_inferred;

/// The main road from one junction to the next.
struct Between {
  const PlainJunction* first = nullptr;
  const PlainJunction* second = nullptr;
  Path road;  ///< from the first to the second
};

class StaggerFinder {
 public:
  StaggerFinder(const road::Roads& roads, Junctions junctions) : roads_(roads) {
    for (const PlainJunction& junction : junctions) {
      if (junction.minor()) tees_.emplace(junction.node, &junction);
    }
  }

  /// Each pair once, from the node of the lower number.
  std::vector<Between> find() const {
    std::vector<Between> found;
    for (const auto& [node, tee] : tees_) {
      for (std::size_t arm = 0; arm < 3; ++arm) {
        if (arm == *tee->minor()) continue;
        for (const ArmPart& part : tee->arms[arm].parts) {
          const auto between = along(*tee, part.away);
          if (between && between->first->node < between->second->node && is_staggered(*between))
            found.push_back(*between);
        }
      }
    }
    return found;
  }

 private:
  [[nodiscard]] std::optional<Between> along(const PlainJunction& tee, StretchId away) const {
    Between between{&tee, nullptr, {}};
    double metres = 0;
    for (StretchId s = away; s.known(); s = straight_on(roads_, s)) {
      metres += roads_.piece(s).length_m;
      if (metres > apart_within_m || (roads_.piece(s).flags & dual) != 0) break;
      between.road.push_back(s);
      const NodeId node = roads_.to_node(s);
      if (const auto next = tees_.find(node); next != tees_.end()) {
        between.second = next->second;
        return between;
      }
      if (public_ends(node) > 2) break;
    }
    return std::nullopt;
  }

  [[nodiscard]] std::size_t public_ends(NodeId node) const {
    return static_cast<std::size_t>(std::ranges::count_if(
        roads_.leaving(node), [&](StretchId s) { return is_public(roads_.piece(s)); }));
  }

  static bool has(const JunctionArm& arm, StretchId away) {
    return std::ranges::find(arm.parts, away, &ArmPart::away) != arm.parts.end();
  }

  /// True when the minor arm lies to the left of a main road driven over the junction; `away` leads
  /// from it along the main road.
  [[nodiscard]] bool minor_on_left(const PlainJunction& tee, StretchId away) const {
    const auto bearing = [&](StretchId s) { return road::bearing_out_deg(roads_, s); };
    const std::size_t minor = *tee.minor();
    const JunctionArm& a = tee.arms[(minor + 1) % 3];
    const JunctionArm& b = tee.arms[(minor + 2) % 3];
    const StretchId behind = has(a, away) ? b.parts.front().away : a.parts.front().away;
    const double heading = bearing(behind) + 180;
    return heading_change_deg(heading, bearing(tee.arms[minor].parts.front().away)) <
           heading_change_deg(heading, bearing(away));
  }

  [[nodiscard]] bool is_staggered(const Between& between) const {
    const StretchId arriving = between.road.back();
    const PlainJunction& second = *between.second;
    if (has(second.arms[*second.minor()], arriving.back())) return false;
    // At the second junction the main road is looked at backwards, so equal sides are opposite.
    return minor_on_left(*between.first, between.road.front()) ==
           minor_on_left(second, arriving.back());
  }

  const road::Roads& roads_;
  std::map<NodeId, const PlainJunction*> tees_;
};

/// Every legal way from one side road over the main road into the other.
std::vector<Path> ways_across(const road::Roads& roads, const Between& between) {
  const auto& from = between.first->arms[*between.first->minor()].parts;
  const auto& to = between.second->arms[*between.second->minor()].parts;
  std::vector<Path> ways;
  for (const ArmPart& in : from) {
    for (const ArmPart& out : to) {
      Path path = {in.away.back()};
      path.insert(path.end(), between.road.begin(), between.road.end());
      path.push_back(out.away);
      if (is_legal(roads, path)) ways.push_back(std::move(path));
    }
  }
  return ways;
}

Between backwards(const Between& between) {
  Between back{between.second, between.first, {}};
  for (auto s = between.road.rbegin(); s != between.road.rend(); ++s)
    back.road.push_back(s->back());
  return back;
}

Spot spot_of(const road::Roads& roads, const Between& between) {
  Spot spot;
  for (const StretchId s : between.road) {
    spot.nodes.push_back(roads.from_node(s));
    spot.nodes.push_back(roads.to_node(s));
    spot.inside.push_back(s.piece());
  }
  spot.tidy();
  return spot;
}

void add_pair(Draft& draft, const road::Roads& roads, const Between& between) {
  std::vector<Path> ways = ways_across(roads, between);
  for (Path& path : ways_across(roads, backwards(between))) ways.push_back(std::move(path));
  if (ways.empty()) return;
  const Spot spot = spot_of(roads, between);
  const ArmRule& rule = between.first->rules[*between.first->minor()];
  const ArmRule& other = between.second->rules[*between.second->minor()];
  const bool certain =
      rule.confidence == road::Confidence::certain && other.confidence == road::Confidence::certain;
  const std::string tag = certain ? rule.tag() : "side roads on opposite sides";
  road::Place place;
  place.kind = Kind::staggered_junction;
  place.source = node_object(roads, between.first->node);
  place.at = middle_of(roads, spot.nodes);
  place.name = draft.text({});
  place.arms = 4;
  const PlaceId id = draft.add_place(place, spot.nodes, spot.inside);
  for (const Path& path : ways) {
    add_passing(draft, id, path,
                {.movement = Movement::ahead,
                 .confidence = certain ? road::Confidence::certain : road::Confidence::inferred,
                 .tag = tag,
                 .source = certain ? rule.source : place.source});
  }
}

}  // namespace

void mark_staggered_junctions(Draft& draft, const road::Roads& roads, Junctions junctions) {
  for (const Between& pair : StaggerFinder(roads, junctions).find()) add_pair(draft, roads, pair);
}

}  // namespace loopwright::mark
