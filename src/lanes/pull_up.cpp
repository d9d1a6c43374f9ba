// Method: the same words always, then one for each flag that calls for a look.
#include "loopwright/lanes/pull_up.hpp"

#include <array>
#include <string_view>
#include <utility>

namespace loopwright::lanes {

double stop_at_m(const road::PullUp& place) {
  return (static_cast<double>(place.from_m) + static_cast<double>(place.to_m)) / 2;
}

std::string what_to_check(const road::PullUp& place) {
  namespace flag = road::pull_up_flag;
  constexpr std::array<std::pair<std::uint16_t, std::string_view>, 6> words{{
      {flag::residents, "bays for permit holders"},
      {flag::fee, "ticket or disc"},
      {flag::parked, "parked cars"},
      {flag::lane, "a lane along the kerb"},
      {flag::hill, "on a hill"},
      {flag::lay_by, "a lay-by or bays"},
  }};
  std::string text = "check lines, signs and drives";
  for (const auto& [bit, word] : words)
    if ((place.flags & bit) != 0) text.append(", ").append(word);
  return text;
}

}  // namespace loopwright::lanes
