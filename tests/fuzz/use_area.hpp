// What commands do with an area, as far as this build of the fuzzers has their rooms.
#pragma once

#include <filesystem>

namespace loopwright::fuzz {

/// Looks, finds near, and plans a lesson. Refusals are checked.
void use_area(const std::filesystem::path& area);

}  // namespace loopwright::fuzz
