// A matched drive as a lesson: when it began and ended, what it passed, how long each sort of junction took.
//
//   const DrivenLesson lesson = lesson_of(roads, match, pace, &plan);   lesson.loop.passes; lesson.from_s;
//
// Rules: pure. The loop is resolved and holds what was driven, likely times and all, so that what reads planned loops
// reads driven ones; it isn't proved and is no file's. Standing before the first road and behind the last is no part of
// it.
#pragma once

#include <vector>

#include "loopwright/pace/pace.hpp"
#include "loopwright/trace/match.hpp"
#include "loopwright/trace/passes.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::trace {

/// Stretches that end at one kind of junction, with it.
struct ControlTime {
  road::Control control = road::Control::none;
  int count = 0;
  double expected_s = 0, took_s = 0;
};

/// A stop, and whether a junction ahead kept the car waiting.
struct LessonStop {
  Stop stop;
  std::size_t run = 0;
  bool waiting = false;
};

struct DrivenLesson {
  wish::Loop loop;
  std::vector<TracedPass> passes;  ///< with legs of all runs in a row
  std::vector<LessonStop> stops;   ///< while away
  std::vector<ControlTime> times;  ///< by control, the learner's; what was unseen isn't counted
  double from_s = 0, to_s = 0;     ///< seconds since 1970: driven off, back
  double metres = 0;
};

/// pace: of the learner, without calibration. planned: for its manoeuvres, and for who drives: what lies before the
/// first and behind the last stretch that the plan counts as practice is the instructor's, as in wish::Loop.
DrivenLesson lesson_of(const road::Roads& roads, const Match& match, const pace::Pace& pace,
                       const wish::Loop* planned = nullptr);

}  // namespace loopwright::trace
