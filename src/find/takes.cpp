// Method: the place is looked up as one to keep off is (keep_off.hpp): the junction there, or the road with all of its
// name that hangs together.
#include "find/takes.hpp"

#include <algorithm>

#include "find/hunt.hpp"
#include "find/keep_off.hpp"

namespace loopwright::find {

std::vector<Take> takes_of(const Ground& ground, const reach::LocalGraph& graph) {
  std::vector<Take> takes;
  if (ground.section) return takes;
  for (const wish::Take& asked : ground.wish.takes) {
    const KeptOff place = kept_off(ground.roads, {asked.name, {asked.at}});
    Take take{asked.name, {}, !place.nodes.empty()};
    for (Vertex v = 0; v < graph.size(); ++v) {
      const StretchId stretch = graph.stretch(v);
      const bool is_of_it =
          take.junction ? std::ranges::binary_search(place.nodes, ground.roads.from_node(stretch))
                        : std::ranges::binary_search(place.pieces, stretch.piece());
      if (is_of_it) take.vertices.push_back(v);
    }
    takes.push_back(std::move(take));
  }
  return takes;
}

bool is_taken(const Take& take, std::span<const Vertex> vertices) {
  const auto counted = vertices.subspan(take.junction && !vertices.empty() ? 1 : 0);
  return std::ranges::any_of(
      counted, [&](Vertex v) { return std::ranges::binary_search(take.vertices, v); });
}

int not_taken(const std::vector<Take>& takes, std::span<const Vertex> vertices) {
  return static_cast<int>(
      std::ranges::count_if(takes, [&](const Take& take) { return !is_taken(take, vertices); }));
}

}  // namespace loopwright::find
