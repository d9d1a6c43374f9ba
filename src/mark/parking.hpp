// How much of the carriageway parked cars take, from both tagging schemes.
//
//   parked_on(Tags{{"parking:left", "lane"}}).left_m == 2.0
//
// Rules: private to mark. 0: nothing taken, or nothing mapped.
#pragma once

#include <string>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::mark {

struct Parked {
  double left_m = 0, right_m = 0;              ///< sides as the way's nodes run
  bool left_free = false, right_free = false;  ///< as mapped, no car stands there
  std::string tag;  ///< "parking:both=lane", of the first side that takes anything
  [[nodiscard]] double total_m() const { return left_m + right_m; }
  [[nodiscard]] bool both() const { return left_m > 0 && right_m > 0; }
};
Parked parked_on(const Tags& tags);

}  // namespace loopwright::mark
