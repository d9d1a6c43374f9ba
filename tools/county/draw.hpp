// From a plan to the county it means.
//
//   const Drawing county = draw(read_plan(text, file), 7);
//   if (!county.troubles.empty()) …   // say them; the county is not to be used
//
// Rules: one plan and seed give one drawing. What the plan draws is drawn first and joined; then what
// it only outlines is grown, in its order; services and dress follow where anything was grown; the
// plan's signs, bans and buses come last, on what is there by then.
#pragma once

#include <cstdint>

#include "county/drawing.hpp"
#include "county/plan.hpp"

namespace loopwright::county {

Drawing draw(const Plan& plan, std::uint64_t seed);

}  // namespace loopwright::county
