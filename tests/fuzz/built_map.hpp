// A map extract built as `build` does it, and checked.
#pragma once

#include <filesystem>

namespace loopwright::fuzz {

/// Builds the extract; the bits of `options` say where it lies and what may be driven. Requires that
/// it is refused, or that its area opens, verifies and is asked for places near its first node.
void check_build(const std::filesystem::path& extract, unsigned options);

}  // namespace loopwright::fuzz
