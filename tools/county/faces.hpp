// The ground between roads: what a town's blocks are before they are built on.
//
//   for (const std::vector<Spot>& block : faces(county, outline)) …
//
// Rules: roads, rings, rails and water are edges, whatever layer they lie on; service roads aren't.
// Why: inside a town drawn by hand new streets go where there is room, and the room is what the
// drawn streets leave.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "county/drawing.hpp"
#include "county/grow.hpp"
#include "loopwright/base/dice.hpp"

namespace loopwright::county {

/// The faces that lie within the outline by their middle, corners anticlockwise, dead ends left
/// out; in the order of their lowest corner.
std::vector<std::vector<Spot>> faces(const Drawing& county, std::span<const Spot> outline);

/// Square metres within a polygon; positive when its corners go anticlockwise.
double area_m2(std::span<const Spot> corners);

/// Streets in each face that is large enough to hold one, as grow_quarter draws them.
void grow_infill(Drawing& county, const Quarter& ground, Dice& dice);

}  // namespace loopwright::county
