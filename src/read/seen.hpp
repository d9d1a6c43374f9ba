// Which objects of an extract are seen from inside an outline: nodes by where they lie, ways by their nodes.
//
//   Seen seen(outline);   for (nodes) seen.take(node);   if (seen.has(way)) …
//
// Rules: private to read. All nodes are taken before a way is asked for. A bit a node id in use, in blocks.
#pragma once

#include <algorithm>
#include <osmium/index/id_set.hpp>
#include <osmium/osm/node.hpp>
#include <osmium/osm/way.hpp>

#include "loopwright/mark/raw_map.hpp"
#include "loopwright/read/outline.hpp"

namespace loopwright::read {

class Seen {
 public:
  explicit Seen(const Outline& outline) : outline_(outline) {}

  void take(const osmium::Node& node) {
    if (node.visible() && has(node)) ids_of(node.id()).set(node.positive_id());
  }
  [[nodiscard]] bool has(const osmium::Node& node) const {
    return node.location().valid() && outline_.sees({node.location().y(), node.location().x()});
  }
  [[nodiscard]] bool has(const osmium::Way& way) const {
    return std::ranges::any_of(way.nodes(), [&](const auto& node) { return has(node.ref()); });
  }
  [[nodiscard]] bool has(const mark::RawWay& way) const {
    return std::ranges::any_of(way.nodes, [&](std::int64_t node) { return has(node); });
  }

 private:
  using Ids = osmium::index::IdSetDense<osmium::unsigned_object_id_type>;

  [[nodiscard]] bool has(std::int64_t node) const {
    // Ids below zero are of maps somebody drew and didn't upload.
    return (node < 0 ? below_zero_ : ids_).get(static_cast<std::uint64_t>(node < 0 ? -node : node));
  }
  Ids& ids_of(std::int64_t node) { return node < 0 ? below_zero_ : ids_; }

  const Outline& outline_;
  Ids ids_, below_zero_;
};

}  // namespace loopwright::read
