// The options of planned stops: --brief, --talk, --new (wish_words.cpp has their help).
#pragma once

#include <string>
#include <vector>

#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

struct StopTexts {
  std::string brief, talk;
  std::vector<std::string> new_kinds;
};

/// Rules: the wish's minutes are read. Throws UsageError.
void read_stops(wish::Wish& wish, const StopTexts& texts);

}  // namespace loopwright::command
