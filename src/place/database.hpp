// SQLite for this room: a database in memory, its statements, and its errors as exceptions.
//
//   Database index = Database::over(roads.place_index);
//   Statement name(index, "SELECT key FROM name WHERE id = ?");
//   for (name.bind(1, 7); name.next();) use(name.text(0));
//
// Rules: texts and blobs are valid until the next `next`. What SQLite complains of when reading is
// a damaged index (InputError).
#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <string>
#include <string_view>

struct sqlite3;
struct sqlite3_stmt;

namespace loopwright::place {

class Database {
 public:
  /// An empty one.
  Database();
  /// Read-only, straight over bytes that must outlive it.
  static Database over(std::span<const char> bytes);

  void run(const std::string& statements);
  /// The whole database as bytes.
  [[nodiscard]] std::string bytes() const;
  [[nodiscard]] sqlite3* handle() const { return handle_.get(); }

 private:
  struct Close {
    void operator()(sqlite3* database) const;
  };
  std::unique_ptr<sqlite3, Close> handle_;
};

class Statement {
 public:
  Statement(const Database& database, std::string_view sql);
  void bind(int parameter, std::int64_t value);
  void bind(int parameter, std::string_view text);
  void bind_blob(int parameter, std::string_view bytes);
  /// Goes to the next row; false after the last one, and the statement can be bound anew.
  bool next();
  /// Gives up rows that are left.
  void restart();
  [[nodiscard]] std::int64_t number(int column) const;
  [[nodiscard]] std::string_view text(int column) const;
  [[nodiscard]] std::string_view blob(int column) const;

 private:
  struct Finalize {
    void operator()(sqlite3_stmt* statement) const;
  };
  std::unique_ptr<sqlite3_stmt, Finalize> statement_;
  std::int64_t rows_ = 0;  // since it was started
};

}  // namespace loopwright::place
