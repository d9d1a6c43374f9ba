// Walking along a road away from a junction: where it leads, how it is headed, what stands on it.
// Walks follow the road's shape, whichever way its traffic goes.
#pragma once

#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

/// Ends of road pieces at a node: 1 at a dead end, 2 where the road goes on, 3 or more at a
/// junction.
inline std::size_t road_ends(const road::Roads& roads, NodeId node) {
  return roads.leaving(node).size();
}

bool is_ring(const road::Roads& roads, StretchId stretch);

/// Neither of two stretches that follow each other has any length: a walk that is to go so many metres must not go on so.
bool gets_nowhere(const road::Roads& roads, StretchId from, StretchId to);

/// Where the road goes on after a stretch: the only way on, else the straightest within 60
/// degrees. None when there is no such road; a roundabout is never gone on into.
StretchId straight_on(const road::Roads& roads, StretchId stretch);

/// Compass bearing of a road between two distances from the junction it leaves, going away from
/// it. Shorter roads are measured over what there is.
double bearing_away_deg(const road::Roads& roads, StretchId away, double from_m, double to_m);

/// The point on a road this far from the junction it leaves, or its end.
Point point_away(const road::Roads& roads, StretchId away, double metres);

/// The stretches from `first` on, through nodes where nothing joins, as far as their ends lie
/// within the limit: ends at the first junction or dead end. Empty when the first is too long.
std::vector<StretchId> walk_on(const road::Roads& roads, StretchId first, double limit_m);

double length_m(const road::Roads& roads, const std::vector<StretchId>& walk);

/// Nodes and the metres to them by road, from one node, roundabouts not entered.
struct Reached {
  NodeId node;
  double metres = 0;
  StretchId by;  ///< last stretch of the shortest way there; none at the start
};
/// All nodes within the limit, nearest first.
std::vector<Reached> nodes_around(const road::Roads& roads, NodeId from, double limit_m);

}  // namespace loopwright::mark
