// Every chance of a want that can be driven to, through and home from, with the times.
#pragma once

#include <span>
#include <vector>

#include "find/hunt.hpp"

namespace loopwright::find {

struct ReachedChance {
  ChanceId chance;
  std::int64_t there_ms = 0;  ///< from home to where it begins
  std::int64_t back_ms = 0;   ///< from where it is passed to the end
  std::int64_t loop_ms = 0;   ///< home, through it, and to the end, a stop there counted
};

/// In order of there_ms, then chance. limit_ms bounds the way there.
std::vector<ReachedChance> reached_chances(const Ground& ground, const wish::Want& want,
                                           std::int64_t limit_ms);

/// Every chance of every kind but manoeuvres, from a sweep from home and one back from the end; in the same order.
std::vector<ReachedChance> reached_of_all(const Ground& ground, const reach::Sweep& out,
                                          const reach::Sweep& back);

/// Those that a drive of at most loop_ms passes, for each want one after the other, each in the same order.
std::vector<ReachedChance> chances_within(const Ground& ground, std::span<const wish::Want> wants,
                                          std::int64_t loop_ms);

/// The verdict on the bus lanes of a chance for who is there at the minutes it says, likely ones.
wish::Verdict lane_verdict_at(const Ground& ground, const ReachedChance& reached);

/// No lesson is longer: the bound for searches that ask "is there any at all?".
inline constexpr std::int64_t longest_ms = 600LL * 60000;

}  // namespace loopwright::find
