// A county that nobody drew, ready to be written.
#pragma once

#include <cstdint>

#include "county/county_grid.hpp"
#include "county/drawing.hpp"

namespace loopwright::county {

/// Makes plans until one can be drawn: one seed and plot give one county. Throws InputError when none
/// of 20 can, with the last one's first trouble.
Drawing draw_other(const Plot& plot, std::uint64_t seed);

}  // namespace loopwright::county
