#include "find/round_parts.hpp"

#include <algorithm>
#include <utility>

#include "find/street_caps.hpp"
#include "loopwright/reach/strong_parts.hpp"

namespace loopwright::find {
namespace {

constexpr std::int64_t times_of_other_roads = 2;  // ours: a lesson that is more of the same tires

reach::LocalGraph graph_about(const Ground& ground, double radius_m) {
  const reach::StretchCopies copies(ground.roads);
  std::vector<StateId> states;
  for (const PieceId piece : road::pieces_near(ground.roads, ground.wish.home, radius_m))
    for (const bool against : {false, true}) {
      const StretchId stretch(piece, against);
      if (!ground.costs.may_drive(stretch)) continue;
      states.push_back(StateId{stretch.index()});
      for (const StateId copy : copies.of(stretch)) states.push_back(copy);
    }
  return {ground.roads, ground.costs, states};
}

}  // namespace

RoundParts::RoundParts(const Ground& ground, double radius_m) {
  const reach::LocalGraph graph = graph_about(ground, radius_m);
  const std::vector<std::uint32_t> component = reach::strong_parts(graph);
  if (component.empty()) return;
  bears_ms_.resize(*std::max_element(component.begin(), component.end()) + 1);
  std::vector<std::pair<StretchId, std::uint32_t>> of;
  for (Vertex v = 0; v < graph.size(); ++v)
    if (graph.state(v).index() < ground.roads.stretch_count())
      of.emplace_back(graph.stretch(v), component[v]);
  std::sort(of.begin(), of.end());
  for (const auto& [stretch, part] : of) stretches_.push_back(stretch), parts_.push_back(part);
  const StreetCaps caps(ground.roads, ground.wish, ground.caps);
  for (const auto& [stretch, part] : of) {
    const bool quiet = (ground.roads.piece(stretch).flags & road::piece_flag::quiet) != 0;
    // A cap counts both directions together.
    const std::int64_t directions = this->of(stretch.back()) == part ? 2 : 1;
    const std::int64_t along_ms = ground.costs.along_ms(stretch);
    bears_ms_[part] += quiet ? along_ms * caps.most(stretch.piece()) / directions
                             : along_ms * times_of_other_roads;
  }
}

std::uint32_t RoundParts::of(StretchId stretch) const {
  const auto at = std::lower_bound(stretches_.begin(), stretches_.end(), stretch);
  return at == stretches_.end() || *at != stretch
             ? none
             : parts_[static_cast<std::size_t>(at - stretches_.begin())];
}

}  // namespace loopwright::find
