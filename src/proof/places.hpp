// Junctions, crossings and rings by the nodes that belong to them.
#pragma once

#include <span>
#include <utility>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::proof {

class PlacesByNode {
 public:
  using Entry = std::pair<NodeId, PlaceId>;

  explicit PlacesByNode(const road::Roads& roads);
  /// Places that hold this node.
  [[nodiscard]] std::span<const Entry> at(NodeId node) const;

 private:
  std::vector<Entry> by_node_;
};

}  // namespace loopwright::proof
