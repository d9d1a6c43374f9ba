// What the tag incline says of a road.
//
//   read_incline("-8%")->percent == -8;   read_incline("up")->sign == 1
//
// Rules: private to mark. Up along the way's nodes is positive. Empty: no text we can read.
#pragma once

#include <optional>
#include <string_view>

namespace loopwright::mark {

struct Incline {
  int sign = 0;                   ///< 1 up along the way, -1 down, 0 level
  std::optional<double> percent;  ///< empty when only up or down is said
};
std::optional<Incline> read_incline(std::string_view text);

}  // namespace loopwright::mark
