// Where the learner begins and ends in a lesson of which the instructor drives some.
//
//   for (const LessonEnds& ends : ends_of(wish, free)) search(ends);
//
// Rules: the row on which a place lies at which the seats are changed is the instructor's.
#pragma once

#include <vector>

#include "find/hunt.hpp"

namespace loopwright::find {

struct LessonEnds {
  std::vector<StateId>
      out;  ///< the instructor's drive to where the learner begins; empty: from the door
  std::int64_t out_ms = 0;         ///< to the end of its last stretch
  std::vector<reach::Seed> goals;  ///< where the learner ends: the door, or the stretch of a place
  std::vector<StateId> back;       ///< the instructor's drive behind that
  std::int64_t back_ms = 0;
  bool to_door = true;
};

/// The quickest ways, at most two, each other than the rest in which way a place is come to; empty: there is no
/// way. free: the lesson without anything being too hard. Throws UsageError for a place off the roads, or at a door.
std::vector<LessonEnds> ends_of(const wish::Wish& wish, const Ground& free);

}  // namespace loopwright::find
