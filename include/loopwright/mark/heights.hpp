// How high the ground is at a point, from wherever that is known.
//
//   const HeightSource hill = [](Point p) { return std::optional(p.lat() * 1000); };
//
// Rules: metres above any level that is the same everywhere, as only differences count; empty where
// nothing is known. An empty function: no heights at all, gradients come from tags alone.
// Why: a rule's test gives a lambda; only room read knows of elevation grids.
#pragma once

#include <functional>
#include <optional>

#include "loopwright/base/point.hpp"

namespace loopwright::mark {

using HeightSource = std::function<std::optional<double>(Point)>;

}  // namespace loopwright::mark
