// A loop that was found before, and looked at, as a pupil's lesson: nothing is searched.
//
//   KeptPlan kept = picked_loop(book, job, {pupil, record, "loops.json", 2});
//   if (kept.found) number = keep_plan(book, job, *kept.found);
//
// Rules: the wish is the file's, and must begin at the pupil's door unless another was said. What the book adds to a plan,
// the ledger of streets and the kinds that are kept off for the pupil, the loop is held to and proved by.
#pragma once

#include <filesystem>
#include <string>

#include "command/plan_job.hpp"
#include "loopwright/book/pupil.hpp"

namespace loopwright::command {

struct LoopPick {
  const book::Pupil& pupil;
  const PupilRecord& record;
  std::filesystem::path file;
  int loop = 1;
  std::string home = {};  ///< as typed: where it begins when that isn't the pupil's door
};

/// The loop as a plan of its own, or why it can't be this pupil's. Fills in what the job asks for, and which lesson it
/// takes the place of. Throws UsageError when the file has no such loop or begins at another door, InputError when it is of
/// another area, Error when a claim of it is false.
KeptPlan picked_loop(const book::Book& book, PlanJob& job, const LoopPick& pick);

}  // namespace loopwright::command
