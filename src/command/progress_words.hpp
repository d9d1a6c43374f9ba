// What a pupil's progress page says.
#pragma once

#include <string>
#include <vector>

#include "loopwright/book/lesson.hpp"
#include "loopwright/book/pupil.hpp"
#include "loopwright/wish/progress_sheet.hpp"

namespace loopwright::command {

/// Whether faults are told: only when the instructor ticks it, and after ten hours.
enum class FaultsTold { left_out, told };

wish::ProgressSheet progress_sheet(const book::Pupil& pupil,
                                   const std::vector<book::Lesson>& lessons, Date day,
                                   FaultsTold faults);

/// Why a page that should tell faults an hour has none; a line, empty when it has some.
std::string faults_left_out(const std::vector<book::Lesson>& lessons);

}  // namespace loopwright::command
