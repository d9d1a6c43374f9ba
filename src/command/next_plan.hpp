// A lesson planned by what room book proposes: the proposal is held to the map, and what the map has no place for gives
// way to the next. Shared by `lesson plan --next` and `day`.
//
//   NextPlan next = plan_next(book, {pupil, area, words, "60"});   tell_proposal(std::cout, next);
//   if (!next.found.answer.loops.empty()) keep_plan(book, next.job, next.found);
#pragma once

#include <iosfwd>
#include <set>
#include <string>
#include <vector>

#include "command/plan_job.hpp"
#include "loopwright/book/proposal.hpp"
#include "loopwright/book/pupil.hpp"

namespace loopwright::command {

struct NextAsk {
  const book::Pupil& pupil;
  AreaTexts area;
  WishWords words;          ///< settled; what they say beats what is proposed
  std::string length = {};  ///< as typed; empty: the usual one
  find::Effort effort = find::Effort::usual;
};

struct NextPlan {
  book::Proposal proposal;
  PlanJob job;
  FoundPlan found;  ///< without loops: nothing could be planned
  std::vector<std::string>
      passed_over;   ///< what was proposed before, and why it gave way, in words
  std::string told;  ///< what the search had to tell of places (loop_search.hpp)
};

/// The day of the words' start; today when they say none.
Date day_meant(const WishWords& words);

/// What a lesson could have: for book::Record.
struct WhatIsThere {
  std::set<book::Practice> easy;      ///< over roads of the learner's level
  std::set<book::Practice> any_hard;  ///< however hard, as when it is asked for by name
};
/// For the words, from where the learner begins, on the day of their start. Throws UsageError.
WhatIsThere practices_for(const NextAsk& ask, const PupilRecord& record);

/// Proposes for the day of the words' start, else today; a topic that the search finds no single pass of is passed over, at
/// most five times, and the proposal that was met best is kept. Throws UsageError when the words say what to practise, and
/// when nothing is due.
NextPlan plan_next(const book::Book& book, const NextAsk& ask);

/// What is to be practised, and finding the way where that is part of it, each with its reason.
void print_topics(std::ostream& out, const book::Proposal& proposal);

/// Goal and reasons, then what gave way.
void tell_proposal(std::ostream& out, const NextPlan& next);

}  // namespace loopwright::command
