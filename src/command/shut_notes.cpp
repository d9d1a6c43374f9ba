// A noted road isn't driven, so that places are set on the next one, and the lists of what has hours
// don't have it: without a word nobody would know why.
#include "command/shut_notes.hpp"

#include <algorithm>
#include <optional>
#include <ostream>

#include "command/facts.hpp"
#include "command/folded.hpp"
#include "command/note.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/reach/reach.hpp"

namespace loopwright::command {
namespace {

bool shuts(const road::Note& note) {
  return note.says == road::NoteKind::never || note.says == road::NoteKind::closed;
}

std::string street_at(const road::Roads& roads, PieceId piece) {
  return road_name(roads, roads.pieces[piece.index()]);
}

/// Of a line its middle, since an end may lie at a junction.
Point inside(const road::Note& note) {
  if (note.line.size() == 1) return note.line.front();
  return point_along(note.line, length_m(note.line) / 2);
}

/// The nearest road of the map within a note's reach.
std::optional<std::string> street_of(const road::Roads& map, const road::Note& note) {
  const auto snap = reach::snap_home(map, inside(note), road::note_reach_m);
  if (!snap) return std::nullopt;
  return street_at(map, snap->piece);
}

bool lies_in(const road::Note& note, const Around& around) {
  return around.places.empty() || std::ranges::any_of(around.places, [&](Point place) {
           const double off_m = note.line.size() == 1 ? distance_m(note.line.front(), place)
                                                      : nearest_on_line(note.line, place).off_m;
           return off_m <= around.within_m;
         });
}

/// Some of a note's line, looked at every 10 m, is nearest to a piece; its very ends may lie at a junction.
bool lies_on(const road::Roads& map, const road::Note& note, PieceId piece) {
  constexpr double step_m = 10;
  const double length = note.line.size() == 1 ? 0 : length_m(note.line);
  const auto nearest_is = [&](Point at) {
    const auto snap = reach::snap_home(map, at, road::note_reach_m);
    return snap && snap->piece == piece;
  };
  if (length < step_m) return nearest_is(inside(note));
  for (double along = step_m / 2; along < length; along += step_m)
    if (nearest_is(point_along(note.line, along))) return true;
  return false;
}

/// Without a lesson whether it is shut isn't told.
void tell(std::ostream& out, const Ground& ground, const road::Note& note,
          const road::LessonTime* lesson) {
  const auto street = street_of(ground.map(), note);
  if (!street) return;
  std::string then;
  if (lesson != nullptr) then = road::may_shut(note, *lesson) ? ": keep out" : ": may be driven";
  const std::string remark = note.remark.empty() ? "" : " (" + printable(note.remark) + ")";
  print_folded(out, 2, "your note: " + *street + ", " + note_text(note) + remark + then);
}

}  // namespace

void tell_moved_places(std::ostream& out, const Ground& ground, const road::Roads& roads,
                       std::span<const NamedPlace> places) {
  if (ground.notes().empty()) return;
  for (const NamedPlace& place : places) {
    const auto on_map = reach::snap_home(ground.map(), place.at);
    const auto noted = reach::snap_home(roads, place.at);
    if (!on_map || !noted || on_map->piece == noted->piece) continue;
    print_folded(out, 0,
                 place.name + " is set on " + street_at(roads, noted->piece) +
                     ", since your notes keep you off " + street_at(ground.map(), on_map->piece) +
                     " then");
  }
}

void tell_notes_on(std::ostream& out, const Ground& ground, const road::LessonTime& lesson,
                   PieceId piece) {
  for (const road::Note& note : ground.notes())
    if (shuts(note) && lies_on(ground.map(), note, piece)) tell(out, ground, note, &lesson);
}

void tell_shut_notes(std::ostream& out, const Ground& ground,
                     const std::optional<road::LessonTime>& lesson, const Around& around) {
  for (const road::Note& note : ground.notes()) {
    if (shuts(note) && lies_in(note, around)) tell(out, ground, note, lesson ? &*lesson : nullptr);
  }
}

}  // namespace loopwright::command
