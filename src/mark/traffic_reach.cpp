// Traffic is followed by its direction for 60 m (ours: a splitter island is shorter), never over a
// ring; a ring that both roads reach is a meeting too.
#include "traffic_reach.hpp"

#include <algorithm>

#include "approach.hpp"
#include "public_road.hpp"

namespace loopwright::mark {
namespace {

constexpr double meets_within_m = 60;

}  // namespace

PlaceId TrafficReach::ring_at(NodeId node) const {
  return draft_.place_at(node, road::Kind::roundabout);
}

void TrafficReach::add(StretchId stretch, double metres) {
  metres += roads_.piece(stretch).length_m;
  if (metres > meets_within_m || is_ring(roads_, stretch)) return;
  const NodeId node = roads_.to_node(stretch);
  if (const PlaceId ring = ring_at(node); ring.known()) {
    if (ring != own_ring_) rings_.push_back((std::uint64_t{1} << 32U) + ring.value);
    return;
  }
  const bool known = std::ranges::any_of(stops_, [&](const Stop& stop) {
    return roads_.to_node(stop.by) == node && stop.metres <= metres;
  });
  if (!known) stops_.push_back({stretch, metres});
}

std::vector<std::uint64_t> TrafficReach::reach(StretchId away, Sense sense) {
  own_ring_ = ring_at(roads_.from_node(away));
  stops_.clear(), rings_.clear();
  add(away, 0);
  for (std::size_t i = 0; i < stops_.size(); ++i) {
    const Stop here = stops_[i];
    for (const StretchId next : roads_.leaving(roads_.to_node(here.by))) {
      const StretchId driven = sense == Sense::leaving ? next : next.back();
      if (next != here.by.back() && traffic_takes(draft_, driven)) add(next, here.metres);
    }
  }
  std::vector<std::uint64_t> reached = rings_;
  for (const Stop& stop : stops_) reached.push_back(roads_.to_node(stop.by).value);
  std::ranges::sort(reached);
  return reached;
}

bool share_one(const std::vector<std::uint64_t>& a, const std::vector<std::uint64_t>& b) {
  return std::ranges::any_of(a, [&](auto x) { return std::ranges::binary_search(b, x); });
}

}  // namespace loopwright::mark
