// A mock test planned on a pupil's roads: `lesson plan --mock`.
//
//   MockPlan mock = plan_mock(book, {pupil, area, words, "60"});   tell_mock(std::cout, mock);
//
// Rules: what it holds comes from src/rules/mock_test.txt, as far as the map has it from the door. No route of a real test
// is known to it. Where tests are held is the instructor's to say, once for all in the book (book/centres.hpp) or with
// --keep-off.
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

#include "command/next_plan.hpp"

namespace loopwright::command {

struct MockPlan {
  PlanJob job;
  FoundPlan found;
  std::vector<std::string> left_out;  ///< what the roads don't have, in words
  std::vector<std::string> centres;   ///< that are kept off, with their hours
  std::vector<std::string> at_rest;  ///< at whose centres there are no tests then, with their hours
  std::vector<std::string>
      odd;                 ///< that can't be kept off, since what is kept of them can't be read
  bool keeps_off = false;  ///< the words keep off an area
  std::string told;        ///< of places
};

/// Where not all of it can be had in one drive the least needed is left out. Throws UsageError when the words say what to practise or how long to drive.
MockPlan plan_mock(const book::Book& book, const NextAsk& ask);

/// What it holds, what is left out, and what it doesn't say.
void tell_mock(std::ostream& out, const MockPlan& mock);

}  // namespace loopwright::command
