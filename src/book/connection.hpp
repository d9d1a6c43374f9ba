// An open book, whichever database keeps it: transactions, and the database's complaints as our one-line errors.
//
//   book.connection().write([&](Database& db) { run(db, "DELETE FROM pupil WHERE code = ?", code); });
//
// Rules: what `write` has done is kept for good when it returns; when the act throws nothing of it is done. A store may
// run an act again from its beginning, when it met another's or the server went away: an act changes nothing but the
// book, and gives back what it found.
#pragma once

#include <filesystem>
#include <functional>
#include <optional>
#include <type_traits>
#include <utility>

#include "book/database.hpp"
#include "loopwright/book/book.hpp"

namespace loopwright::book {

class Connection {
 public:
  explicit Connection(std::filesystem::path place) : place_(std::move(place)) {}
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;
  virtual ~Connection() = default;

  template <class Act>
  auto write(Act act) {
    return result_of(Access::write, act);
  }
  /// Sees the book as it is at one moment.
  template <class Act>
  auto read(Act act) {
    return result_of(Access::read, act);
  }
  /// Reads all of it. Throws InputError when something is damaged.
  virtual void check() = 0;
  /// After rows were deleted: no byte of them stays where this store can see to it. Throws Error that says so when
  /// that can't be done yet.
  virtual void leave_no_byte() = 0;
  /// What --book named: a file, or the address of a server's book.
  [[nodiscard]] const std::filesystem::path& place() const { return place_; }

 protected:
  enum class Access { read, write };

 private:
  virtual void transact(Access access, const std::function<void(Database&)>& act) = 0;

  template <class Act>
  auto result_of(Access access, Act& act) {
    using Result = decltype(act(std::declval<Database&>()));
    if constexpr (std::is_void_v<Result>) {
      transact(access, act);
    } else {
      std::optional<Result> result;
      transact(access, [&](Database& db) { result.emplace(act(db)); });
      return std::move(*result);
    }
  }

  std::filesystem::path place_;
};

}  // namespace loopwright::book
