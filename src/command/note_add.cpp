// Method:
//   1. Words become a note (note_texts.hpp), and say which way one must come by.
//   2. The place is looked up in the area; with --to the note follows the road between the two.
//   3. A note that would change nothing there is refused: it wouldn't be told later either.
//   4. Under a lock on its folder the file is read, the note appended, and all of it written whole.
#include <iostream>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "command/folder_lock.hpp"
#include "command/ground.hpp"
#include "command/lane_of_street.hpp"
#include "command/note.hpp"
#include "command/note_texts.hpp"
#include "command/places.hpp"
#include "command/print.hpp"
#include "command/road_between.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/hours.hpp"

namespace loopwright::command {
namespace {

using road::Note;
using road::NoteKind;

constexpr Between headings{0, 359};

struct AddTexts {
  std::string notes, area, at, to, heading;
  bool along = false;
  NoteTexts note;
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
  add_note_options(app, texts.note, NoteTold::wholly);
  app.add_option("--heading", texts.heading,
                 "only for who drives this compass heading, 0 to 359; without --to");
  app.add_flag("--along", texts.along, "only for who drives from --at towards --to");
}

/// Which way one must come by for it to hold.
void read_way(Note& note, const AddTexts& texts) {
  if (!texts.to.empty() && !texts.heading.empty()) {
    throw UsageError("--heading is for a point; with --to give --along");
  }
  if (texts.to.empty() && texts.along) throw UsageError("--along is for a line, which takes --to");
  if (!texts.heading.empty()) note.heading_deg = whole_number("--heading", texts.heading, headings);
  if (texts.along) note.way = road::NoteWay::along;
}

std::optional<AddJob> add_job_of(const Arguments& words) {
  Options app{"Writes one more note into a notes file.", "loopwright note add"};
  AddTexts texts;
  add_options(app, texts);
  if (!parse(app, words)) return std::nullopt;
  AddJob job{{texts.area, texts.notes, {}}, read_place("--at", texts.at), {}, note_of(texts.note)};
  read_way(job.note, texts);
  if (!texts.to.empty()) job.to = read_place("--to", texts.to);
  return job;
}

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

void need_effect(const road::Roads& map, const Note& note) {
  if (note.seen > moment(std::nullopt, map.info()).civil().date)
    throw UsageError("--seen: " + road::day_text(note.seen) + " is yet to come");
  const mark::Noted noted =
      mark::with_notes(map, std::span(&note, 1), day_in(map.info(), note.seen));
  for (const mark::NoteFinding& finding : noted.findings()) {
    if (finding.verdict == mark::NoteVerdict::left_out) {
      throw UsageError("not written, it would change nothing: " + finding.text);
    }
    std::cout << "note: " << finding.text << '\n';
  }
}

Exit note_add(const Arguments& words) {
  std::optional<AddJob> job = add_job_of(words);
  return job ? run(std::move(*job)) : Exit::done;
}

}  // namespace loopwright::command
