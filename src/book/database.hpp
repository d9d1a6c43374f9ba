// What the room asks of a database, whichever keeps the book: statements with values in, rows with values out.
//
//   for (auto row = ask(db, "SELECT code FROM pupil WHERE scheme = ?", scheme); row.next();) use(row.at(0).text());
//
// Rules: places for values are ? in their order, or ?1, ?2, … where one value stands twice. SQL is what SQLite 3.40 and
// PostgreSQL 15 both read: a subquery in FROM has a name, rows are found by keys and never by the order of their birth
// but by `rowid`, which each schema has. Rows are read whole, so that a second statement may run while one looks at them.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace loopwright::book {

/// NULL, a whole number, a number or a text.
using Value = std::variant<std::monostate, std::int64_t, double, std::string>;

/// What names a row of `pupil` or `lesson`: a number in a file, a UUID on a server. Only given back to the database.
struct RowKey {
  Value value;
  friend bool operator==(const RowKey&, const RowKey&) = default;
};

/// A value of the row one looks at; valid until the row is left.
class Column {
 public:
  Column(const std::string& name, const Value& value) : name_(&name), value_(&value) {}
  [[nodiscard]] const std::string& name() const { return *name_; }
  [[nodiscard]] const Value& value() const { return *value_; }
  [[nodiscard]] bool is_null() const { return std::holds_alternative<std::monostate>(*value_); }
  /// As it is written; NULL is empty.
  [[nodiscard]] std::string text() const;
  /// Throw InputError when it is none, or too large.
  [[nodiscard]] int number() const;
  [[nodiscard]] std::int64_t wide_number() const;
  [[nodiscard]] double real() const;
  [[nodiscard]] RowKey key() const { return {*value_}; }

 private:
  const std::string* name_;
  const Value* value_;
};

/// What a statement gave, looked at row by row.
class Rows {
 public:
  Rows(std::vector<std::string> names, std::vector<Value> values)
      : names_(std::move(names)), values_(std::move(values)) {}
  /// Goes to the first row, then to the next; false when there is none.
  bool next();
  /// k: from 0 to columns() - 1.
  [[nodiscard]] Column at(int k) const;
  [[nodiscard]] int columns() const { return static_cast<int>(names_.size()); }
  /// Of the whole row.
  [[nodiscard]] std::vector<Value> values() const;

 private:
  std::vector<std::string> names_;
  std::vector<Value> values_;  ///< row after row
  std::size_t row_ = 0;        ///< 1 is the first
};

/// Within a transaction (connection.hpp).
class Database {
 public:
  virtual ~Database() = default;
  virtual Rows ask(std::string_view sql, std::span<const Value> values) = 0;
  /// How many rows it changed.
  virtual int run(std::string_view sql, std::span<const Value> values) = 0;
};

inline Value value_of(int number) {
  return std::int64_t{number};
}
inline Value value_of(std::int64_t number) {
  return number;
}
inline Value value_of(double number) {
  return number;
}
inline Value value_of(std::string text) {
  return text;
}
inline Value value_of(const RowKey& key) {
  return key.value;
}
template <class Some>
Value value_of(const std::optional<Some>& some) {
  return some ? value_of(*some) : Value{};
}

/// A statement with its values, for rows that are read.
template <class... Values>
Rows ask(Database& db, std::string_view sql, const Values&... values) {
  const std::vector<Value> all{value_of(values)...};
  return db.ask(sql, all);
}

/// Runs a statement to its end; how many rows it changed.
template <class... Values>
int run(Database& db, std::string_view sql, const Values&... values) {
  const std::vector<Value> all{value_of(values)...};
  return db.run(sql, all);
}

/// A column that may be NULL.
std::optional<int> number_or_none(const Column& column);

}  // namespace loopwright::book
