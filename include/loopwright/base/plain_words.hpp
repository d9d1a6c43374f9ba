// Numbers and lists as one says them.
//
//   number_word(8) == "eight";   listed({"Monday", "Friday"}) == "Monday and Friday"
#pragma once

#include <string>
#include <vector>

namespace loopwright {

/// "no", "one" … "thirty"; digits beyond, and below nought.
std::string number_word(int number);

/// "a", "a and b", "a, b and c"; empty for nothing.
std::string listed(const std::vector<std::string>& parts);

}  // namespace loopwright
