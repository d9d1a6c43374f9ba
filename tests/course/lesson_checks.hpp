// What must hold of every lesson that is planned by a proposal.
//
//   for (const std::string& fault : faults_of({pupil, lessons, there, next, pace})) …
//
// Rules: each check reads the plan and the log of what was driven before; tables of kinds are the project's data, the
// numbers are those it promises. That reasons are said, that what comes before a kind is at 3, and that of two topics one is
// new at most is common practice of the trade, no source.
#pragma once

#include <set>
#include <span>
#include <string>
#include <vector>

#include "command/next_plan.hpp"
#include "loopwright/book/lesson.hpp"
#include "loopwright/book/pupil.hpp"

namespace loopwright::test {

struct PlannedByProposal {
  const book::Pupil& pupil;
  std::span<const book::Lesson> before;  ///< those driven so far
  const command::NextPlan& plan;         ///< with a loop
  double pace = 1;  ///< how much longer than usual the pupil takes, by the record
};

/// Empty: all holds.
std::vector<std::string> faults_of(const PlannedByProposal& of);

}  // namespace loopwright::test
