// Junctions where signs or the look of the roads say who gives way: no lights, no roundabout.
//
//   for (const PlainJunction& junction : plain_junctions(draft, roads))
//     if (const auto minor = junction.minor()) …
//
// Rules: private to mark. Needs roundabouts, minis and signals. Arms are public roads in driving
// order round the node; rules tell who gives way, arm by arm.
#pragma once

#include <optional>
#include <vector>

#include "arms.hpp"
#include "passing.hpp"
#include "priority.hpp"

namespace loopwright::mark {

struct PlainJunction {
  NodeId node;
  std::vector<JunctionArm> arms;  ///< three or more
  std::vector<ArmRule> rules;

  /// Of three arms the one that gives way to both others; empty when there is no such one.
  [[nodiscard]] std::optional<std::size_t> minor() const;
};

/// All of them, by node.
std::vector<PlainJunction> plain_junctions(const Draft& draft, const road::Roads& roads);

/// A turn out of the minor arm of three, or into it.
struct TeeTurn {
  Path path;
  std::size_t from = 0, to = 0;  ///< arms
  road::Movement movement = road::Movement::left;
};

/// Every turn out of the minor arm (emerging), and every one into it (turning off).
std::vector<TeeTurn> turns_out_of(const road::Roads& roads, const PlainJunction& junction);
std::vector<TeeTurn> turns_into(const road::Roads& roads, const PlainJunction& junction);

/// Every legal turn from one arm to another.
std::vector<Path> turns_between(const road::Roads& roads, const JunctionArm& from,
                                const JunctionArm& to);

/// Change of heading over a turn from one stretch into another.
double turn_deg(const road::Roads& roads, const Path& path);

/// A place of one node.
PlaceId add_node_place(Draft& draft, const road::Roads& roads, NodeId node, road::Kind kind);

/// The same with the number of its arms.
PlaceId add_junction_place(Draft& draft, const road::Roads& roads, const PlainJunction& junction,
                           road::Kind kind);

}  // namespace loopwright::mark
