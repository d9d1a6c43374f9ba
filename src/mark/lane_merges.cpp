// Fewer lanes ahead, in our direction: who is in the one that ends must give way to the others.
//
// 1. At each node a driver goes straight on over, the lanes before and after are counted
//    (lane_counts.cpp). Fewer after, at least two before: they merge.
// 2. Where roads join or leave, lanes may leave with them. There the lanes before are those whose
//    arrows (turn:lanes) go ahead; without arrows, or where lanes says another number than they do,
//    nobody knows, and nothing is said. The way on must be the same road, by its number or else its
//    name: at a fork lanes ahead part. The same behind lights, over the whole junction.
// 3. A lane with merge_to_left or merge_to_right ends at the end of the last road that has it.
// 4. Rings and minis are left out, and what falls for less than 40 m (ours: a traffic island, a slip
//    of the pen).
// Certain when both numbers are tags of our direction; half of a total is not.
// Sources: OSM wiki, pages Key:lanes, Key:turn; Highway Code rule 134 (merging in turn).
#include <algorithm>
#include <cmath>
#include <limits>

#include "approach.hpp"
#include "junction_kinds.hpp"
#include "lane_counts.hpp"
#include "lit_ways.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;

constexpr double ahead_within_deg = 45, least_fewer_m = 40;

/// One way on which lanes fall.
struct Merge {
  Path path;
  bool certain = true;
  std::string tag;
  OsmObject source;
};

class MergeFinder {
 public:
  MergeFinder(const Draft& draft, const road::Roads& roads) : draft_(draft), roads_(roads) {}

  [[nodiscard]] std::vector<Merge> at(NodeId node) const {
    std::vector<Merge> merges;
    for (const StretchId away : roads_.leaving(node)) {
      const StretchId arriving = away.back();
      if (!roads_.drivable(arriving) || is_ring(roads_, arriving)) continue;
      if (auto merge = over(arriving)) merges.push_back(std::move(*merge));
    }
    return merges;
  }

  /// Lanes that end behind a junction: those that go ahead before it against those after it.
  [[nodiscard]] std::optional<Merge> behind(const Path& path,
                                            const std::optional<LaneArrows>& arrows) const {
    if (!arrows || arrows->contradicted || !is_same_road(path.front(), path.back()))
      return std::nullopt;
    return fewer(path, {arrows->going_ahead(), true, arrows->tag, false});
  }

 private:
  [[nodiscard]] std::optional<Merge> over(StretchId arriving) const {
    const auto before = car_lanes(draft_, arriving);
    const auto arrows = lane_arrows(draft_, arriving);
    const bool ends = arrows && arrows->merges();
    if (!ends && (!before || before->count < 2)) return std::nullopt;
    const StretchId on = goes_on_into(arriving);
    if (!on.known()) return std::nullopt;
    const Path path = {arriving, on};
    if (ends) return ends_by_arrow(path, *arrows);
    if (joins(roads_.to_node(arriving))) return behind(path, arrows);
    return fewer(path, *before);
  }

  /// The drivable way that goes straight on; any angle where it is the only one.
  [[nodiscard]] StretchId goes_on_into(StretchId arriving) const {
    StretchId best;
    const bool only = road_ends(roads_, roads_.to_node(arriving)) == 2;
    double least = only ? std::numeric_limits<double>::max() : ahead_within_deg;
    for (const road::Turn& turn : roads_.turns_from(StateId{arriving.index()})) {
      const StretchId next = roads_.stretch_of(turn.to);
      const double angle = std::abs(turn.angle_deg);
      if (next == arriving.back() || is_ring(roads_, next) || angle > least) continue;
      best = next, least = angle;
    }
    return best;
  }

  /// True when public roads join or leave here, not only the two halves of our own.
  [[nodiscard]] bool joins(NodeId node) const {
    if (road_ends(roads_, node) == 2) return false;
    const auto arms = arms_at(draft_, roads_, node);
    return std::ranges::count_if(arms, &JunctionArm::is_public) > 2;
  }

  [[nodiscard]] bool is_same_road(StretchId from, StretchId to) const {
    const road::Piece& a = roads_.piece(from);
    const road::Piece& b = roads_.piece(to);
    const bool numbered = !roads_.text(a.ref).empty() || !roads_.text(b.ref).empty();
    return numbered ? a.ref == b.ref : a.name == b.name;
  }

  [[nodiscard]] std::optional<Merge> ends_by_arrow(const Path& path,
                                                   const LaneArrows& arrows) const {
    const auto next = lane_arrows(draft_, path.back());
    if (next && next->merges()) return std::nullopt;
    return Merge{path, true, arrows.tag, arrows.source};
  }

  [[nodiscard]] std::optional<Merge> fewer(const Path& path, const LaneCount& before) const {
    const auto after = car_lanes(draft_, path.back());
    if (!after || after->count >= before.count || !stays_fewer(path.back(), before.count))
      return std::nullopt;
    return Merge{path, before.certain && after->certain,
                 before.words() + ", then " + after->words(),
                 way_object(roads_.piece(path.back()).way)};
  }

  [[nodiscard]] bool stays_fewer(StretchId stretch, int before) const {
    double metres = 0;
    for (StretchId s = stretch; s.known() && metres < least_fewer_m;) {
      const auto lanes = car_lanes(draft_, s);
      if (lanes && lanes->count >= before) return false;
      metres += roads_.piece(s).length_m;
      if (road_ends(roads_, roads_.to_node(s)) != 2) break;
      s = straight_on(roads_, s);
    }
    return true;
  }

  const Draft& draft_;
  const road::Roads& roads_;
};

void add_merges(Draft& draft, const road::Roads& roads, const Spot& spot,
                const std::vector<Merge>& merges) {
  if (merges.empty()) return;
  road::Place place;
  place.kind = Kind::lanes_merge;
  place.source = merges.front().source;
  place.at = middle_of(roads, spot.nodes);
  place.name = draft.text({});
  const PlaceId id = draft.add_place(place, spot.nodes, spot.inside);
  for (const Merge& merge : merges) {
    add_passing(
        draft, id, merge.path,
        {.confidence = merge.certain ? road::Confidence::certain : road::Confidence::inferred,
         .tag = merge.tag,
         .source = merge.source});
  }
}

}  // namespace

void mark_lane_merges(Draft& draft) {
  const road::Roads graph = draft.roads();
  const MergeFinder finder(draft, graph);
  for (std::size_t row = 0; row < graph.nodes.size(); ++row) {
    const NodeId node{row};
    if (road_ends(graph, node) < 2 || draft.is_controlled(node)) continue;
    add_merges(draft, graph, {{node}, {}}, finder.at(node));
  }
}

void mark_merges_behind_lights(Draft& draft, const road::Roads& roads, const Spot& spot,
                               std::span<const LitWay> ways) {
  const MergeFinder finder(draft, roads);
  std::vector<Merge> merges;
  for (const LitWay& way : ways) {
    if (way.movement != road::Movement::ahead) continue;
    const auto arrows = arrows_before_junction(draft, roads, way.path);
    if (auto merge = finder.behind(way.path, arrows)) merges.push_back(std::move(*merge));
  }
  add_merges(draft, roads, spot, merges);
}

}  // namespace loopwright::mark
