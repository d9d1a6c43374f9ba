// Which streets and turns the clock shuts are really in the way of a wish, and when they wouldn't be.
//
//   const Worth worth = [](const Ground& g) { return g.starts.empty() ? 0 : 1; };
//   const InTheWay way = in_the_way(ground, worth);   way.words;   // "Fore Street is shut Monday …"
//   better_starts(ground, worth, way);                // 07:05 and 09:15
//
// Rules: a street is named only when the wish gets more by leaving its hours out, and no fewer
// streets would do; empty words: the clock is not to blame. A better start is one at which all this
// is open all through the lesson, found by the same worth; that the whole wish can be met then is
// for a search to say. Work is counted, never timed.
// Why: a shortfall that blames a street at the other end of the town sends the instructor there.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "find/hunt.hpp"

namespace loopwright::find {

/// How much of what is asked can be had on a ground. Rules: fewer walls never make it less.
using Worth = std::function<int(const Ground&)>;

struct InTheWay {
  std::vector<Wall> walls;
  int worth = 0;  ///< without them
  std::string words;
  std::function<bool(const Instant& start)> also = {};  ///< what else a better start must give
  std::optional<int> minutes = {};  ///< that the drive takes; empty: as many as the wish says
  [[nodiscard]] bool any() const { return !walls.empty() || also; }
};

InTheWay in_the_way(const Ground& ground, const Worth& worth);

/// The nearest start before the one asked, and the nearest after it, within `most_hours_off` hours, at
/// which none of this is in the way; at most two, in order of time.
std::vector<Instant> better_starts(const Ground& ground, const Worth& worth, const InTheWay& way);

inline constexpr int most_hours_off = 4;  // ours: half a working day

}  // namespace loopwright::find
