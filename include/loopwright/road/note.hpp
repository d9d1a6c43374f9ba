// What the instructor knows better than the map: one note for one thing at one place.
//
//   Note{.says = NoteKind::narrow, .line = {at}, .seen = {2026, 10, 3}}
//
// Rules: `line` is one point, or a line along the road of two or more. A point speaks of the road it
// lies on from junction to junction, or of the junction it lies at; both directions unless `heading`
// says otherwise. `seen` is the day on which the instructor saw it. The values that a kind needs and
// what each means: "Notes file" in DEVELOPERS.md.
// Why: a note beats a guess of ours, never a sign; what it adds is "noted", never "certain".
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/base/point.hpp"
#include "loopwright/base/region.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/road/kind.hpp"

namespace loopwright::road {

enum class NoteKind : std::uint8_t {
  narrow,    ///< two cars don't fit
  pull_up,   ///< a good place to stop
  never,     ///< not driven at these hours, on these days, or at all
  closed,    ///< shut from one day to another
  hump,      ///< calming that isn't mapped
  plate,     ///< the hours on the plate of a bus lane
  limit,     ///< the limit on the signs
  practice,  ///< a kind of practice is to be had here
  not_so,    ///< the map tells of a kind here, and it isn't so
};
inline constexpr std::size_t note_kind_count = static_cast<std::size_t>(NoteKind::not_so) + 1;
std::string_view name(NoteKind kind);  // "narrow", "pull-up" … "not"
std::optional<NoteKind> parse_note_kind(std::string_view text);
std::span<const NoteKind> all_note_kinds();

/// Of a line: in the order of its points only, or both ways.
enum class NoteWay : std::uint8_t { both, along };

struct Note {
  NoteKind says = NoteKind::narrow;
  std::vector<Point> line = {};
  NoteWay way = NoteWay::both;          ///< lines only
  std::optional<int> heading_deg = {};  ///< points only: of who drives there, 0 to 359
  std::optional<Kind> kind = {};        ///< practice, not: of what
  std::string hours = {};               ///< never, plate: as of hours::Timetable; empty: always
  std::optional<Date> from = {}, until = {};  ///< closed, never: first and last day
  int limit = 0;                              ///< limit: the number
  SpeedUnit unit = SpeedUnit::mph;            ///< limit: its unit
  std::optional<double> length_m = {};        ///< pull-up: room along the kerb
  Date seen = {};
  std::string remark = {};  ///< for people
};

/// "2026-10-03"
std::string day_text(const Date& day);

/// "noted 2026-10-03: narrow", the tag of what the note adds. Practice is told by its kind.
std::string tag_of(const Note& note);

/// The kind of practice a note adds or, for `not`, takes away; none for the others.
std::optional<Kind> practice_of(const Note& note);

/// How far from its road a note may lie; ours: a pavement's width and what a finger misses on a map.
inline constexpr double note_reach_m = 30;

/// A lesson's time, its ends included, on the clock of the place; and what its hours are read by.
struct LessonTime {
  Instant from, to;
  hours::Setting setting;
};

/// So many minutes from a start.
LessonTime lesson_time(const Instant& start, int minutes, const hours::Setting& setting);

/// True when the road of a `never` or `closed` note is or may be shut at some minute of the lesson:
/// hours that nobody can tell count as shut.
bool may_shut(const Note& note, const LessonTime& lesson);

/// The one less sure of the two: a guess of ours, then a note, then a tag.
Confidence less_sure(Confidence a, Confidence b);

}  // namespace loopwright::road
