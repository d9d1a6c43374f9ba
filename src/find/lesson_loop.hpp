// A lesson in parts as one drive: described, counted part by part, and how good it is as a whole.
//
//   LessonLoop lesson = lesson_loop(ground, drive);   lesson.score.better_than(best)
//
// Rules: the ground is the whole lesson's. Counts, roads, hardness and minutes of a part mean what wish/parts.hpp
// and DEVELOPERS.md say.
#pragma once

#include <optional>
#include <vector>

#include "find/plan.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::find {

/// A whole drive, and what its rows are.
struct LessonDrive {
  Drive drive;
  std::vector<wish::RowSpan> parts;  ///< as many as the wish's, one behind the other
};

struct LessonLoop {
  wish::Loop loop;  ///< all but places to pull up, ways home and certificate
  Score score;
};

/// ramp: that the lesson must keep to, when it is to be easy first.
LessonLoop lesson_loop(const Ground& ground, const LessonDrive& lesson,
                       const std::optional<wish::Ramp>& ramp);

}  // namespace loopwright::find
