// One note as a GeoJSON feature, in and out.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "file/cursor.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::file {

/// Throws InputError naming the member that isn't as it should be.
road::Note read_note(const Cursor& feature);

nlohmann::ordered_json json_of(const road::Note& note);

}  // namespace loopwright::file
