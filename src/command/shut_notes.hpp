// What the instructor's own notes keep one off: told wherever it changes what was asked for.
#pragma once

#include <iosfwd>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "command/ground.hpp"
#include "command/lanes_all.hpp"

namespace loopwright::command {

/// A place of a drive and what it is called: "home", "point 1", or what was typed.
struct NamedPlace {
  std::string name;
  Point at;
};

/// "home is set on Cider Lane, since your notes keep you off Costard Road": of each place whose nearest
/// road is another one because a note shuts it for this lesson. roads: the ground's, for that lesson.
void tell_moved_places(std::ostream& out, const Ground& ground, const road::Roads& roads,
                       std::span<const NamedPlace> places);

/// A line for each note that shuts a road around some places (all, when none are given): the street,
/// what the note says, and whether it is shut in a lesson, when one is given.
void tell_shut_notes(std::ostream& out, const Ground& ground,
                     const std::optional<road::LessonTime>& lesson, const Around& around);

/// The same of the notes that shut one piece of the map's roads.
void tell_notes_on(std::ostream& out, const Ground& ground, const road::LessonTime& lesson,
                   PieceId piece);

}  // namespace loopwright::command
