// The area as the page at the desk has it open: the map, and the roads as the notes make them at this moment.
//
//   const auto area = open_for_desk({"town.area", "notes.geojson", ""});   area->noted(start, 60);
//
// Rules: the notes are read anew when their file was written since; a notes file that isn't there yet holds none.
// Throws InputError.
#pragma once

#include <memory>

#include "command/ground.hpp"
#include "loopwright/page/page.hpp"

namespace loopwright::command {

std::unique_ptr<page::OpenArea> open_for_desk(const AreaTexts& texts);

}  // namespace loopwright::command
