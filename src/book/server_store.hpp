// A book on a PostgreSQL server, which many instructors of a school use at once.
//
// Rules: every transaction is serializable. One that meets another's, or whose server went away, is run again, for at
// most half a minute; a write carries a name of its own, so that it is done once even when the answer to its COMMIT was
// lost. Nothing is set for a session, no lock outlives a transaction: a pool or a distributed server may stand between.
#pragma once

#include <filesystem>
#include <functional>

#include "book/connection.hpp"
#include "book/server_link.hpp"

namespace loopwright::book {

class ServerStore final : public Connection {
 public:
  /// Opens a school's book that this program can use. Throws InputError, UsageError.
  explicit ServerStore(const std::filesystem::path& address);

  void check() override;
  void leave_no_byte() override;

 private:
  void transact(Access access, const std::function<void(Database&)>& act) override;
  void once(Access access, const std::string& name, const std::function<void(Database&)>& act);
  void need_version();

  ServerLink link_;
};

/// What the server's complaint means, as an error of one line: which book, what is wrong, what to do.
[[noreturn]] void tell(const std::string& address, const ServerError& error);

}  // namespace loopwright::book
