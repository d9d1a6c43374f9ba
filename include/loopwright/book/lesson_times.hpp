// How many minutes of a lesson the wheels turn.
//
//   lesson_times(60, Topic::known)   // {.talk = 10, .reserve = 5, .wheels = 45}
//
// Rules: from src/rules/lesson_times.txt, with its sources. Minutes; the three add up to the lesson.
#pragma once

namespace loopwright::book {

enum class Topic { fresh, known };

struct LessonTimes {
  int talk = 0, reserve = 0, wheels = 0;
  friend bool operator==(const LessonTimes&, const LessonTimes&) = default;
};

/// Rules: 20 to 600 minutes.
LessonTimes lesson_times(int length_minutes, Topic topic);

}  // namespace loopwright::book
