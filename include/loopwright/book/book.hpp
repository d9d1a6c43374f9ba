// The instructor's book of pupils, lessons and streets: one file, for the instructor's eyes only.
//
//   Book book = Book::open("wren.book", Opening::may_make);
//   add_pupil(book, {.code = "WREN", …});          // pupils.hpp, lessons.hpp, streets.hpp, rights.hpp
//
// Rules: made with mode 0600. What a function has written when it returns is on the disk, also after a power cut; of
// one that throws nothing is written. Two programs may use a book at once: who writes waits for the other, at most
// five seconds. A book of an older version is brought to this one when it is opened, all or nothing.
// Throws InputError, in one line: no such file, no book, damaged, newer than this program, in use, read-only, disk full.
// Why SQLite (sqlite.org): it keeps these promises, and its files can be read for decades.
#pragma once

#include <filesystem>
#include <memory>
#include <string_view>

namespace loopwright::book {

class Connection;

enum class Opening { must_be_there, may_make };

class Book {
 public:
  static Book open(const std::filesystem::path& file, Opening opening);
  ~Book();
  Book(Book&&) noexcept;
  Book& operator=(Book&&) noexcept;

  [[nodiscard]] const std::filesystem::path& file() const;
  /// Reads all of it; throws InputError when something is damaged.
  void check() const;

  /// For this room.
  [[nodiscard]] Connection& connection() const { return *connection_; }

 private:
  explicit Book(std::unique_ptr<Connection> connection);
  std::unique_ptr<Connection> connection_;
};

/// Where the book is when nobody says: loopwright/pupils.book in the user's data folder (XDG Base Directory
/// Specification 0.8: $XDG_DATA_HOME when it is an absolute path, else ~/.local/share). Empty when there is neither.
/// xdg_data_home, home: these variables of the environment; empty: not set.
std::filesystem::path usual_file(std::string_view xdg_data_home, std::string_view home);

}  // namespace loopwright::book
