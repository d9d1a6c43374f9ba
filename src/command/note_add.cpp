// Method:
//   1. Words become a note; a value that its kind has no use for is refused, as in the file.
//   2. The place is looked up in the area; with --to the note follows the road between the two.
//   3. A note that would change nothing there is refused: it wouldn't be told later either.
//   4. Under a lock on its folder the file is read, the note appended, and all of it written whole.
#include <fcntl.h>
#include <sys/file.h>
#include <unistd.h>

#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "command/ground.hpp"
#include "command/lane_of_street.hpp"
#include "command/note.hpp"
#include "command/places.hpp"
#include "command/print.hpp"
#include "command/road_between.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::command {
namespace {

using road::Note;
using road::NoteKind;

constexpr Between headings{0, 359}, lengths{1, 1000}, limits{5, 150};

struct AddTexts {
  std::string notes, area, at, to, says, kind, hours, from, until, limit, length, heading, seen;
  std::string remark;
  bool along = false;
};

struct AddJob {
  AreaTexts area;
  WrittenPlace at;
  std::optional<WrittenPlace> to;
  Note note;  ///< its line is filled in once the area is open
};

void add_options(Options& app, AddTexts& texts) {
  app.add_option("NOTES", texts.notes, "notes file; made when it isn't there")->required();
  app.add_option("--area", texts.area, "area file")->required();
  app.add_option("--at", texts.at, place_help("where: "))->required();
  app.add_option("--to", texts.to, "to where along the road, as --at (default: at one point)");
  app.add_option("--says", texts.says,
                 "narrow, pull-up, never, closed, hump, plate, limit, practice or not")
      ->required();
  app.add_option("--kind", texts.kind, "practice, not: the kind, such as meeting-traffic");
  app.add_option("--hours", texts.hours, "never, plate: such as \"Mo-Fr 08:00-09:00\"");
  app.add_option("--from", texts.from, "closed: the first day, 2026-10-03");
  app.add_option("--until", texts.until, "closed: the last day");
  app.add_option("--limit", texts.limit, "limit: such as \"20 mph\"");
  app.add_option("--length", texts.length, "pull-up: metres of room");
  app.add_option("--heading", texts.heading,
                 "only for who drives this compass heading, 0 to 359; without --to");
  app.add_flag("--along", texts.along, "only for who drives from --at towards --to");
  app.add_option("--seen", texts.seen, "the day on which you saw it, 2026-10-03")->required();
  app.add_option("--remark", texts.remark, "for yourself");
}

NoteKind says_of(const std::string& text) {
  if (const auto says = road::parse_note_kind(text)) return *says;
  throw UsageError(
      "--says takes narrow, pull-up, never, closed, hump, plate, limit, practice or not, not '" +
      text + "'");
}

/// Whether a kind of note has a value.
enum class Has { no, perhaps, always };

/// A value is given where the note has one, and only there.
void check_value(const AddTexts& texts, std::string_view option, const std::string& value,
                 Has has) {
  if (has == Has::no && !value.empty()) {
    throw UsageError(std::string(option) + " has no meaning for a note that says " + texts.says);
  }
  if (has == Has::always && value.empty()) {
    throw UsageError("a note that says " + texts.says + " needs " + std::string(option));
  }
}

void check_values(NoteKind says, const AddTexts& texts) {
  const auto only = [&](NoteKind kind, Has has) { return says == kind ? has : Has::no; };
  const bool of_kind = says == NoteKind::practice || says == NoteKind::not_so;
  const Has plate_hours = only(NoteKind::plate, Has::always);
  const Has first_day = texts.until.empty() ? Has::always : Has::perhaps;
  check_value(texts, "--kind", texts.kind, of_kind ? Has::always : Has::no);
  check_value(texts, "--hours", texts.hours, says == NoteKind::never ? Has::perhaps : plate_hours);
  check_value(texts, "--from", texts.from, only(NoteKind::closed, first_day));
  check_value(texts, "--until", texts.until, only(NoteKind::closed, Has::perhaps));
  check_value(texts, "--limit", texts.limit, only(NoteKind::limit, Has::always));
  check_value(texts, "--length", texts.length, only(NoteKind::pull_up, Has::perhaps));
  if (!texts.to.empty() && !texts.heading.empty()) {
    throw UsageError("--heading is for a point; with --to give --along");
  }
  if (texts.to.empty() && texts.along) throw UsageError("--along is for a line, which takes --to");
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

Note note_of(const AddTexts& texts) {
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
  if (!texts.heading.empty()) note.heading_deg = whole_number("--heading", texts.heading, headings);
  if (texts.along) note.way = road::NoteWay::along;
  note.seen = day_of("--seen", texts.seen);
  note.remark = texts.remark;
  return note;
}

std::optional<AddJob> add_job_of(const Arguments& words) {
  Options app{"Writes one more note into a notes file.", "loopwright note add"};
  AddTexts texts;
  add_options(app, texts);
  if (!parse(app, words)) return std::nullopt;
  AddJob job{{texts.area, texts.notes, {}}, read_place("--at", texts.at), {}, note_of(texts)};
  if (!texts.to.empty()) job.to = read_place("--to", texts.to);
  return job;
}

/// Step 3.
void need_effect(const road::Roads& map, const Note& note) {
  const mark::Noted noted =
      mark::with_notes(map, std::span(&note, 1), day_in(map.info(), note.seen));
  for (const mark::NoteFinding& finding : noted.findings()) {
    if (finding.verdict == mark::NoteVerdict::left_out) {
      throw UsageError("not written, it would change nothing: " + finding.text);
    }
    std::cout << "note: " << finding.text << '\n';
  }
}

/// Holds off others that add a note in the same folder until this one is written.
class FolderLock {
 public:
  explicit FolderLock(const std::filesystem::path& file)
      : folder_(open(file.has_parent_path() ? file.parent_path().c_str() : ".",
                     O_RDONLY | O_DIRECTORY | O_CLOEXEC)) {
    if (folder_ >= 0) flock(folder_, LOCK_EX);
  }
  ~FolderLock() {
    if (folder_ >= 0) close(folder_);
  }
  FolderLock(const FolderLock&) = delete;
  FolderLock& operator=(const FolderLock&) = delete;

 private:
  int folder_;
};

/// A plate on a street that is named by words: along its bus lane, when the words' place isn't beside it.
void lay_along_lane(Note& note, const WrittenPlace& at, const road::Roads& map) {
  if (note.says != NoteKind::plate || at.at || note.line.size() > 1) return;
  const auto lane = lane_of_street(map, note.line.front(), at.option + ": '" + at.text + "'");
  if (!lane) return;
  if (note.heading_deg)
    throw UsageError("--heading is for a point; the only bus lane there is " + lane->told);
  note.line = lane->line;
  note.way = lane->both_ways ? road::NoteWay::both : road::NoteWay::along;
  std::cout << "set along " << lane->told << '\n';
}

Exit run(AddJob job) {
  const std::filesystem::path path = job.area.notes;
  need_folder_of(path);
  need_own_file(path, {job.area.area});
  const FolderLock lock(path);
  const store::Area area = store::open_area(job.area.area);
  auto file = std::filesystem::exists(path) ? file::NotesFile::load(path) : file::NotesFile();
  if (job.note.seen > moment(std::nullopt, area.roads().info()).civil().date) {
    throw UsageError("--seen: " + road::day_text(job.note.seen) + " is yet to come");
  }
  Places places(area.roads(), std::cout);
  const Point at = places.find(job.at);
  job.note.line = {at};
  if (job.to) job.note.line = road_between(area.roads(), at, places.find(*job.to));
  lay_along_lane(job.note, job.at, area.roads());
  need_effect(area.roads(), job.note);
  file.add(job.note);
  store::write_whole(path, file.text());
  std::cout << path.string() << ": note " << file.notes().size()
            << " written: " << note_text(job.note) << '\n';
  return Exit::done;
}

}  // namespace

Exit note_add(const Arguments& words) {
  std::optional<AddJob> job = add_job_of(words);
  return job ? run(std::move(*job)) : Exit::done;
}

}  // namespace loopwright::command
