#include "command/ground.hpp"

#include <cassert>
#include <iostream>

#include "loopwright/base/error.hpp"
#include "loopwright/file/load_text.hpp"
#include "loopwright/road/setting_of.hpp"

namespace loopwright::command {

void add_area(Options& app, AreaTexts& texts) {
  app.add_option("AREA", texts.area, "area file")->required();
  app.add_option("--notes", texts.notes, "your notes on its roads (see 'loopwright note --help')");
  add_terms(app, texts.terms);
}

void add_terms(Options& app, std::string& terms) {
  app.add_option("--terms", terms, "file of your schools' terms: a line each, first and last day");
}

hours::SchoolTerms terms_in(const std::string& file) {
  if (file.empty()) return {};
  hours::SchoolTerms terms =
      hours::read_terms(file::load_text(file, {"file of school terms", {}}), file);
  if (terms.parts().size() > wish::most_term_parts) {
    throw InputError(file + ": has more than " + std::to_string(wish::most_term_parts) +
                     " parts of terms; leave out the old ones");
  }
  return terms;
}

Ground::Ground(const AreaTexts& texts)
    : notes_path_(texts.notes),
      area_(store::open_area(texts.area)),
      terms_path_(texts.terms),
      terms_(terms_in(texts.terms)) {
  if (!texts.notes.empty()) notes_ = file::NotesFile::load(texts.notes);
}

hours::Setting Ground::setting_at(Point place) const {
  return road::setting_of(info(), place, terms_);
}

hours::Setting Ground::setting_of(const wish::Wish& wish) const {
  return road::setting_of(info(), wish.home, wish.terms.value_or(terms_));
}

void Ground::tell_other_terms(const wish::Wish& wish, const std::filesystem::path& file) const {
  if (!wish.terms || terms_path_.empty() || wish.terms->parts() == terms_.parts()) return;
  const std::string given = terms_path_.string();
  std::cerr << "loopwright: " << file.string() << ": was made "
            << (wish.terms->empty()
                    ? "without school terms; those of " + given + " don't count for it"
                    : "with other school terms than " + given + "; its own count")
            << " (to use these, make it again with them)\n";
}

hours::Setting Ground::setting_somewhere() const {
  std::optional<Point> place;
  if (!map().nodes.empty()) place = map().nodes.front().at;
  return road::setting_of(info(), place, terms_);
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
