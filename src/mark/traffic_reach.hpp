// Where the traffic of two roads at a junction meets again a little way off.
//
//   TrafficReach traffic(draft, roads);
//   share_one(traffic.reach(out, Sense::leaving), traffic.reach(in, Sense::coming));
//
// Rules: private to mark. Draft and roads must outlive it.
#pragma once

#include <cstdint>
#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

/// Where traffic gets within the limit when leaving by a stretch, or where it may have come from.
class TrafficReach {
 public:
  TrafficReach(const Draft& draft, const road::Roads& roads) : draft_(draft), roads_(roads) {}

  enum class Sense : std::uint8_t { leaving, coming };

  /// Nodes, or rings as numbers beyond them; ordered. The junction's own ring doesn't count.
  std::vector<std::uint64_t> reach(StretchId away, Sense sense);

 private:
  struct Stop {
    StretchId by;  ///< the stretch that led here
    double metres = 0;
  };
  [[nodiscard]] PlaceId ring_at(NodeId node) const;
  void add(StretchId stretch, double metres);

  const Draft& draft_;
  const road::Roads& roads_;
  PlaceId own_ring_;
  std::vector<Stop> stops_;
  std::vector<std::uint64_t> rings_;
};

/// True when two ordered lists have something in common.
bool share_one(const std::vector<std::uint64_t>& a, const std::vector<std::uint64_t>& b);

}  // namespace loopwright::mark
