// Where on the roads a note belongs.
//
// Rules: private to mark. Only roads that may be driven in a direction the note means are looked at.
#pragma once

#include <optional>
#include <vector>

#include "loopwright/road/note.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

/// A part of a stretch that a note speaks of, in metres from where the stretch is entered.
struct NotedPart {
  StretchId stretch;
  double from_m = 0, to_m = 0;
};

/// Of a point: the nearest road it fits, in each direction it means, from and to at its foot. Of a
/// line: every piece of which it covers enough. Ordered by stretch; empty when nothing is in reach.
std::vector<NotedPart> parts_of(const road::Roads& roads, const road::Note& note);

/// The junction a point lies at: the nearest node in reach where three roads or more meet.
std::optional<NodeId> junction_of(const road::Roads& roads, const road::Note& note);

/// True when the note means traffic of this heading; a note without one means any.
bool means_heading(const road::Note& note, double heading_deg);

}  // namespace loopwright::mark
