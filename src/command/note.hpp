// What one does with a notes file; see note.cpp.
#pragma once

#include <string>

#include "loopwright/command/command.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::command {

Exit note_add(const Arguments& words);
Exit note_change(const Arguments& words);
Exit note_drop(const Arguments& words);
Exit note_list(const Arguments& words);
Exit note_check(const Arguments& words);

/// "narrow", "practice meeting-traffic", "limit 20 mph", "never Mo-Fr 08:00-09:00"
std::string note_text(const road::Note& note);

/// Tells on standard output what is odd of it there. Throws UsageError for a note that is seen on a day yet to come, or would
/// change nothing on that map: it wouldn't be told later either.
void need_effect(const road::Roads& map, const road::Note& note);

/// The beginning of a day, for laying notes that hold on it.
road::LessonTime day_in(const road::AreaInfo& area, const Date& day);

/// "2026-10-03". Throws UsageError.
Date day_of(std::string_view option, std::string_view text);

}  // namespace loopwright::command
