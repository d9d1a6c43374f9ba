// The twenty made-up pupils of a course, and the doors of the county they live behind.
#pragma once

#include <span>
#include <string_view>

namespace loopwright::test {

struct CoursePupil {
  std::string_view code, home;
  double talent;            ///< learner.hpp
  int home_minutes;         ///< practised at home a week
  std::string_view avoids;  ///< a kind that is kept off; empty: none
  bool has_test;            ///< a test day is known, at the end of the course
};

/// In the order in which a short course takes them: three that differ first.
std::span<const CoursePupil> course_pupils();

}  // namespace loopwright::test
