// Which commit the program was built from; its source is written by commit.cmake at every build.
#pragma once

#include <string_view>

namespace loopwright {

/// Twelve hexadecimal digits, perhaps with a remark; empty when it wasn't known.
std::string_view built_from();

}  // namespace loopwright
