// Which part of an extract is asked for: --bounds, --outline.
#pragma once

#include <memory>
#include <string>

#include "command/options.hpp"
#include "loopwright/read/outline.hpp"

namespace loopwright::command {

struct OutlineTexts {
  std::string bounds, file;
};

void add_outline(Options& app, OutlineTexts& texts);

/// None when nothing was said: all of the extract. Reads the file. Throws UsageError, InputError.
std::shared_ptr<const read::Outline> outline_of(const OutlineTexts& texts);

}  // namespace loopwright::command
