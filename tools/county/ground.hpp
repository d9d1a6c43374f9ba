// The ground under a county: hills over a plain, and how steep a road lies on it.
//
//   const double height = height_m(county.hills, place);
//
// Rules: a hill is a bell (a Gaussian), and hills add up. Why: smooth, so that gradients and the
// elevation tile agree however finely either is sampled.
#pragma once

#include <optional>
#include <span>
#include <string>

#include "county/drawing.hpp"

namespace loopwright::county {

/// Metres above the sea; 20 where no hill is.
double height_m(std::span<const Hill> hills, Spot place);

/// Mean gradient of a line in the order of its points, as tag incline has it ("6%", "-11%"); nothing
/// under 1 % or for a line under 10 m. Source: OSM wiki, Key:incline.
std::optional<std::string> incline_of(std::span<const Hill> hills, std::span<const Spot> line);

/// Puts the gradient in the place of every incline=auto, and takes the tag off level roads.
void put_inclines(Drawing& county);

}  // namespace loopwright::county
