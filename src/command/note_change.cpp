// Method:
//   1. change: what is said beats what the note says, and what it is to say no longer goes first; where it lies stays.
//      Another kind of note keeps only day and remark.
//   2. drop: the note goes, those behind it move up.
//   Both are done under a lock on the folder: the file is read, changed and written whole.
#include <algorithm>
#include <array>
#include <iostream>
#include <string_view>
#include <vector>

#include "command/arguments.hpp"
#include "command/files.hpp"
#include "command/folder_lock.hpp"
#include "command/ground.hpp"
#include "command/note.hpp"
#include "command/note_texts.hpp"
#include "command/print.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/file/notes_file.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::command {
namespace {

/// The place in the file of a note by its number. Throws UsageError.
std::size_t row_of(const std::string& text, const file::NotesFile& notes) {
  const int most = static_cast<int>(notes.notes().size());
  if (most == 0) throw UsageError("the file has no note");
  return static_cast<std::size_t>(whole_number("NUMBER", text, {1, most})) - 1;
}

/// What is said, and where nothing is, what the note says.
NoteTexts changed(const NoteTexts& said, const NoteTexts& was) {
  const auto either = [](const std::string& now, const std::string& before) {
    return now.empty() ? before : now;
  };
  NoteTexts texts = said;
  texts.seen = either(said.seen, was.seen);
  texts.remark = either(said.remark, was.remark);
  if (!said.says.empty() && said.says != was.says) return texts;
  texts.says = was.says;
  texts.kind = either(said.kind, was.kind);
  texts.hours = either(said.hours, was.hours);
  texts.from = either(said.from, was.from);
  texts.until = either(said.until, was.until);
  texts.limit = either(said.limit, was.limit);
  texts.length = either(said.length, was.length);
  return texts;
}

/// What a note may say or not, by the name of its option.
struct Sayable {
  std::string_view name;
  std::string NoteTexts::*text;
};
constexpr std::array sayable{Sayable{"remark", &NoteTexts::remark},
                             Sayable{"hours", &NoteTexts::hours}, Sayable{"from", &NoteTexts::from},
                             Sayable{"until", &NoteTexts::until},
                             Sayable{"length", &NoteTexts::length}};

/// Throws UsageError.
void refuse_both(const std::string& name) {
  throw UsageError("--without " + name + ": --" + name + " says another; give one of them");
}

/// What the note says, but for these. Throws UsageError for what it must say, or what is said anew as well.
NoteTexts without(NoteTexts was, const std::vector<std::string>& names, const NoteTexts& said) {
  for (const std::string& name : names) {
    const auto which = std::ranges::find(sayable, name, &Sayable::name);
    if (which == sayable.end()) {
      throw UsageError("--without takes remark, hours, from, until or length, not '" + name + "'");
    }
    if (!(said.*which->text).empty()) refuse_both(name);
    (was.*which->text).clear();
  }
  return was;
}

}  // namespace

Exit note_change(const Arguments& words) {
  Options app{
      "Changes what a note says, or the day on which it was seen; where it is stays. Of another "
      "kind of note all is said anew but day and remark.",
      "loopwright note change"};
  std::string path, number, area;
  NoteTexts said;
  std::vector<std::string> gone;
  app.add_option("NOTES", path, "notes file")->required();
  app.add_option("NUMBER", number, "of the note, as 'note list' has it")->required();
  app.add_option("--area", area, "area file")->required();
  add_note_options(app, said, NoteTold::in_part);
  app.add_option("--without", gone,
                 "what it says no longer: remark, hours, from, until or length; once or more")
      ->one_value_each();
  if (!parse(app, words)) return Exit::done;
  need_own_file(path, {area});
  const FolderLock lock(path);
  auto notes = file::NotesFile::load(path);
  const std::size_t row = row_of(number, notes);
  const road::Note& was = notes.notes()[row];
  road::Note note = note_of(changed(said, without(texts_of(was), gone, said)));
  note.line = was.line, note.way = was.way, note.heading_deg = was.heading_deg;
  need_effect(store::open_area(area).roads(), note);
  notes.replace(row, note);
  store::write_whole(path, notes.text());
  std::cout << path << ": note " << row + 1 << " changed: " << note_text(note) << ", seen "
            << road::day_text(note.seen) << '\n';
  return Exit::done;
}

Exit note_drop(const Arguments& words) {
  Options app{"Takes a note out of the file; those behind it move up.", "loopwright note drop"};
  std::string path, number;
  app.add_option("NOTES", path, "notes file")->required();
  app.add_option("NUMBER", number, "of the note, as 'note list' has it")->required();
  if (!parse(app, words)) return Exit::done;
  const FolderLock lock(path);
  auto notes = file::NotesFile::load(path);
  const std::size_t row = row_of(number, notes);
  const std::string text = note_text(notes.notes()[row]);
  notes.drop(row);
  store::write_whole(path, notes.text());
  std::cout << path << ": note " << row + 1 << " taken out: " << text << '\n';
  return Exit::done;
}

}  // namespace loopwright::command
