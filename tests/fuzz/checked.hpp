// What the fuzzers of hours share: settings to ask in, and moments to ask for.
//
//   for (const Ask& ask : asks(text)) require(hours.at(ask.at, ask.setting) == again);
//
// Rules: the same text gives the same asks, so that a find can be run again.
#pragma once

#include <array>
#include <cstdint>
#include <string_view>

#include "loopwright/hours/setting.hpp"
#include "trial.hpp"

namespace loopwright::fuzz {

/// A moment, and where it is asked for.
struct Ask {
  Instant at;
  const hours::Setting& setting;
};

/// Two days on which the clocks are changed, New Year, the end of a February, and two moments by the
/// text; by the text too, where: with nothing known, in Scotland with terms, in England without, in
/// the far north, where the sun may not set.
std::array<Ask, 6> asks(std::string_view text);

}  // namespace loopwright::fuzz
