// A made-up learner: drives what is planned, gets better by it, forgets, has bad days, practises at home; and what an
// instructor would say of the lesson in the words of `lesson log`.
//
//   Learner learner({.talent = 0.6, .seed = 7});   learner.rest(7);
//   const std::string line = learner.drive(lesson.plan.passes);
//
// Rules: the same seed gives the same learner. All its numbers are ours: no source measures how a pass of a junction
// changes a learner. They are set so that a middling one needs some thirty lessons of an hour for all, beside the 45 hours
// that gov.uk tells of as the average (ready to pass).
#pragma once

#include <cstdint>
#include <map>
#include <set>
#include <string>
#include <vector>

#include "loopwright/base/dice.hpp"
#include "loopwright/book/lesson.hpp"

namespace loopwright::test {

struct LearnerSort {
  double talent = 0.6;     ///< 0 to 1: how much a pass teaches
  double noise = 0.4;      ///< by how many levels a pass goes better or worse, at most twice that
  double bad_days = 0.08;  ///< of how many lessons all goes a level worse
  int home_minutes = 0;    ///< practised at home a week
  std::uint64_t seed = 1;
};

class Learner {
 public:
  explicit Learner(const LearnerSort& sort);

  /// So many days pass: what isn't practised is forgotten, what is practised at home a little less.
  void rest(int days);

  /// Drives the passes; what is said of it, without conditions. minutes: likely ones of the plan, of the usual learner.
  std::string drive(const std::vector<book::LessonPass>& passes, double minutes);

 private:
  /// From 1 (first met) to 5.
  double& ability(const book::Practice& what);
  int one_pass(const book::Practice& what);
  std::string skills_said();

  LearnerSort sort_;
  Dice dice_;
  double all_round_ = 1;  ///< what of all practice helps with whatever is new
  double today_ = 0;      ///< a bad day
  int home_minutes_ = 0;  ///< since the last lesson
  std::map<road::Kind, double> ability_;
};

}  // namespace loopwright::test
