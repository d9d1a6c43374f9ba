// The roads as the instructor's notes make them: what the map says, overridden and added to.
//
//   const Noted noted = with_notes(area.roads(), notes, {start, end});   find(noted.roads(), …);
//
// Rules: owns only the columns that a note changes, the others stay views of the base, which must
// outlive it. A note is laid on the nearest road it fits within road::note_reach_m, in both directions
// unless it names one. What it adds is Confidence::noted with the note's tag; a fact that a tag is
// sure of stays the map's. A road that is or may be shut at some minute of the lesson isn't driven.
// Why: a copy of a country for each lesson would be too slow; a changed run of road gets a new row of
// places, and nothing refers to the old one any more.
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "loopwright/road/note.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

enum class NoteVerdict : std::uint8_t {
  left_out,     ///< it changes nothing here: no road within reach, too short for a pass …
  agrees,       ///< the map says the same, for sure
  contradicts,  ///< the map says otherwise, for sure; the note has its way
};

struct NoteFinding {
  std::size_t note = 0;  ///< row in the notes
  NoteVerdict verdict = NoteVerdict::left_out;
  std::string text;  ///< "no road that it fits within 30 m"
};

class Noted {
 public:
  Noted(road::Tables own, road::Roads roads, std::vector<NoteFinding> findings)
      : own_(std::move(own)), roads_(std::move(roads)), findings_(std::move(findings)) {}
  Noted(Noted&&) noexcept = default;  // vectors keep their rows where they are
  Noted& operator=(Noted&&) noexcept = default;

  [[nodiscard]] const road::Roads& roads() const { return roads_; }
  /// In the order of the notes.
  [[nodiscard]] std::span<const NoteFinding> findings() const { return findings_; }

 private:
  road::Tables own_;
  road::Roads roads_;
  std::vector<NoteFinding> findings_;
};

Noted with_notes(const road::Roads& base, std::span<const road::Note> notes,
                 const road::LessonTime& lesson);

}  // namespace loopwright::mark
