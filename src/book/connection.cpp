// 1. A new file is made by us, so that nobody else may read it from its first byte on; SQLite gives the files beside
//    it (-wal, -shm) the same mode.
// 2. It is told apart from others by its application id, and brought to this version in one transaction.
// 3. What SQLite complains of becomes one line: what is wrong with which file, and what to do.
// Source of the settings: sqlite.org/pragma.html, sqlite.org/wal.html, sqlite.org/security.html.
#include "book/connection.hpp"

#include <sqlite3.h>

#include "loopwright/base/error.hpp"
#include "loopwright/book/migrations.hpp"

namespace loopwright::book {
namespace {

constexpr int wait_ms = 5000;
constexpr int our_application = 0x4c77626b;  // "Lwbk"

void settle(SQLite::Database& db) {
  db.exec("PRAGMA foreign_keys = ON");
  db.exec("PRAGMA secure_delete = ON");   // what is deleted is overwritten
  db.exec("PRAGMA synchronous = FULL");   // written means written, also after a power cut
  db.exec("PRAGMA temp_store = MEMORY");  // nothing of a pupil in files of others
  db.exec("PRAGMA trusted_schema = OFF");
}

int pragma(SQLite::Database& db, const std::string& name) {
  return db.execAndGet("PRAGMA " + name).getInt();
}

void bring_up_to_date(SQLite::Database& db) {
  const auto steps = migrations();
  for (auto version = static_cast<std::size_t>(pragma(db, "user_version")); version < steps.size();
       ++version)
    db.exec(steps[version]);
  db.exec("PRAGMA application_id = " + std::to_string(our_application));
  db.exec("PRAGMA user_version = " + std::to_string(steps.size()));
}

/// Throws unless it is a book this program knows, or still empty.
void need_ours(SQLite::Database& db, const std::string& name) {
  const int application = pragma(db, "application_id");
  const bool empty = db.execAndGet("SELECT count(*) FROM sqlite_master").getInt() == 0;
  if (application != our_application && !(application == 0 && empty))
    throw InputError(name +
                     ": is a database of another program, no book; name another file with --book");
  const int version = pragma(db, "user_version"), newest = static_cast<int>(migrations().size());
  if (version > newest)
    throw InputError(name + ": was written by a newer Loopwright (book version " +
                     std::to_string(version) + "; this program knows " + std::to_string(newest) +
                     "); use that one");
}

std::string what_to_do(int code) {
  switch (code) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return "is in use by another program; nothing is written, try again when that one is done";
    case SQLITE_NOTADB:
      return "is no book, or is damaged at its beginning; take your copy of it";
    case SQLITE_CORRUPT:
      return "is damaged; take your copy of it";
    case SQLITE_READONLY:
    case SQLITE_CANTOPEN:
    case SQLITE_PERM:
    case SQLITE_AUTH:
      return "can't be written; see that you may write this file and its folder";
    case SQLITE_FULL:
      return "the disk is full; nothing is written, make room and try again";
    case SQLITE_IOERR:
      return "the disk can't be read or written, or is full; nothing is written";
    default:
      return "can't be used; nothing is written";
  }
}

}  // namespace

Connection::Connection(const std::filesystem::path& file) try
    : file_(file), db_(file.string(), SQLite::OPEN_READWRITE, wait_ms) {
  settle(db_);
  need_ours(db_, file_.string());
  if (static_cast<std::size_t>(pragma(db_, "user_version")) == migrations().size()) return;
  db_.exec("PRAGMA journal_mode = WAL");
  write(bring_up_to_date);
} catch (const SQLite::Exception& error) {
  throw InputError(file.string() + ": " + what_to_do(error.getErrorCode() & 0xff) + " (" +
                   error.what() + ")");
}

void Connection::tell(const SQLite::Exception& error) const {
  throw InputError(file_.string() + ": " + what_to_do(error.getErrorCode() & 0xff) + " (" +
                   error.what() + ")");
}

std::optional<int> number_or_none(const SQLite::Column& column) {
  if (column.isNull()) return std::nullopt;
  return column.getInt();
}

std::optional<std::string> text_or_none(const SQLite::Column& column) {
  if (column.isNull()) return std::nullopt;
  return column.getString();
}

}  // namespace loopwright::book
