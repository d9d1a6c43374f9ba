// What `--version` prints: the program, the formats it writes, and how old the tables built into it are.
//
//   return command::version("0.1.0", "1f2e3d4c5b6a");
//
// Rules: dates are those the tables of src/rules tell themselves; nothing is kept twice.
#pragma once

#include <string_view>

#include "loopwright/base/error.hpp"

namespace loopwright::command {

/// version: of the program; commit: the source it was built from, "" when that wasn't known then.
Exit version(std::string_view version, std::string_view commit);

}  // namespace loopwright::command
