// What a recorded drive told of a lesson: which passes were really driven, and how long it all took.
//
//   log.passes = traced_passes(plan.passes, driven);
//   log_traced(book, {"WREN", 3}, {plan, log, traced, streets});
//
// Rules: the recording itself is kept only when `recording` holds it. A trace takes the place of an earlier one of the
// lesson; a later log leaves it (log_words.hpp: what it said wasn't driven stays so). Throws InputError as lessons.hpp does.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "loopwright/book/book.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/streets.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::book {

/// Stretches that end at one kind of junction, with it: how long they take by room pace, at the learner's level and
/// without calibration, and how long they took. `none`: those that end at none.
struct TracedTime {
  road::Control control = road::Control::none;
  int count = 0;
  double expected_s = 0, took_s = 0;
  friend bool operator==(const TracedTime&, const TracedTime&) = default;
};

struct Traced {
  Instant start;          ///< when the car drove off
  double seconds = 0;     ///< until it was back, stops and all
  double standing_s = 0;  ///< of them, at places where no junction keeps one waiting
  double metres = 0;
  std::string recording;          ///< as it was read; empty: not kept
  std::vector<TracedTime> times;  ///< by control, each once
  friend bool operator==(const Traced&, const Traced&) = default;
};

/// Planned passes with what a drive says of each, then those driven besides. A pass is the same when kind, movement and
/// place are; of several the first that are left. What was seen of a pass stays when it was driven.
std::vector<LessonPass> traced_passes(const std::vector<LessonPass>& planned,
                                      const std::vector<LessonPass>& driven);

struct TracedLesson {
  Plan plan;  ///< of a lesson that is in the book only its roads count: those really driven
  Log log;
  Traced traced;
  std::vector<StreetDriven> streets;  ///< really driven: they take the planned ones' place
};
/// of: number 0 for a lesson that isn't in the book. Returns its number.
int log_traced(Book& book, const LessonRead& of, const TracedLesson& lesson);

/// Of one pupil, the lessons in order; without their recordings.
struct LessonTrace {
  int number = 0;
  Traced traced;
};
std::vector<LessonTrace> traces_of(const Book& book, std::string_view code);

}  // namespace loopwright::book
