// The number of the area file's format: this program writes it and reads no other.
#pragma once

#include <cstdint>

namespace loopwright::store {

/// Raised with every change of the bytes (src/store/layout.hpp).
std::uint32_t area_format();

}  // namespace loopwright::store
