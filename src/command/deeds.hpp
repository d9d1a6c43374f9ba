// A verb that does one of several things: `note add`, `pupil erase`.
#pragma once

#include <span>
#include <string_view>

#include "loopwright/command/command.hpp"

namespace loopwright::command {

struct Deed {
  std::string_view name, does;
  Exit (*run)(const Arguments&);
};

/// Does what the first word says with the others; its help lists them all. Throws UsageError for any other word.
/// does: a sentence for the help.
Exit run_deed(std::string_view verb, std::string_view does, std::span<const Deed> deeds,
              const Arguments& words);

}  // namespace loopwright::command
