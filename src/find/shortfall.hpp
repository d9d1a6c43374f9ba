// Why a wish can't be met: which want, and the nearest there is.
#pragma once

#include "find/by_the_hour.hpp"
#include "find/hunt.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// What the search got nearest to.
struct Nearest {
  std::vector<int> got;                   ///< of each want, in the best loop in the window
  std::vector<std::string> not_taken;     ///< names of what must be taken and isn't, in that loop
  std::optional<double> least_minutes;    ///< of the shortest loop found for all wants
  std::optional<double> longest_minutes;  ///< of the drive found that is nearest to the window
  bool wears_out_streets = false;         ///< it drives a quiet street more often than its cap
  bool lacks_room =
      false;  ///< all is met by a loop within the minutes and the caps, but none fills them
};

/// Rules: some want has got < count, something isn't taken, or no loop fills the window. Where it is room that lacks, no
/// want is missing.
wish::Shortfall explain(const Ground& ground, const Nearest& nearest);

/// When every drive found meets something shut by the clock.
wish::Shortfall explain_shut(const lanes::Breach& breach);

/// When no road may be left home by, or come back to the end by: says which avoid shuts it.
/// length: of an own drive, for its better starts; none for a search.
wish::Shortfall explain_shut_in(const Ground& ground, const Length& length = {});

/// When the end can't be reached within the minutes.
wish::Shortfall explain_out_of_reach(const Ground& ground);

}  // namespace loopwright::find
