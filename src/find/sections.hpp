// A lesson cut into sections, each searched as a drive of its own: its parts in order, and of a lesson that is
// to be easy first its beginning and its end apart.
//
//   for (const SectionPlan& plan : sections_of(wish, caps, {low_ms, high_ms}, ramp)) …
//
// Rules: of the wish alone. Times are likely milliseconds of practice: planned stops not counted, nor what the
// instructor drives.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <vector>

#include "find/caps.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::find {

/// From one time to another, both included.
struct TimeWindow {
  std::int64_t low_ms = 0;
  std::int64_t high_ms = std::numeric_limits<std::int64_t>::max() / 4;
};

struct SectionPlan {
  std::size_t part = 0;    ///< it is (some) of this one of the wish; 0 when the lesson is one
  wish::Part what;         ///< its roads, its hardest, and what is wanted in it
  TimeWindow since_start;  ///< when it ends, since the practice began
  TimeWindow since_part;   ///< the same, since its part began
  bool gentle = false;     ///< the last stretch home of a lesson that is easy first
};

/// practice: how long it may last. ramp: of a lesson that is to be easy first.
std::vector<SectionPlan> sections_of(const wish::Wish& wish, const Caps& caps, TimeWindow practice,
                                     const std::optional<wish::Ramp>& ramp);

/// How long a section may last that begins so long after the practice and its part did.
TimeWindow left_for(const SectionPlan& plan, const wish::Ramp& ramp, std::int64_t since_start_ms,
                    std::int64_t since_part_ms);

}  // namespace loopwright::find
