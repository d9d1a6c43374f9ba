// How much longer than the usual learner of the same level a pupil takes, by the lessons so far.
//
//   const PaceLearned pace = learned_pace(lessons, traces);   pace.at(15);   // at three in the afternoon
//
// Rules: pure. A factor is driving time over room pace's likely time, 0.8 to 1.6, shrunk toward 1 while little is
// known: as if 20 minutes more had been driven at the usual pace (ours). Recorded drives count without their stops; of a
// lesson that was only logged the minutes away beside the likely ones. Kinds of junction and hours of the day have
// factors of their own, on top, when there is enough of them.
#pragma once

#include <span>
#include <vector>

#include "loopwright/book/lesson.hpp"
#include "loopwright/book/traced.hpp"

namespace loopwright::book {

/// On stretches that end at such a junction.
struct ControlPace {
  road::Control control = road::Control::none;
  int count = 0;
  double factor = 1;  ///< of the usual time there, the pupil's own factor included
};
/// Of lessons that begin in such an hour.
struct HourPace {
  int hour = 0;  ///< 0 to 23
  int lessons = 0;
  double factor = 1;  ///< on top of the pupil's own
};

struct PaceLearned {
  double factor = 1;
  int lessons = 0;  ///< that it comes from
  double minutes = 0;
  std::vector<ControlPace> controls;  ///< those met often enough, in the order of road::Control
  std::vector<HourPace> hours;        ///< ascending
  /// Of a lesson that begins in that hour; 0.8 to 1.6.
  [[nodiscard]] double at(int hour) const;
};

PaceLearned learned_pace(std::span<const Lesson> lessons, std::span<const LessonTrace> traces);

}  // namespace loopwright::book
