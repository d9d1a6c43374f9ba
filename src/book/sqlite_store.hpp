// A book in one file, kept by SQLite.
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <filesystem>
#include <functional>

#include "book/connection.hpp"

namespace loopwright::book {

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
