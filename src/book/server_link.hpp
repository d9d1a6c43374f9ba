// One connection to a PostgreSQL server: statements, and its complaints with their codes.
//
//   ServerLink link("postgresql:///school");   link.connect();   link.exec("BEGIN");
//
// Rules: over a network the server must show a certificate of its name (verify-full), whatever address or service say
// of sslmode; a socket of this computer needs none. Of several servers the one that takes writes is used. A server that
// doesn't answer, or a network that swallows what is sent, is told in bounded time as a connection that is lost. Every
// function but the constructor throws ServerError.
// Source: PostgreSQL 15 documentation, chapter 34 "libpq".
#pragma once

#include <postgresql/libpq-fe.h>

#include <chrono>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "book/database.hpp"

namespace loopwright::book {

/// What the server said, or what became of the connection.
struct ServerError {
  std::string
      state;  ///< SQLSTATE (PostgreSQL 15 documentation, appendix A); empty: there is no connection any more
  std::string text;  ///< in one line
};

class ServerLink {
 public:
  /// longest_answer: of one statement; none: it may take as long as it does, as what the owner prepares. Throws UsageError
  /// when the address can't be read, or holds a password.
  explicit ServerLink(std::string address,
                      std::optional<std::chrono::milliseconds> longest_answer = std::nullopt);

  /// A new connection in the place of what there was.
  void connect();
  [[nodiscard]] bool is_connected() const;
  void drop() { connection_.reset(); }
  /// What to call at the end of a transaction that isn't to be: nothing of it stays.
  void roll_back() noexcept;

  void exec(const char* sql);
  Rows ask(std::string_view sql, std::span<const Value> values);
  int run(std::string_view sql, std::span<const Value> values);

 private:
  using Result = std::unique_ptr<PGresult, decltype(&PQclear)>;
  Result result_of(std::string_view sql, std::span<const Value> values);
  Result checked(PGresult* result);
  /// The last result of what was sent, or the first complaint.
  Result answer();
  void wait_for_answer();

  std::string address_;
  std::optional<std::chrono::milliseconds> longest_answer_;
  std::unique_ptr<PGconn, decltype(&PQfinish)> connection_{nullptr, &PQfinish};
};

/// ? in their order, or ?1, ?2, …, as PostgreSQL's $1, $2, …
std::string with_dollars(std::string_view sql);

}  // namespace loopwright::book
