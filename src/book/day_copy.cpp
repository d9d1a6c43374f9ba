// Method: each pupil is copied with all rows (copy_pupil.hpp), and the copy keeps by what keys the school's book has pupil
// and lessons, and each lesson's mark there; test centres and what was seen on the ground come along. All in one transaction of the copy, so that a copy is of one moment.
#include "loopwright/book/day_copy.hpp"

#include <utility>

#include "book/connection.hpp"
#include "book/copy_pupil.hpp"
#include "book/damaged.hpp"
#include "book/lesson_rows.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/record_mark.hpp"
#include "loopwright/book/rights.hpp"
#include "loopwright/book/school.hpp"

namespace loopwright::book {
namespace {

bool has(Database& db, std::string_view sql) {
  return ask(db, sql).next();
}

/// Throws unless the file may be filled anew.
void need_nothing_to_lose(Database& copy, const std::string& name) {
  if (has(copy, "SELECT 1 FROM pupil WHERE taken_from IS NULL") ||
      has(copy, "SELECT 1 FROM centre WHERE kept_by = ''"))
    throw InputError(name +
                     ": is a book of its own, no day's copy; name a file that isn't there, or a "
                     "day's copy");
  auto row = ask(copy, "SELECT count(DISTINCT lesson) FROM log_entry WHERE state = 'kept'");
  row.next();
  if (row.at(0).number() > 0)
    throw InputError(name + ": has " + std::to_string(row.at(0).number()) +
                     " logged lessons that aren't handed in; 'loopwright school bring' does that, "
                     "then take it along anew");
}

constexpr const char* all_held =
    "SELECT id FROM pupil WHERE holder = current_user ORDER BY lower(code)";
constexpr const char* held_with_lessons =
    "SELECT id FROM pupil WHERE holder = current_user AND EXISTS (SELECT 1 FROM lesson WHERE "
    "lesson.pupil = pupil.id AND state = 'planned') ORDER BY lower(code)";

void take(Database& school, const RowKey& pupil, Database& copy, TakenAlong& taken) {
  const CopiedPupil copied = copy_pupil(school, pupil, copy);
  run(copy, "UPDATE pupil SET taken_from = ? WHERE id = ?", pupil, RowKey{copied.pupil});
  std::map<int, std::string> marks;
  for (const Lesson& lesson : read_lessons(school, pupil)) {
    marks[lesson.number] = mark_of(lesson);
    taken.lessons += lesson.state == LessonState::planned ? 1 : 0;
  }
  for (const auto& [there, here] : copied.lessons) {
    const RowKey lesson{here};
    run(copy, "UPDATE lesson SET taken_from = ?, taken_mark = ? WHERE id = ?", RowKey{there},
        marks.at(number_of(copy, lesson)), lesson);
  }
  ++taken.pupils;
}

/// Of one pupil of the copy.
struct FilesOf {
  RowKey pupil_there;
  std::vector<WrittenFile> files;
};

std::vector<FilesOf> files_in(Database& copy) {
  std::vector<FilesOf> all;
  for (auto row = ask(copy, "SELECT id, taken_from FROM pupil WHERE taken_from IS NOT NULL");
       row.next();) {
    FilesOf& one = all.emplace_back();
    one.pupil_there = row.at(1).key();
    for (auto file =
             ask(copy, "SELECT path, sha256 FROM written_file WHERE pupil = ?", row.at(0).key());
         file.next();)
      one.files.push_back({file.at(0).text(), file.at(1).text()});
  }
  return all;
}

/// What the school's book knows of a path stays: it may have been written anew by it.
void put_files(Database& school, const FilesOf& of) {
  if (!ask(school, "SELECT 1 FROM pupil WHERE id = ?", of.pupil_there).next()) return;
  for (const WrittenFile& file : of.files)
    run(school,
        "INSERT INTO written_file (path, pupil, sha256) VALUES (?, ?, ?) ON CONFLICT (path, pupil) "
        "DO NOTHING",
        file.path.string(), of.pupil_there, file.sha256);
}

}  // namespace

void hand_in_files(Book& copy, Book& school) {
  for (const FilesOf& of : copy.connection().read(files_in)) {
    if (of.files.empty()) continue;
    try {
      school.connection().write([&](Database& there) { put_files(there, of); });
    } catch (const DamagedRow&) {
      // Nothing of this pupil can be told to the school's book: its logs say so.
    }
  }
}

bool is_day_copy(const Book& book) {
  if (is_address(book.file().string())) return false;
  return book.connection().read(
      [](Database& db) { return has(db, "SELECT 1 FROM pupil WHERE taken_from IS NOT NULL"); });
}

void need_no_day_copy(const Book& book) {
  if (is_day_copy(book))
    throw InputError(book.file().string() +
                     ": is a day's copy of a school's book: lessons are logged in it; what else is "
                     "to change is changed in the school's book, when it can be reached");
}

TakenAlong take_along(const Book& school, Book& copy, Whom whom) {
  bool begun = false;
  const TakenAlong taken = copy.connection().write([&](Database& here) {
    need_nothing_to_lose(here, copy.file().string());
    run(here, "DELETE FROM street_use");
    run(here, "DELETE FROM pupil");
    run(here, "DELETE FROM seen");
    run(here, "DELETE FROM centre");
    return school.connection().read([&](Database& there) {
      if (std::exchange(begun, true))
        throw InputError(school.file().string() +
                         ": was away while it was read; nothing is taken along, try again");
      TakenAlong all;
      for (auto row = ask(there, whom == Whom::all ? all_held : held_with_lessons); row.next();)
        take(there, row.at(0).key(), here, all);
      copy_seen(there, here);
      copy_centres(there, here);
      run(here, "UPDATE centre SET kept_by = 'the school'");  // none of a book of one's own
      return all;
    });
  });
  copy.connection().leave_no_byte();
  return taken;
}

}  // namespace loopwright::book
