// What a recorded drive tells, in a few lines for the person at the keyboard.
#pragma once

#include <iosfwd>
#include <span>
#include <string>
#include <vector>

#include "loopwright/book/lesson.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/trace/lesson.hpp"
#include "loopwright/trace/match.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

/// A drive on its roads, and the plan it is held to; without one `plan` is empty.
struct TracedDrive {
  const road::Roads& roads;
  trace::Match match;
  trace::DrivenLesson lesson = {};
  const wish::Loop* planned = nullptr;
  std::span<const StretchId> plan = {};
};

/// What of a recording is used, and what isn't and why.
void tell_recording(std::ostream& out, const std::string& file, const trace::Recording& recording,
                    std::span<const trace::Fix> used);
/// When it was driven and how far, where it left the roads and the plan, and the stops.
void tell_drive(std::ostream& out, const TracedDrive& drive);
/// Planned passes, the first so many, that weren't driven, and those driven besides.
void tell_passes(std::ostream& out, std::span<const book::LessonPass> passes, std::size_t planned);
/// Road by road how fast, beside the limit of the day.
void tell_speeds(std::ostream& out, const TracedDrive& drive);

}  // namespace loopwright::command
