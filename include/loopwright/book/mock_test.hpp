// What a mock test is made of, and what its marks come to.
//
//   const MockWish wish = mock_wish(lessons, there, day);   // wants, stops, minutes
//   const Faults faults = counted(log.faults);   repeated(log.faults);   is_passed(faults, day);   // marking.hpp
//
// Rules: pure; numbers by date from src/rules/mock_test.txt, with its sources. Nothing in it knows a road: it copies and
// infers no test route, and it says nothing about a real test.
#pragma once

#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/book/lesson.hpp"

namespace loopwright::book {

struct MockWish {
  std::vector<Practice> wants;  ///< once each, the most needed first
  int stops = 3;                ///< pulling up and moving off again, besides the manoeuvre
  road::Kind manoeuvre = road::Kind::pull_up_right;
  bool has_manoeuvre = false;  ///< false: there is no place for one around the door
  int driving_minutes = 30;    ///< of the wheels turning
  int stop_minutes = 0;        ///< of the stops and the manoeuvre
  int independent_minutes = 20;
};

/// there: what the lesson can have from the door (Record::there); only that is asked for. Of the manoeuvres the one that
/// the lessons drove longest ago, or never.
MockWish mock_wish(std::span<const Lesson> lessons, const std::set<Practice>& there, Date day);

/// How the words of a wish begin that was planned as a mock test; a comment to who reads them as a wish.
inline constexpr std::string_view mock_plan_line = "# mock test\n";
bool is_mock_plan(const Plan& plan);

/// The faults by grade.
Faults counted(std::span<const LessonFault> faults);

/// A heading that was marked more than once.
struct Repeated {
  const Heading* heading = nullptr;
  int count = 0;  ///< of all grades
};
/// The most often marked first; of equals in the order of the marking sheet. A fault that comes back may be marked as
/// serious (DVSA's marking, by trade accounts): how often is too often nobody says, so twice is told.
std::vector<Repeated> repeated(std::span<const LessonFault> faults);

}  // namespace loopwright::book
