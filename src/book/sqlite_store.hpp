// A book in one file, kept by SQLite.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <functional>

#include "book/connection.hpp"

namespace loopwright::book {

/// All pages of one database in the place of another's, in one step. Throws SQLite::Exception when either is in use, too.
void copy_pages(SQLite::Database& from, SQLite::Database& to);
/// A file's pages, with those that stand only in its log yet (WAL), into a file that is there. Throws InputError that
/// names the first.
void copy_book_file(const std::filesystem::path& from, const std::filesystem::path& to);

class SqliteStore final : public Connection {
 public:
  /// Opens what is there, and brings it to this version. Throws InputError.
  explicit SqliteStore(const std::filesystem::path& file);

  void check() override;
  void leave_no_byte() override;
  /// Outside of a transaction, with the database itself: for copies of the whole file.
  void alone(const std::function<void(SQLite::Database&)>& act);

 private:
  void transact(Access access, const std::function<void(Database&)>& act) override;

  SQLite::Database db_;
};

}  // namespace loopwright::book
