// Few map nodes out of many that carry a certain tag, found again along ways.
//
//   MarkedNodes humps(raw, [](const Tags& t) { return t.is("traffic_calming", "hump"); });
//   humps.count_on(way, 0, way.nodes.size() - 1);
//
// Rules: private to mark.
#pragma once

#include <algorithm>
#include <cstdint>
#include <vector>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::mark {

class MarkedNodes {
 public:
  template <class Predicate>
  MarkedNodes(const RawMap& raw, Predicate&& wanted) {
    for (const auto& [id, tags] : raw.node_tags) {
      if (wanted(tags)) ids_.push_back(id);
    }
  }
  /// How many of the way's nodes from one position to another, both included, are such nodes.
  [[nodiscard]] std::size_t count_on(const RawWay& way, std::size_t first, std::size_t last) const {
    if (ids_.empty()) return 0;
    std::size_t count = 0;
    for (std::size_t i = first; i <= last; ++i) {
      if (std::ranges::binary_search(ids_, way.nodes[i])) ++count;
    }
    return count;
  }

  /// The first such node on this part of the way, in its order; 0 when there is none.
  [[nodiscard]] std::int64_t first_on(const RawWay& way, std::size_t first,
                                      std::size_t last) const {
    for (std::size_t i = first; i <= last && !ids_.empty(); ++i) {
      if (std::ranges::binary_search(ids_, way.nodes[i])) return way.nodes[i];
    }
    return 0;
  }

 private:
  std::vector<std::int64_t> ids_;  // ascending, as node_tags are
};

}  // namespace loopwright::mark
