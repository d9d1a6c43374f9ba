#include "command/book_option.hpp"

#include <filesystem>
#include <optional>

#include "command/arguments.hpp"
#include "command/data_folder.hpp"
#include "command/note.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/book/pupil.hpp"
#include "loopwright/book/scheme.hpp"
#include "loopwright/book/school.hpp"

namespace loopwright::command {
namespace {

namespace fs = std::filesystem;

/// The usual book, its folder made for its owner alone when it isn't there.
fs::path usual_book(book::Opening opening) {
  const fs::path folder =
      data_folder(opening == book::Opening::may_make ? Folder::made : Folder::as_it_is);
  if (folder.empty())
    throw UsageError("neither XDG_DATA_HOME nor HOME says where the book is: name it with --book");
  return folder / "pupils.book";
}

/// What was meant as a server's address and isn't one isn't said again: it may hold a password.
void need_no_mistyped_address(const std::string& option) {
  if (book::is_address(option)) return;
  if (option.find("://") == std::string::npos && option.find("password=") == std::string::npos &&
      option.find('@') == std::string::npos)
    return;
  if (std::error_code ignored; fs::exists(option, ignored)) return;
  throw UsageError(
      "--book: neither a file that is there nor a server's address, which begins with "
      "postgresql:// in small letters");
}

}  // namespace

void add_book(Options& app, std::string& book) {
  app.add_option("--book", book, "the book (default: loopwright/pupils.book in your data folder)");
}

book::Book open_book(const std::string& option, book::Opening opening) {
  need_no_mistyped_address(option);
  return book::Book::open(option.empty() ? usual_book(opening) : fs::path(option), opening);
}

std::string pupil_code(std::string_view option, const std::string& text) {
  if (book::is_code(text)) return text;
  throw UsageError(std::string(option) +
                   " takes a code of up to 12 letters and digits, never a name, not " +
                   as_given(text));
}

Date today_of(const std::string& option) {
  if (!option.empty()) return day_of("--today", option);
  return moment(std::nullopt, book_zone).civil().date;
}

const book::Scheme& scheme_kept(const book::Pupil& pupil) {
  if (const book::Scheme* scheme = book::find_scheme(pupil.scheme)) return *scheme;
  throw InputError("the book holds the scheme '" + pupil.scheme + "' of " + pupil.code +
                   ", which this program doesn't know; 'loopwright pupil change " + pupil.code +
                   " --scheme car-27' names another");
}

}  // namespace loopwright::command
