// Method: the first word says what to do.
//   1. list: a row for each note, as the file has them.
//   2. check: what is old (seen more than a year ago), what is over, and what room mark finds when it
//      lays the notes on the area: left out, said by the map too, or against a sign.
#include "command/note.hpp"

#include <array>
#include <iostream>

#include "command/arguments.hpp"
#include "command/deeds.hpp"
#include "command/ground.hpp"
#include "command/print.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/road/setting_of.hpp"

namespace loopwright::command {
namespace {

constexpr int days_a_year = 365;

constexpr std::array deeds{
    Deed{"add", "write one more note into a notes file", note_add},
    Deed{"change", "change what a note says, or the day on which it was seen", note_change},
    Deed{"drop", "take a note out", note_drop},
    Deed{"list", "show the notes of a file", note_list},
    Deed{"check", "tell which notes are old, needless or without effect in an area", note_check},
};

std::string verdict_text(mark::NoteVerdict verdict) {
  switch (verdict) {
    case mark::NoteVerdict::left_out:
      return "changes nothing here: ";
    case mark::NoteVerdict::agrees:
      return "can be deleted: ";
    case mark::NoteVerdict::contradicts:
      return "look again: ";
  }
  return {};
}

/// What is to be said of one note, each thing a line.
std::vector<std::string> said_of(const road::Note& note, std::size_t row, const mark::Noted& noted,
                                 Date today) {
  std::vector<std::string> said;
  if (days_since_epoch(today) - days_since_epoch(note.seen) > days_a_year) {
    said.push_back("look again: seen " + road::day_text(note.seen) + ", more than a year ago");
  }
  if (note.until && *note.until < today) {
    said.push_back("can be deleted: over since " + road::day_text(*note.until));
  }
  for (const mark::NoteFinding& finding : noted.findings()) {
    if (finding.note == row) said.push_back(verdict_text(finding.verdict) + finding.text);
  }
  return said;
}

struct CheckJob {
  AreaTexts area;
  std::optional<Date> today;
};

std::optional<CheckJob> check_job_of(const Arguments& words) {
  Options app{"Tells which notes are old, needless or without effect.", "loopwright note check"};
  CheckJob job;
  std::string today;
  app.add_option("NOTES", job.area.notes, "notes file")->required();
  app.add_option("AREA", job.area.area, "area file")->required();
  app.add_option("--today", today, "date, 2026-11-28 (default: today)");
  if (!parse(app, words)) return std::nullopt;
  if (!today.empty()) job.today = day_of("--today", today);
  return job;
}

Exit check(const CheckJob& job) {
  const store::Area area = store::open_area(job.area.area);
  const auto file = file::NotesFile::load(job.area.notes);
  const Date today = job.today.value_or(moment(std::nullopt, area.roads().info()).civil().date);
  const mark::Noted noted =
      mark::with_notes(area.roads(), file.notes(), day_in(area.roads().info(), today));
  std::size_t fine = 0;
  for (std::size_t row = 0; row < file.notes().size(); ++row) {
    const road::Note& note = file.notes()[row];
    const auto said = said_of(note, row, noted, today);
    if (said.empty()) ++fine;
    for (const std::string& line : said) {
      std::cout << "note " << row + 1 << " (" << note_text(note) << ", "
                << degrees(note.line.front()) << "): " << line << '\n';
    }
  }
  std::cout << job.area.notes << ": notes " << file.notes().size() << ", nothing to say of " << fine
            << '\n';
  return Exit::done;
}

}  // namespace

std::string note_text(const road::Note& note) {
  std::string text(road::name(note.says));
  const auto add = [&](std::string_view more) { text.append(" ").append(more); };
  if (note.kind) add(road::name(*note.kind));
  if (note.limit != 0) add(std::to_string(note.limit) + " " + std::string(name(note.unit)));
  if (!note.hours.empty()) add(printable(note.hours));
  if (note.from) add("from " + road::day_text(*note.from));
  if (note.until) add("until " + road::day_text(*note.until));
  return text;
}

Date day_of(std::string_view option, std::string_view text) {
  if (const auto date = read_date(text)) return *date;
  throw UsageError(std::string(option) + " takes a date, such as 2026-10-03, not " +
                   as_given(text));
}

road::LessonTime day_in(const road::AreaInfo& area, const Date& day) {
  const Instant midnight = hours::instant_in(area.zone, {day, 0, 0, 0});
  return road::lesson_time(midnight, 0, road::setting_of(area, std::nullopt));
}

Exit note_list(const Arguments& words) {
  Options app{"Shows the notes of a file.", "loopwright note list"};
  std::string path;
  app.add_option("NOTES", path, "notes file")->required();
  if (!parse(app, words)) return Exit::done;
  const auto file = file::NotesFile::load(path);
  Table table({"note", "says", "where", "seen", "remark"});
  for (std::size_t row = 0; row < file.notes().size(); ++row) {
    const road::Note& note = file.notes()[row];
    const std::string to = note.line.size() > 1 ? " to " + degrees(note.line.back()) : "";
    table.add({std::to_string(row + 1), note_text(note), degrees(note.line.front()) + to,
               road::day_text(note.seen), printable(note.remark)});
  }
  table.print(std::cout);
  return Exit::done;
}

Exit note_check(const Arguments& words) {
  const std::optional<CheckJob> job = check_job_of(words);
  return job ? check(*job) : Exit::done;
}

Exit note(const Arguments& words) {
  return run_deed("note",
                  "Keeps what you know better than the map, for --notes of the other commands.",
                  deeds, words);
}

}  // namespace loopwright::command
