// Where the instructor stepped in, as far as the record tells: at which practice, and at which places of it.
//
//   const auto last = last_stepped_in(lessons, {});   if (last) use(last->lesson, last->passes);
//
// Rules: pure. The record has the practice of an intervention, not its place: of several places of it that were driven
// those seen at the lowest level come first.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "loopwright/book/lesson.hpp"

namespace loopwright::book {

/// Which one is meant; what isn't said is left open.
struct SteppedInAsk {
  std::optional<int> lesson = {};
  std::optional<Practice> what = {};  ///< without a movement: any
};

struct SteppedIn {
  int lesson = 1;                 ///< its number
  LessonIntervention stepped_in;  ///< it says of what
  /// Driven, with a place; each place and movement once.
  std::vector<LessonPass> passes;
};

/// Of the latest such lesson that was driven the strongest (pedals, wheel, words), of these the first; none when there
/// is none that says of what.
std::optional<SteppedIn> last_stepped_in(std::span<const Lesson> lessons, const SteppedInAsk& ask);

}  // namespace loopwright::book
