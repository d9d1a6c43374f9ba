// What is said of a lesson afterwards, from the pencil marks: one line, or a small file of such lines.
//
//   const Said said = read_log("roundabout right 2 pedals; rest 4");
//   const Log log = filled(plan, said, scheme, day);
//
// Grammar: clauses parted by ';' or line ends; '#' begins a comment at a line's start. A clause is one of
//   KIND [MOVEMENT] [xCOUNT] [LEVEL] [HELP] [HOW [xCOUNT]] [fault HEADING [GRADE]] [: why]
//                             of a practice: level seen, help, where one stepped in, a fault; xCOUNT passes
//   rest LEVEL                of all planned passes nothing else is said of
//   not KIND [MOVEMENT]       wasn't driven
//   skill SKILL LEVEL         a level seen of a skill, such as mirrors
//   fault HEADING [GRADE] [xCOUNT]
//   HOW [xCOUNT] [: why]      stepped in, not at a practice: words, wheel or pedals
//   minutes N · home N        away from the start · minutes practised at home since the last lesson
//   light, weather or traffic CODE
//   mock [DRIVING SERIOUS DANGEROUS]   a mock test: its faults by grade; alone: those said in the clauses with fault
//   mock unplanned [D S D]    the same of a lesson that wasn't planned as a mock test
//   sheet MARK                the two letters printed on the sheet the pencil marks are on
//   seen LETTER … [: what stands there] · seen all
//                             looked at on the ground, by the letters of the sheet
//   said: TEXT · remark: TEXT · goal: TEXT · reached: TEXT
//   not driven                alone, or with the sheet: the lesson didn't happen
// Rules: pure. Passes are prefilled: without a word of them all are driven, without a level. What is said of a practice
// goes for all its passes of the lesson, and of its special forms that nothing closer is said of; stepping in and faults
// are counted once, or as often as xCOUNT says. Throws UsageError naming the clause and what it takes.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/book/lesson.hpp"
#include "loopwright/book/scheme.hpp"

namespace loopwright::book {

/// What is said of a practice.
struct SaidPractice {
  Practice what;
  bool driven = true;
  std::optional<int> passes =
      {};  ///< how many were driven; of a plan: no more than it has, else these many more
  std::optional<int> level = {};
  std::optional<Help> help = {};
};

/// What is said to have been looked at on the ground.
struct SaidSeen {
  std::string letter;     ///< of the sheet; "*": all of them
  std::string says = {};  ///< what stands there, when it isn't as the map has it
  friend bool operator==(const SaidSeen&, const SaidSeen&) = default;
};
struct Said {
  bool not_driven = false;  ///< the whole lesson; then nothing else is said but the sheet
  int clauses = 0;          ///< how many were said, but for the sheet
  std::vector<SaidPractice> practices;
  std::optional<int> rest = {};  ///< level
  bool mock_by_faults = false;   ///< the mock test has the faults that are said
  bool mock_unplanned = false;   ///< it is meant though the lesson wasn't planned as one
  std::string sheet = {};        ///< the mark of the sheet that was written on, in capitals
  std::vector<SaidSeen> seen = {};
  Log log = {};  ///< all else, but for passes; observations without a day
};

Said read_log(std::string_view text);
/// Adds what a further text says. Throws UsageError, also for what was said before.
void read_more(Said& said, std::string_view text);

/// A mock test is written of a lesson that was planned as one, that wasn't planned here, or when it is said that it wasn't
/// planned as one. Throws UsageError else.
void need_mock_meant(const Said& said, const Plan& plan);

/// The mark of a plan's sheet: two letters that come of its drive and start, so that a sheet printed before the lesson
/// was planned again is told apart (one in 576 isn't). Empty of a lesson that wasn't planned here.
std::string sheet_mark(const Plan& plan);
/// Marks of an older sheet speak of another drive. Throws UsageError for those.
void need_same_sheet(const Said& said, const Plan& plan);

/// What is said to be reached must be a goal, word by word: one of this log, or one that is open. Throws UsageError else, with
/// those there are. open: by the other lessons (progress.hpp).
void need_open_goals(const Said& said, std::vector<std::string> open);

/// A lesson's log: the plan's passes with what is said of them, then those that weren't planned, and the levels that
/// all these show of their skills. Throws UsageError for a skill that isn't of the scheme, and for a practice that is
/// said not to be driven and isn't in the plan.
Log filled(const std::vector<LessonPass>& planned, const Said& said, const Scheme& scheme,
           Date day);

}  // namespace loopwright::book
