// How a command that the page runs learns which folder is the page's own.
//
// Why: what a command writes for a pupil is noted in the book, for the day on which the pupil is erased. What lies in that
// folder is handed to the browser and gone when the job is.
#pragma once

namespace loopwright::page {

/// Name of an environment variable: the folder, absolute. Not set for commands of the command line.
inline constexpr const char* scratch_variable = "LOOPWRIGHT_SCRATCH";

}  // namespace loopwright::page
