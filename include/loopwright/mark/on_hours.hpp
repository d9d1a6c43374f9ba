// From what tags say, with and without conditions, to when something is on for our car: a bus lane,
// a ban on waiting, a turn that is forbidden.
//
//   on_hours(false, {{true, "Mo-Fr 07:00-10:00"}}).text == "Mo-Fr 07:00-10:00"
//   on_hours(true, {{false, "Mo-Fr 10:00-16:00"}}).text == "yes @ (24/7); no @ (Mo-Fr 10:00-16:00)"
//
// Rules: the text is for hours::Timetable. Of clauses that hold together the last wins. Clauses that
// never bind a learner's car fall away, one that always does undoes those before it.
// Why plain hours where one clause says it all: they are printed and read aloud.
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace loopwright::mark {

/// One clause of a conditional: on (or off) when the condition holds.
struct OnClause {
  bool on = false;
  std::string condition;
};

/// What is left of a plain value and its clauses for our car.
struct Switched {
  bool base = false;              ///< on when no clause holds
  std::vector<OnClause> clauses;  ///< the first differs from the base; empty: it never changes
};
Switched switched(bool base_on, std::span<const OnClause> clauses);

/// "no @ (Mo-Fr 08:00-09:00)". What would end the brackets early is made unreadable, never dropped.
std::string clause_text(std::string_view value, std::string_view condition);
/// Clauses of yes and no, one behind the other.
std::string clauses_text(std::span<const OnClause> clauses);
/// The same of something that is on by `base` alone too, for hours::Timetable: plain hours where
/// one clause says it. Rules: there are clauses.
std::string timetable_text(const Switched& when);

struct OnHours {
  bool ever = false;      ///< it is on at some time
  bool doubtful = false;  ///< the plain tag says always, the condition says when
  std::string text;       ///< empty when no condition says when
};
/// For tags that contradict themselves by habit: a plain "on" beside clauses that switch on is not
/// believed, the clauses are, in doubt.
OnHours on_hours(bool base_on, std::span<const OnClause> clauses);

}  // namespace loopwright::mark
