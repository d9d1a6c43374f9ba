// Both distances are ours: wider than any junction drawn as one, less than a block of houses.
#include "place/crossings.hpp"

#include <algorithm>
#include <iterator>

namespace loopwright::place {
namespace {

constexpr double one_crossing_within_m = 150, nearly_meet_within_m = 60;

std::optional<Crossing> nearest_approach(const road::Roads& roads, const Street& one,
                                         const Street& other) {
  std::optional<Crossing> nearest;
  for (const Point at : shape_of(roads, one)) {
    for (const PieceId piece : road::pieces_near(roads, at, nearly_meet_within_m)) {
      if (!std::ranges::binary_search(other.pieces, piece)) continue;
      const double off_m = nearest_on_line(roads.shape_of(piece), at).off_m;
      if (off_m > nearly_meet_within_m || (nearest && nearest->apart_m <= off_m)) continue;
      nearest = {at, off_m};
    }
  }
  return nearest;
}

}  // namespace

std::vector<Crossing> crossings_of(const road::Roads& roads, const Street& one,
                                   const Street& other) {
  const std::vector<NodeId> ours = nodes_of(roads, one), theirs = nodes_of(roads, other);
  std::vector<NodeId> shared;
  std::ranges::set_intersection(ours, theirs, std::back_inserter(shared));
  std::vector<Crossing> crossings;
  for (const NodeId node : shared) {
    const Point at = roads.nodes[node.index()].at;
    const bool is_known = std::ranges::any_of(crossings, [at](const Crossing& known) {
      return distance_m(known.at, at) <= one_crossing_within_m;
    });
    if (!is_known) crossings.push_back({at, 0});
  }
  if (crossings.empty()) {
    if (const auto nearest = nearest_approach(roads, one, other)) crossings.push_back(*nearest);
  }
  return crossings;
}

}  // namespace loopwright::place
