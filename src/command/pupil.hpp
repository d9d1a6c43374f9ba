// What one does with the pupils of a book; see pupil.cpp.
#pragma once

#include "loopwright/command/command.hpp"

namespace loopwright::command {

Exit pupil_add(const Arguments& words);
Exit pupil_change(const Arguments& words);
Exit pupil_list(const Arguments& words);
Exit pupil_show(const Arguments& words);
Exit pupil_not_met(const Arguments& words);
Exit pupil_export(const Arguments& words);
Exit pupil_erase(const Arguments& words);
Exit pupil_purge(const Arguments& words);
Exit pupil_backup(const Arguments& words);
Exit pupil_restore(const Arguments& words);

}  // namespace loopwright::command
