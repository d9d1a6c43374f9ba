// Method: words become a note; a value that its kind has no use for is refused, as in the file.
#include "command/note_texts.hpp"

#include <cmath>

#include "command/arguments.hpp"
#include "command/note.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::command {
namespace {

using road::Note;
using road::NoteKind;

constexpr Between lengths{1, 1000}, limits{5, 150};

NoteKind says_of(const std::string& text) {
  if (const auto says = road::parse_note_kind(text)) return *says;
  throw UsageError(
      "--says takes narrow, pull-up, never, closed, hump, plate, limit, practice or not, not '" +
      text + "'");
}

/// Whether a kind of note has a value.
enum class Has { no, perhaps, always };

/// A value is given where the note has one, and only there.
void check_value(const NoteTexts& texts, std::string_view option, const std::string& value,
                 Has has) {
  if (has == Has::no && !value.empty()) {
    throw UsageError(std::string(option) + " has no meaning for a note that says " + texts.says);
  }
  if (has == Has::always && value.empty()) {
    throw UsageError("a note that says " + texts.says + " needs " + std::string(option));
  }
}

void check_values(NoteKind says, const NoteTexts& texts) {
  const auto only = [&](NoteKind kind, Has has) { return says == kind ? has : Has::no; };
  const bool of_kind = says == NoteKind::practice || says == NoteKind::not_so;
  const bool never = says == NoteKind::never;
  const Has plate_hours = only(NoteKind::plate, Has::always);
  const Has closed_from = only(NoteKind::closed, texts.until.empty() ? Has::always : Has::perhaps);
  check_value(texts, "--kind", texts.kind, of_kind ? Has::always : Has::no);
  check_value(texts, "--hours", texts.hours, never ? Has::perhaps : plate_hours);
  check_value(texts, "--from", texts.from, never ? Has::perhaps : closed_from);
  check_value(texts, "--until", texts.until,
              never ? Has::perhaps : only(NoteKind::closed, Has::perhaps));
  check_value(texts, "--limit", texts.limit, only(NoteKind::limit, Has::always));
  check_value(texts, "--length", texts.length, only(NoteKind::pull_up, Has::perhaps));
}

void read_limit(Note& note, const std::string& text) {
  const auto words = split(text, ' ');
  const auto unit = words.size() == 2 ? parse_speed_unit(words[1]) : std::nullopt;
  if (!unit) throw UsageError("--limit takes a number and mph or km/h, not '" + text + "'");
  note.limit = whole_number("--limit", words[0], limits);
  note.unit = *unit;
}

/// Hours nobody can read would only say "check the plate" for ever.
void need_readable(const std::string& text) {
  const hours::Hours hours = hours::read_hours(text);
  if (text.empty() || hours.readable()) return;
  throw UsageError("--hours can't be read at character " + std::to_string(hours.stopped_at() + 1) +
                   " of '" + text + "': " + std::string(hours.problem()) + " was looked for there");
}

}  // namespace

void add_note_options(Options& app, NoteTexts& texts, NoteTold told) {
  auto* says = app.add_option(
      "--says", texts.says, "narrow, pull-up, never, closed, hump, plate, limit, practice or not");
  app.add_option("--kind", texts.kind, "practice, not: the kind, such as meeting-traffic");
  app.add_option("--hours", texts.hours, "never, plate: such as \"Mo-Fr 08:00-09:00\"");
  app.add_option("--from", texts.from, "closed, never: the first day, 2026-10-03");
  app.add_option("--until", texts.until, "closed, never: the last day");
  app.add_option("--limit", texts.limit, "limit: such as \"20 mph\"");
  app.add_option("--length", texts.length, "pull-up: metres of room");
  auto* seen = app.add_option("--seen", texts.seen, "the day on which you saw it, 2026-10-03");
  app.add_option("--remark", texts.remark, "for yourself");
  if (told == NoteTold::in_part) return;
  says->required();
  seen->required();
}

Note note_of(const NoteTexts& texts) {
  Note note;
  note.says = says_of(texts.says);
  check_values(note.says, texts);
  if (!texts.kind.empty()) {
    note.kind = road::parse_kind(texts.kind);
    if (!note.kind) {
      throw UsageError("there is no kind '" + texts.kind + "'; did you mean " +
                       std::string(road::name(road::nearest_kind(texts.kind))) + "?");
    }
  }
  need_readable(texts.hours);
  note.hours = texts.hours;
  if (!texts.from.empty()) note.from = day_of("--from", texts.from);
  if (!texts.until.empty()) note.until = day_of("--until", texts.until);
  if (note.from && note.until && *note.until < *note.from) {
    throw UsageError("--until is before --from");
  }
  if (!texts.limit.empty()) read_limit(note, texts.limit);
  if (!texts.length.empty()) note.length_m = whole_number("--length", texts.length, lengths);
  note.seen = day_of("--seen", texts.seen);
  note.remark = texts.remark;
  return note;
}

NoteTexts texts_of(const Note& note) {
  NoteTexts texts;
  texts.says = road::name(note.says);
  if (note.kind) texts.kind = road::name(*note.kind);
  texts.hours = note.hours;
  if (note.from) texts.from = road::day_text(*note.from);
  if (note.until) texts.until = road::day_text(*note.until);
  if (note.limit != 0)
    texts.limit = std::to_string(note.limit) + " " + std::string(name(note.unit));
  if (note.length_m) texts.length = std::to_string(std::lround(*note.length_m));
  texts.seen = road::day_text(note.seen);
  texts.remark = note.remark;
  return texts;
}

}  // namespace loopwright::command
