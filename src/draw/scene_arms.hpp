// The arms of a place, added to its scene.
#pragma once

#include "draw/scene.hpp"

namespace loopwright::draw {

bool on_ring(const road::Roads& roads, StretchId stretch);

/// The arms that the signs of a ring or mini count, in driving order from the entry.
void add_ring_arms(const road::Roads& roads, double reach_m, Scene& scene);

/// Every road that leaves the nodes of another place; the entry's first.
void add_arms(const road::Roads& roads, double reach_m, Scene& scene);

/// Compass bearing that points up in a picture of the scene. Rules: its frame points north yet.
double up_of(const road::Roads& roads, const Scene& scene);

}  // namespace loopwright::draw
