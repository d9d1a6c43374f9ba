// The learner's own part of a drive on which the instructor drives out or back, as a drive by itself.
//
//   const LearnersDrive own = learners_drive(roads, wish, loop);
//   say_loop(roads, own.loop);   // begins with how to set off from where the seats are changed
//
// Rules: the loop is resolved. It begins at the place of `drive_out` on its stretch and ends at that of `drive_back`;
// `start` and all times stay those of the whole drive, so its first stretch is reached some minutes after the start. All
// indices are its own. Runs of road that reach beyond it are cut at its ends; a junction is in it when its entry is, and
// a pass that doesn't lie in `practice` counts for nothing, as before. Without such places it is the whole drive.
// Why: what is said, counted and drawn for the learner must begin at the kerb where the learner takes the wheel; roads
// counted from before it would be counted wrong.
#pragma once

#include <cstddef>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

struct LearnersDrive {
  Loop loop;
  std::size_t before = 0;           ///< stretches of the whole drive before its first
  std::vector<std::size_t> passes;  ///< of each of its passes the index in the whole drive
};

LearnersDrive learners_drive(const road::Roads& roads, const Wish& wish, const Loop& loop);

}  // namespace loopwright::wish
