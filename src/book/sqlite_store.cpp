// 1. A new file is made by us, so that nobody else may read it from its first byte on; SQLite gives the files beside
//    it (-wal, -shm) the same mode.
// 2. It is told apart from others by its application id, and brought to this version in one transaction.
// 3. What SQLite complains of becomes one line: what is wrong with which file, and what to do.
// Source of the settings: sqlite.org/pragma.html, sqlite.org/wal.html, sqlite.org/security.html.
#include "book/sqlite_store.hpp"

#include <SQLiteCpp/Backup.h>
#include <sqlite3.h>
#include <unistd.h>

#include "book/damaged.hpp"
#include "loopwright/base/hex.hpp"
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

void bind(SQLite::Statement& statement, int at, const Value& value) {
  if (const auto* number = std::get_if<std::int64_t>(&value)) return statement.bind(at, *number);
  if (const auto* number = std::get_if<double>(&value)) return statement.bind(at, *number);
  if (const auto* text = std::get_if<std::string>(&value)) return statement.bind(at, *text);
  statement.bind(at);
}

Value value_in(const SQLite::Column& column) {
  if (column.isNull()) return {};
  if (column.isInteger()) return column.getInt64();
  if (column.isFloat()) return column.getDouble();
  return column.getString();
}

class SqliteDatabase final : public Database {
 public:
  explicit SqliteDatabase(SQLite::Database& db) : db_(db) {}

  Rows ask(std::string_view sql, std::span<const Value> values) override {
    SQLite::Statement statement = prepared(sql, values);
    std::vector<std::string> names;
    names.reserve(static_cast<std::size_t>(statement.getColumnCount()));
    for (int k = 0; k < statement.getColumnCount(); ++k)
      names.emplace_back(statement.getColumnName(k));
    std::vector<Value> found;
    while (statement.executeStep())
      for (int k = 0; k < statement.getColumnCount(); ++k)
        found.push_back(value_in(statement.getColumn(k)));
    return {std::move(names), std::move(found)};
  }

  int run(std::string_view sql, std::span<const Value> values) override {
    return prepared(sql, values).exec();
  }

 private:
  SQLite::Statement prepared(std::string_view sql, std::span<const Value> values) {
    SQLite::Statement statement(db_, std::string(sql));
    int at = 0;
    for (const Value& value : values) bind(statement, ++at, value);
    return statement;
  }

  SQLite::Database& db_;
};

/// VACUUM writes the file anew without free pages, and the log beside it (WAL) is emptied and its file removed by leaving
/// that mode and coming back; nothing older is left there then. Deleted cells were overwritten before (secure_delete).
void empty_side_files(SQLite::Database& db) {
  db.exec("VACUUM");
  db.exec("PRAGMA wal_checkpoint(TRUNCATE)");
  db.exec("PRAGMA journal_mode = DELETE");  // needs the book for itself: then no side file is left
  db.exec("PRAGMA journal_mode = WAL");
}

/// A book that may only be read, since it or its folder can't be written, such as a copy on a medium that is sealed.
/// Nobody writes it either, then; but what a log beside it (WAL) holds would be missed.
bool may_only_be_read(const std::filesystem::path& file) {
  std::error_code ignored;
  const std::filesystem::path folder = file.has_parent_path() ? file.parent_path() : ".";
  if (::access(file.c_str(), W_OK) == 0 && ::access(folder.c_str(), W_OK) == 0) return false;
  const std::filesystem::path log = file.string() + "-wal";
  return !std::filesystem::exists(log, ignored) || std::filesystem::file_size(log, ignored) == 0;
}

/// `file:` and a path, as sqlite.org/uri.html has it: what may not stand in an address is written by its number.
std::string address_of(const std::filesystem::path& file) {
  return "file:" + percent_encoded(std::filesystem::absolute(file).string(), "/") + "?immutable=1";
}

SQLite::Database opened(const std::filesystem::path& file) {
  if (may_only_be_read(file))
    return {address_of(file), SQLite::OPEN_READONLY | SQLite::OPEN_URI, wait_ms};
  return {file.string(), SQLite::OPEN_READWRITE, wait_ms};
}

[[noreturn]] void tell(const std::filesystem::path& file, const SQLite::Exception& error) {
  const int code = error.getErrorCode() & 0xff;
  const std::string text = file.string() + ": " + what_to_do(code) + " (" + error.what() + ")";
  if (code == SQLITE_CORRUPT) throw DamagedRow(text, error.what());
  throw InputError(text);
}

}  // namespace

void copy_pages(SQLite::Database& from, SQLite::Database& to) {
  const int done = SQLite::Backup(to, from).executeStep(-1);
  // The library gives these two back instead of throwing them: nothing is copied then.
  if (done != SQLITE_DONE) throw SQLite::Exception(sqlite3_errstr(done), done);
}

void copy_book_file(const std::filesystem::path& from, const std::filesystem::path& to) try {
  SQLite::Database source = opened(from);
  SQLite::Database target(to.string(), SQLite::OPEN_READWRITE);
  copy_pages(source, target);
} catch (const SQLite::Exception& error) {
  tell(from, error);
}

SqliteStore::SqliteStore(const std::filesystem::path& file) try
    : Connection(file), db_(opened(file)) {
  settle(db_);
  need_ours(db_, file.string());
  if (static_cast<std::size_t>(pragma(db_, "user_version")) == migrations().size()) return;
  db_.exec("PRAGMA journal_mode = WAL");
  SQLite::Transaction transaction(db_, SQLite::TransactionBehavior::IMMEDIATE);
  bring_up_to_date(db_);
  transaction.commit();
} catch (const SQLite::Exception& error) {
  tell(file, error);
}

void SqliteStore::check() {
  std::string found;
  alone([&](SQLite::Database& db) {
    found = db.execAndGet("PRAGMA integrity_check(1)").getString();
  });
  if (found != "ok")
    throw InputError(place().string() + ": is damaged (" + found + "); take your copy of it");
}

void SqliteStore::leave_no_byte() {
  try {
    alone(empty_side_files);
  } catch (const Error& error) {
    throw Error(error.exit_code(), place().string() +
                                       ": it is deleted, but its bytes leave the file only when no "
                                       "other program uses the book: "
                                       "'loopwright pupil list' then sees to it");
  }
}

void SqliteStore::alone(const std::function<void(SQLite::Database&)>& act) {
  try {
    act(db_);
  } catch (const SQLite::Exception& error) {
    tell(place(), error);
  }
}

void SqliteStore::transact(Access access, const std::function<void(Database&)>& act) {
  alone([&](SQLite::Database& db) {
    SQLite::Transaction transaction(db, access == Access::write
                                            ? SQLite::TransactionBehavior::IMMEDIATE
                                            : SQLite::TransactionBehavior::DEFERRED);
    SqliteDatabase within(db);
    act(within);
    transaction.commit();
  });
}

}  // namespace loopwright::book
