// What a pupil may ask of who keeps the book: to have all that is kept, and to have it erased; and what is due to go.
//
// Source: UK GDPR articles 15 (access), 17 (erasure) and 20 (portability).
#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/book/book.hpp"

namespace loopwright::book {

/// All that the book holds on a pupil as JSON: an object with a list of rows for each table, columns by name. Throws
/// InputError when there is no such pupil.
std::string export_pupil(const Book& book, std::string_view code);

/// A file that was written for a pupil: a loop file, a card, a sheet for home, a page of progress, all that is kept.
struct WrittenFile {
  std::filesystem::path path;  ///< absolute
  std::string sha256;          ///< of what was written, 64 hex digits
  friend bool operator==(const WrittenFile&, const WrittenFile&) = default;
};
/// Remembers a file for the day on which the pupil is erased. number: of the lesson it is for; 0: of none. A path belongs to who had other bytes written
/// there last; a file of several pupils to all of them.
void note_written(Book& book, std::string_view code, int number, const WrittenFile& file);
/// In order of their paths.
std::vector<WrittenFile> written_files(const Book& book, std::string_view code);
/// By code, the pupils besides this one for whom a file was written as well, such as one PDF of a day: it goes with any of them.
std::vector<std::string> others_of_file(const Book& book, std::string_view code,
                                        const std::filesystem::path& path);

/// Deletes all that the book holds on a pupil, and leaves no byte of it in the book's file or beside it. Its lines of
/// the ledger stay without a pupil, but for those near the door. Rules: written_files was asked first; they are the
/// caller's to delete. Throws InputError; when another program holds the book open, some bytes may be left beside it,
/// and erasing again takes them.
void erase_pupil(Book& book, std::string_view code);

/// A pupil whose details are due to go, and the day of the last lesson, or of being put into the book.
struct DuePupil {
  std::string code;
  Date last;
};
/// Who had no lesson for so many months, and of whom more is kept than accounts need; by code. Source of the usual 12:
/// our trade notes, a judgement; UK GDPR article 5(1)(e) asks for some limit and names none.
std::vector<DuePupil> due_for_purge(const Book& book, Date today, int months);
/// Deletes all that the book holds on a pupil but the code and each lesson's day, length and state, which accounts need
/// (tax records: five years), and leaves no byte of it. Ledger lines as when erasing. Rules and errors as of erase_pupil.
void purge_pupil(Book& book, std::string_view code);

}  // namespace loopwright::book
