#include "command/ground.hpp"

#include <cassert>
#include <iostream>

namespace loopwright::command {

void add_area(CLI::App& app, AreaTexts& texts) {
  app.add_option("AREA", texts.area, "area file")->required();
  app.add_option("--notes", texts.notes, "your notes on its roads (see 'loopwright note --help')");
}

Ground::Ground(const AreaTexts& texts)
    : notes_path_(texts.notes), area_(store::open_area(texts.area)) {
  if (!texts.notes.empty()) notes_ = file::NotesFile::load(texts.notes);
}

std::span<const road::Note> Ground::notes() const {
  return notes_ ? notes_->notes() : std::span<const road::Note>();
}

std::optional<wish::NotesName> Ground::notes_name() const {
  if (!notes_) return std::nullopt;
  return wish::NotesName{notes_path_.filename().string(), notes_->sha256()};
}

const road::Roads& Ground::for_lesson(const road::LessonTime& lesson) {
  if (!notes_) return map();
  noted_ = mark::with_notes(map(), notes(), lesson);
  for (const mark::NoteFinding& finding : noted_->findings()) {
    if (finding.verdict != mark::NoteVerdict::left_out) continue;
    const road::Note& note = notes()[finding.note];
    std::cerr << "loopwright: " << notes_path_.string() << ": note " << finding.note + 1 << " ("
              << road::name(note.says) << ") is left out: " << finding.text << '\n';
  }
  return roads();
}

proof::NotedArea Ground::noted() const {
  assert(!notes_ || noted_);
  return {map(), roads(), notes()};
}

}  // namespace loopwright::command
