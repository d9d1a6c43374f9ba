// An open book as SQLite sees it: transactions, and its complaints as our one-line errors.
//
//   book.connection().write([&](SQLite::Database& db) { run(db, "DELETE FROM pupil WHERE code = ?", code); });
//
// Rules: what `write` has done is on the disk when it returns; when the act throws nothing of it is done. Acts throw
// SQLite::Exception or InputError.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <optional>
#include <string>
#include <utility>

#include "loopwright/book/book.hpp"

namespace loopwright::book {

class Connection {
 public:
  /// Opens what is there. Throws InputError.
  explicit Connection(const std::filesystem::path& file);

  template <class Act>
  auto write(Act act) {
    return told([&] {
      SQLite::Transaction transaction(db_, SQLite::TransactionBehavior::IMMEDIATE);
      return committed(transaction, act);
    });
  }
  /// Sees the book as it is at one moment.
  template <class Act>
  auto read(Act act) {
    return told([&] {
      SQLite::Transaction transaction(db_);
      return committed(transaction, act);
    });
  }
  /// Outside of a transaction.
  template <class Act>
  auto alone(Act act) {
    return told([&] { return act(db_); });
  }
  [[nodiscard]] const std::filesystem::path& file() const { return file_; }

 private:
  [[noreturn]] void tell(const SQLite::Exception& error) const;

  template <class Act>
  auto told(Act act) {
    try {
      return act();
    } catch (const SQLite::Exception& error) {
      tell(error);
    }
  }
  template <class Act>
  auto committed(SQLite::Transaction& transaction, Act& act) {
    if constexpr (std::is_void_v<decltype(act(db_))>) {
      act(db_);
      transaction.commit();
    } else {
      auto result = act(db_);
      transaction.commit();
      return result;
    }
  }

  std::filesystem::path file_;
  SQLite::Database db_;
};

/// Binds a value to a place of a statement; none is NULL.
template <class Value>
void bind_one(SQLite::Statement& statement, int at, const Value& value) {
  statement.bind(at, value);
}
template <class Value>
void bind_one(SQLite::Statement& statement, int at, const std::optional<Value>& value) {
  if (value)
    bind_one(statement, at, *value);
  else
    statement.bind(at);
}

/// A statement with its values bound, for rows that are read.
template <class... Values>
SQLite::Statement ask(SQLite::Database& db, const char* sql, const Values&... values) {
  SQLite::Statement statement(db, sql);
  int at = 0;
  (bind_one(statement, ++at, values), ...);
  return statement;
}

/// Runs a statement to its end; how many rows it changed.
template <class... Values>
int run(SQLite::Database& db, const char* sql, const Values&... values) {
  return ask(db, sql, values...).exec();
}

/// A column that may be NULL.
std::optional<int> number_or_none(const SQLite::Column& column);
std::optional<std::string> text_or_none(const SQLite::Column& column);

}  // namespace loopwright::book
