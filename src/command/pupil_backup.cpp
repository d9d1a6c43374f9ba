// Restoring first copies what the book has beside it, so that a slip of the hand loses nothing.
#include <filesystem>
#include <iostream>

#include "command/book_option.hpp"
#include "command/files.hpp"
#include "command/pupil.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/backup.hpp"
#include "loopwright/book/lessons.hpp"
#include "loopwright/book/pupils.hpp"
#include "loopwright/book/school.hpp"

namespace loopwright::command {
namespace {

/// "3 pupils, 41 lessons"
std::string counted(const book::Book& book) {
  const auto pupils = book::pupils_of(book);
  std::size_t lessons = 0;
  for (const book::Pupil& pupil : pupils) lessons += book::lessons_of(book, pupil.code).size();
  return std::to_string(pupils.size()) + (pupils.size() == 1 ? " pupil, " : " pupils, ") +
         std::to_string(lessons) + (lessons == 1 ? " lesson" : " lessons");
}

/// A name beside the book that nothing has: a copy that was made so before may be the one to restore.
std::string name_before(const std::string& book) {
  std::string name = book + ".before";
  for (int k = 2; std::filesystem::exists(name); ++k) name = book + ".before-" + std::to_string(k);
  return name;
}

/// Copies of a school's book are its server's.
void need_file_book(const std::string& book) {
  if (book::is_address(book))
    throw UsageError(
        "--book: a school's book is on a server, whose own tools copy it; 'loopwright school move' "
        "copies your pupils into a file");
}

}  // namespace

Exit pupil_backup(const Arguments& words) {
  Options app{
      "Copies the book into one file, reads the copy through, and only then gives it its name. It "
      "may be used meanwhile. The copy holds all pupils: keep it as you keep the book.",
      "loopwright pupil backup"};
  std::string copy, book_file;
  app.add_option("FILE", copy, "file to write")->required();
  add_book(app, book_file);
  if (!parse(app, words)) return Exit::done;
  need_file_book(book_file);
  need_folder_of(copy);
  const book::Book book = open_book(book_file, book::Opening::must_be_there);
  need_own_file(copy, {book.file()});
  book.check();
  book::back_up(book, copy);
  std::cout << copy << ": written and read through: " << counted(book)
            << "; erasing a pupil doesn't reach it, delete old copies yourself\n";
  return Exit::done;
}

Exit pupil_restore(const Arguments& words) {
  Options app{
      "Puts a copy made by 'pupil backup' in the place of the book, whole or not at all. What the "
      "book had is first copied beside it.",
      "loopwright pupil restore"};
  std::string copy, book_file;
  bool yes = false;
  app.add_option("FILE", copy, "the copy")->required();
  add_book(app, book_file);
  app.add_flag("--yes", yes, "really: what was written since the copy is no longer in the book");
  if (!parse(app, words)) return Exit::done;
  if (!yes)
    throw UsageError("restoring " + copy +
                     " takes the place of all that the book has: say --yes if it is meant");
  need_file_book(book_file);
  book::Book book = open_book(book_file, book::Opening::may_make);
  // Of a copy that is refused nothing stays behind, or an erased pupil would be found in it.
  book::restore(book, copy, [&] {
    if (book::pupils_of(book).empty()) return;
    const std::string before = name_before(book.file().string());
    book::back_up(book, before);
    std::cout << before << ": what the book had until now; delete it when all is well\n";
  });
  std::cout << book.file().string() << ": restored: " << counted(book) << '\n';
  return Exit::done;
}

}  // namespace loopwright::command
