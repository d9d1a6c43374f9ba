// A plan that was found, told and kept in the book: how `lesson plan` and `lesson again` end.
#pragma once

#include "command/plan_job.hpp"
#include "loopwright/command/command.hpp"

namespace loopwright::command {

/// Tells what was found, keeps it, and writes the loop file that the job names. Exit::wish_not_met when nothing was found,
/// or not all that was asked for.
Exit tell_and_keep(book::Book& book, const PlanJob& job, const FoundPlan& found);

}  // namespace loopwright::command
