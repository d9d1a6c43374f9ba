// Bytes of an area may be damaged, by chance or by intent, so a database over them is opened with
// what sqlite.org/security.html advises for files one doesn't trust: defensive, no trusted schema,
// cell sizes checked; and a statement that goes on without an end is ended.
#include "place/database.hpp"

#include <sqlite3.h>

#include <new>

#include "loopwright/base/error.hpp"

namespace loopwright::place {
namespace {

// A country has a million names; more rows than this are a loop in a damaged index.
constexpr std::int64_t most_rows = 10'000'000;

[[noreturn]] void fail(int code) {
  if (code == SQLITE_NOMEM) throw std::bad_alloc();
  throw InputError(std::string("the area's index of places is damaged (") + sqlite3_errstr(code) +
                   "); build the area again with 'loopwright build'");
}

void need(int code) {
  if (code != SQLITE_OK) fail(code);
}

void distrust(sqlite3* database) {
  need(sqlite3_db_config(database, SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr));
  need(sqlite3_db_config(database, SQLITE_DBCONFIG_TRUSTED_SCHEMA, 0, nullptr));
  need(sqlite3_exec(database, "PRAGMA cell_size_check=ON", nullptr, nullptr, nullptr));
}

}  // namespace

void Database::Close::operator()(sqlite3* database) const {
  sqlite3_close(database);
}

Database::Database() {
  sqlite3* opened = nullptr;
  const int code =
      sqlite3_open_v2(":memory:", &opened, SQLITE_OPEN_READWRITE | SQLITE_OPEN_MEMORY, nullptr);
  handle_.reset(opened);
  need(code);
}

Database Database::over(std::span<const char> bytes) {
  if (bytes.empty()) {
    throw InputError(
        "the area has no index of places; build it again with 'loopwright build', or give LAT,LON");
  }
  Database database;
  // The interface takes bytes one may write; the flag keeps SQLite from doing so.
  auto* const start = reinterpret_cast<unsigned char*>(const_cast<char*>(bytes.data()));
  const auto length = static_cast<sqlite3_int64>(bytes.size());
  need(sqlite3_deserialize(database.handle(), "main", start, length, length,
                           SQLITE_DESERIALIZE_READONLY));
  distrust(database.handle());
  return database;
}

void Database::run(const std::string& statements) {
  need(sqlite3_exec(handle(), statements.c_str(), nullptr, nullptr, nullptr));
}

std::string Database::bytes() const {
  sqlite3_int64 length = 0;
  const std::unique_ptr<unsigned char, void (*)(void*)> all(
      sqlite3_serialize(handle(), "main", &length, 0), sqlite3_free);
  if (!all) throw std::bad_alloc();
  return {reinterpret_cast<const char*>(all.get()), static_cast<std::size_t>(length)};
}

void Statement::Finalize::operator()(sqlite3_stmt* statement) const {
  sqlite3_finalize(statement);
}

Statement::Statement(const Database& database, std::string_view sql) {
  sqlite3_stmt* made = nullptr;
  const int code = sqlite3_prepare_v2(database.handle(), sql.data(), static_cast<int>(sql.size()),
                                      &made, nullptr);
  statement_.reset(made);
  need(code);
}

void Statement::bind(int parameter, std::int64_t value) {
  need(sqlite3_bind_int64(statement_.get(), parameter, value));
}

void Statement::bind(int parameter, std::string_view text) {
  need(sqlite3_bind_text(statement_.get(), parameter, text.data(), static_cast<int>(text.size()),
                         SQLITE_TRANSIENT));
}

void Statement::bind_blob(int parameter, std::string_view bytes) {
  need(sqlite3_bind_blob(statement_.get(), parameter, bytes.data(), static_cast<int>(bytes.size()),
                         SQLITE_TRANSIENT));
}

bool Statement::next() {
  const int code = sqlite3_step(statement_.get());
  if (code == SQLITE_ROW && ++rows_ <= most_rows) return true;
  restart();
  if (code != SQLITE_DONE) fail(code == SQLITE_ROW ? SQLITE_CORRUPT : code);
  return false;
}

void Statement::restart() {
  sqlite3_reset(statement_.get());
  rows_ = 0;
}

std::int64_t Statement::number(int column) const {
  return sqlite3_column_int64(statement_.get(), column);
}

std::string_view Statement::text(int column) const {
  const auto* const text =
      reinterpret_cast<const char*>(sqlite3_column_text(statement_.get(), column));
  if (text == nullptr) return {};
  return {text, static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column))};
}

std::string_view Statement::blob(int column) const {
  const auto* const bytes = static_cast<const char*>(sqlite3_column_blob(statement_.get(), column));
  if (bytes == nullptr) return {};
  return {bytes, static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column))};
}

}  // namespace loopwright::place
