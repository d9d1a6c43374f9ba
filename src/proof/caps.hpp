// The rows of src/rules/caps.txt that a proof compares a loop with.
#pragma once

#include <vector>

#include "loopwright/wish/wish.hpp"

namespace loopwright::proof {

struct Caps {
  int junction_passes = 0;  ///< of one place, that count for a want
  int stretch_passes = 0;   ///< of one run, that count for a want
  int quiet_passes = 0;     ///< times a quiet piece may be driven
  double spacing_s = 0;     ///< between passes counted for a "max" want
  double overlap_share = 0;
  double overlap_exempt_m = 0;
  double window_share = 0;
  int hardness_above_level = 0;
  int day_passes = 0, month_passes = 0;  ///< of a quiet piece over all pupils, by the ledger
  double ledger_free_m = 0;              ///< round home and end
  int welcome_worth = 0;                 ///< milli-units
  double easy_first_share = 0, easy_last_share = 0;  ///< of the practice
  int easy_below_level = 0, easy_least = 0, easy_last_hardest = 0;
  double part_leeway_share = 0, part_leeway_minutes = 0, part_link_minutes = 0;
  std::vector<int> repeat_worth;  ///< milli-units of the first, second … pass of a place
};

/// Those of the table, but what the wish itself caps.
Caps caps_of(const wish::Wish& wish);

}  // namespace loopwright::proof
