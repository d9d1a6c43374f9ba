// Method: names by table. A day counts whole: a road closed until the 5th is shut until midnight.
#include "loopwright/road/note.hpp"

#include <algorithm>
#include <array>
#include <cstdio>

#include "loopwright/hours/timetable.hpp"

namespace loopwright::road {
namespace {

constexpr std::array<std::string_view, note_kind_count> note_names{
    "narrow", "pull-up", "never", "closed", "hump", "plate", "limit", "practice", "not"};

constexpr std::array every_note_kind = [] {
  std::array<NoteKind, note_kind_count> all{};
  for (std::size_t k = 0; k < note_kind_count; ++k) all[k] = static_cast<NoteKind>(k);
  return all;
}();

/// Some day of the lesson is one of the note's.
bool touches_days(const Note& note, const LessonTime& lesson) {
  const bool begun = !note.from || *note.from <= lesson.to.civil().date;
  const bool over = note.until && *note.until < lesson.from.civil().date;
  return begun && !over;
}

bool may_be_in_force(const std::string& hours_text, const LessonTime& lesson) {
  if (hours_text.empty()) return true;
  const hours::Timetable hours(hours_text);
  return hours.through(lesson.from, lesson.to, lesson.setting).in_force != hours::Tri::no;
}

}  // namespace

std::string_view name(NoteKind kind) {
  return note_names.at(static_cast<std::size_t>(kind));
}

std::optional<NoteKind> parse_note_kind(std::string_view text) {
  const auto found = std::find(note_names.begin(), note_names.end(), text);
  if (found == note_names.end()) return std::nullopt;
  return static_cast<NoteKind>(found - note_names.begin());
}

std::span<const NoteKind> all_note_kinds() {
  return every_note_kind;
}

std::string day_text(const Date& day) {
  std::array<char, 40> text{};
  std::snprintf(text.data(), text.size(), "%04d-%02d-%02d", day.year, day.month, day.day);
  return text.data();
}

std::string tag_of(const Note& note) {
  const bool by_kind = note.says == NoteKind::practice && note.kind;
  return "noted " + day_text(note.seen) + ": " +
         std::string(by_kind ? name(*note.kind) : name(note.says));
}

std::optional<Kind> practice_of(const Note& note) {
  if (note.says == NoteKind::narrow) return Kind::narrow_road;
  if (note.says == NoteKind::hump) return Kind::calming;
  return note.kind;
}

LessonTime lesson_time(const Instant& start, int minutes, const hours::Setting& setting) {
  return {setting.on_clock(start), setting.on_clock(start.plus_seconds(std::int64_t{60} * minutes)),
          setting};
}

bool may_shut(const Note& note, const LessonTime& lesson) {
  if (note.says != NoteKind::closed && note.says != NoteKind::never) return false;
  return touches_days(note, lesson) &&
         (note.says == NoteKind::closed || may_be_in_force(note.hours, lesson));
}

Confidence less_sure(Confidence a, Confidence b) {
  if (a == Confidence::inferred || b == Confidence::inferred) return Confidence::inferred;
  return a == Confidence::noted || b == Confidence::noted ? Confidence::noted : Confidence::certain;
}

}  // namespace loopwright::road
