// Which places to pull up a drive stops at for its briefs and its talk.
//
//   plan_pull_ups(ground, drive);   // fills drive.pull_ups and drive.unplaced
//
// Rules: the manoeuvres of the drive are planned. A brief is held at the last place before the first pass
// of its new kind, at most brief_before_most_s of driving before; of two kinds at one place it is as long
// as both. The talk is held at the last place, behind all briefs, at most talk_before_end_most_s of
// driving before the end. A new kind that isn't passed needs no brief.
// No stop is planned on the first or the last stretch, which hold the door.
#pragma once

#include "find/hunt.hpp"
#include "loopwright/find/passes.hpp"

namespace loopwright::find {

/// A planned stop that the drive has no place for.
struct WithoutPlace {
  road::Kind kind = road::Kind::roundabout;  ///< whose brief it is
  bool talk = false;                         ///< else it is the talk
};

std::vector<WithoutPlace> plan_pull_ups(const Ground& ground, Drive& drive);

}  // namespace loopwright::find
