// Which part of an extract is asked for: --bounds, --outline.
#pragma once

#include <memory>
#include <string>

#include "command/options.hpp"
#include "loopwright/read/outline.hpp"

namespace loopwright::command {

/// What an option holds that isn't given: an empty value is one that somebody gave.
inline constexpr const char* not_given = "\n";

struct OutlineTexts {
  std::string bounds = not_given, file = not_given;
};

void add_outline(Options& app, OutlineTexts& texts);

/// None when nothing was said: all of the extract. Reads the file. Throws UsageError, InputError.
std::shared_ptr<const read::Outline> outline_of(const OutlineTexts& texts);

}  // namespace loopwright::command
