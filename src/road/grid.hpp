// The grid by which roads and landmarks are found near a place (roads.hpp, grid_cell).
#pragma once

#include <cstdint>

namespace loopwright::road {

/// Side of a cell: 1/200 degree.
inline constexpr std::int64_t cell_e7 = 50'000;

}  // namespace loopwright::road
