// Method: every two points that follow each other on a tram, ordered; a road is looked up in them.
// A point is a crossing when the rails touch a road there and leave it at once: at least two ends
// of road without rails along them meet there. Where a tram joins the road it will run along, or
// leaves it, one end is without rails only.
#include "tram_rails.hpp"

#include <algorithm>
#include <map>

#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {

TramRails::TramRails(const RawMap& raw) {
  for (const RawWay& tram : raw.trams) {
    for (std::size_t i = 1; i < tram.nodes.size(); ++i) {
      const std::int64_t a = tram.nodes[i - 1], b = tram.nodes[i];
      joints_.push_back({std::min(a, b), std::max(a, b), &tram});
    }
    nodes_.insert(nodes_.end(), tram.nodes.begin(), tram.nodes.end());
  }
  std::ranges::stable_sort(joints_, {}, ends_of);
  std::ranges::sort(nodes_);
}

bool TramRails::touch(std::int64_t node) const {
  return std::ranges::binary_search(nodes_, node);
}

const RawWay* TramRails::join(std::int64_t a, std::int64_t b) const {
  const std::pair<std::int64_t, std::int64_t> ends(std::min(a, b), std::max(a, b));
  const auto at = std::ranges::lower_bound(joints_, ends, {}, ends_of);
  return at != joints_.end() && ends_of(*at) == ends ? at->tram : nullptr;
}

std::vector<std::int64_t> tram_crossings(const RawMap& raw) {
  const TramRails rails(raw);
  if (rails.none()) return {};
  std::map<std::int64_t, int> ends_without;
  for (const RawWay& road : raw.ways) {
    if (!road_class_of(road.tags) || is_minor_service(road.tags)) continue;
    for (std::size_t i = 0; i < road.nodes.size(); ++i) {
      if (!rails.touch(road.nodes[i])) continue;
      const auto free_end = [&](std::size_t a, std::size_t b) {
        return rails.join(road.nodes[a], road.nodes[b]) == nullptr ? 1 : 0;
      };
      int& ends = ends_without[road.nodes[i]];
      if (i > 0) ends += free_end(i - 1, i);
      if (i + 1 < road.nodes.size()) ends += free_end(i, i + 1);
    }
  }
  std::vector<std::int64_t> crossings;
  for (const auto& [node, ends] : ends_without) {
    if (ends >= 2) crossings.push_back(node);
  }
  return crossings;
}

}  // namespace loopwright::mark
