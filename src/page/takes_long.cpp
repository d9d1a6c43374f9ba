#include "page/takes_long.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

#include "loopwright/base/text.hpp"
#include "page/assets.hpp"

namespace loopwright::page {

bool takes_long(const Request& request) {
  const std::optional<Address> address = address_of(request.target);
  if (!address || asset(address->path)) return false;
  const auto parts = split(std::string_view(address->path).substr(1), '/');
  constexpr std::array<std::string_view, 7> at_hand{"area",  "find",  "tiles",      "symbols",
                                                    "loops", "build", "favicon.ico"};
  if (std::ranges::find(at_hand, parts[0]) != at_hand.end()) return false;
  if (parts[0] == "notes") return request.method == Method::post;
  return parts[0] != "jobs" || (parts.size() > 2 && parts[2] != "loops");
}

}  // namespace loopwright::page
