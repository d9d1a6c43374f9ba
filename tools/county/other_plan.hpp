// The plan of a county that nobody drew, made from a seed; each differs.
//
//   const Plan plan = read_plan(other_plan(grid.plot(3), 7), "county 3");
//
// Rules: a market town in the middle, half of them with a ring road and roundabouts; two smaller
// towns, six villages; four main roads that leave at the plot's exits, a loop of lesser ones; a railway
// with level crossings and bridges, a river. A plan may turn out not to be drawable (a bend of the
// river at a junction): another seed then makes another.
#pragma once

#include <cstdint>
#include <string>

#include "county/county_grid.hpp"

namespace loopwright::county {

std::string other_plan(const Plot& plot, std::uint64_t seed);

}  // namespace loopwright::county
