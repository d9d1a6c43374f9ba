// The options of planned stops: --brief, --talk, --new.
#pragma once

#include <CLI/CLI.hpp>
#include <string>
#include <vector>

#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

struct StopTexts {
  std::string brief, talk;
  std::vector<std::string> new_kinds;
};

void add_stop_options(CLI::App& app, StopTexts& texts);

/// Rules: the wish's minutes are read. Throws UsageError.
void read_stops(wish::Wish& wish, const StopTexts& texts);

}  // namespace loopwright::command
