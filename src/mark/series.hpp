// Things on the road that a drive passes: at a node, or along the pieces of a way. Those that
// follow each other closely along one road are one place.
//
//   const auto things = things_on_road(roads, rule);
//   for (const Spot& spot : series_of(roads, things, {.within_m = 150, .street = Street::same}))
//
// Rules: private to mark.
#pragma once

#include <functional>
#include <vector>

#include "passing.hpp"

namespace loopwright::mark {

/// What makes a node or a piece of road such a thing.
struct ThingRule {
  std::uint32_t node_flag = 0;
  std::function<bool(PieceId)> on_piece;
};

/// Each node and each way that is one, on roads that aren't service roads.
std::vector<Spot> things_on_road(const road::Roads& roads, const ThingRule& rule);

enum class Street : std::uint8_t {
  any,  ///< the road that goes straight on, whatever its name
  same  ///< only while its name stays; without a name, up to the next junction
};

struct SeriesRule {
  double within_m = 0;  ///< 0: only what shares a node hangs together
  Street street = Street::any;
};

/// Things joined, with the road between them inside; ordered by the first of each.
std::vector<Spot> series_of(const road::Roads& roads, const std::vector<Spot>& things,
                            const SeriesRule& rule);

/// One thing met on a way through a place.
struct MetThing {
  StretchId on;    ///< the stretch that is one, or that arrives at the node
  NodeId node;     ///< none when it is the stretch
  StretchId next;  ///< after the node
};
std::vector<MetThing> things_met(const road::Roads& roads, const ThingRule& rule, const Path& path);

/// Which direction of the way forward or backward is, to whoever meets the thing; empty at a node
/// where two ways of different directions meet.
std::optional<bool> along_the_way(const MetThing& met);

}  // namespace loopwright::mark
