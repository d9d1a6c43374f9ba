// Junctions, crossings, humps and manoeuvres that notes add or take away.
#pragma once

#include "loopwright/road/note.hpp"
#include "overlay.hpp"

namespace loopwright::mark {

/// Adds the chances of a noted kind that is no run of road. What it says is empty when it did, else
/// why it can't.
std::string add_noted_place(Overlay& over, const road::Note& note);

/// Takes away the chances of the nearest place of the note's kind; false when there is none.
bool take_noted_place(Overlay& over, const road::Note& note);

/// True when the map is sure of a place of the kind within reach of the note.
bool map_is_sure(const road::Roads& base, const road::Note& note, road::Kind kind);

}  // namespace loopwright::mark
