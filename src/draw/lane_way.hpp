// The way of the car through a place, in the lane that the Highway Code teaches.
#pragma once

#include "draw/carriageway.hpp"
#include "draw/scene.hpp"

namespace loopwright::draw {

/// In metres of the scene, from one edge of a circle of that radius round its middle to the other.
Line lane_way(const road::Roads& roads, const wish::Loop& loop, At at, const Scene& scene,
              double radius_m);

/// Left, ahead, right or round at the place.
road::Movement movement_at(const road::Roads& roads, const Scene& scene);

/// Metres from a node along any road there until the other roads' edges are behind.
double clear_of_m(const road::Roads& roads, NodeId node, PieceId of);

}  // namespace loopwright::draw
