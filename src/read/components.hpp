// Groups of states between which one can drive both ways.
#pragma once

#include <cstdint>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::read {

/// The strongly connected component of each state, numbered from 0.
std::vector<std::uint32_t> strong_components(const road::Roads& roads);

}  // namespace loopwright::read
