// A write, done once:
// 1. It takes a random name (UUID) and puts it into the table `act` as its first statement.
// 2. When the connection is lost, or the server ends it, the whole is run again with the same name. If the first try was
//    committed after all, the name is there: nothing is done again. If it is being committed at that moment, the
//    statement waits for it.
// 3. A name that was found may be of a commit that no replica has yet. Another row is then committed behind it, which a
//    server with synchronous replicas acknowledges only when they have both.
// Source: PostgreSQL 15 documentation, 13.2.3 (serializable), 27.2.8 (synchronous replication), 13.5 (what to repeat).
#include "book/server_store.hpp"

#include <algorithm>
#include <chrono>
#include <random>
#include <thread>

#include "book/damaged.hpp"
#include "book/random_name.hpp"
#include "book/school_schema.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::book {
namespace {

using Clock = std::chrono::steady_clock;

/// So long a transaction is tried again, when the server is away and when it meets others. Ours: a replica is promoted in
/// a few seconds.
constexpr std::chrono::seconds longest_wait{30}, longest_wait_met{120};
/// So long one statement may take; then the server, or the way to it, is taken to be gone. Ours: a plan of a school of 50 counts
/// the ledger of a month in 3 s.
constexpr std::chrono::seconds longest_answer{60};
/// Who meets others again and again waits longer: in the end few enough are at it at once.
constexpr int first_pause_ms = 10, longest_pause_away_ms = 500, longest_pause_met_ms = 4000;

/// Whatever a login's or a service's settings say: what is acknowledged is on the disk, and as far as the server waits for
/// replicas on theirs.
constexpr const char* begin_write =
    "BEGIN ISOLATION LEVEL SERIALIZABLE; SET LOCAL lock_timeout = '20s'; SELECT "
    "set_config('synchronous_commit', 'on', true) WHERE "
    "current_setting('synchronous_commit') IN ('off', 'local')";

/// Lost, shut down, starting, or no longer the one that takes writes.
bool is_away(const ServerError& error) {
  return error.state.empty() || error.state.starts_with("08") || error.state == "57P01" ||
         error.state == "57P02" || error.state == "57P03" || error.state == "25006";
}

bool met_another(const ServerError& error) {
  return error.state == "40001" || error.state == "40P01";
}

/// What was to be written is nothing that its column takes (PostgreSQL 15 documentation, appendix A: data exceptions and
/// integrity constraints).
bool is_no_value(const ServerError& error) {
  return error.state.starts_with("22") || error.state.starts_with("23");
}

/// Longer and longer pauses, each by chance between half and whole, so that those who met don't meet again.
class Patience {
 public:
  /// Waits; false when it has lasted too long.
  bool wait(const ServerError& error) {
    const bool met = met_another(error);
    if (Clock::now() > start_ + (met ? longest_wait_met : longest_wait)) return false;
    std::this_thread::sleep_for(std::chrono::milliseconds(
        std::uniform_int_distribution<int>(pause_ms_ / 2, pause_ms_)(random_)));
    pause_ms_ = std::min(2 * pause_ms_, met ? longest_pause_met_ms : longest_pause_away_ms);
    return true;
  }

 private:
  Clock::time_point start_ = Clock::now();
  int pause_ms_ = first_pause_ms;
  std::minstd_rand random_{std::random_device{}()};
};

class ServerDatabase final : public Database {
 public:
  explicit ServerDatabase(ServerLink& link) : link_(link) {}
  Rows ask(std::string_view sql, std::span<const Value> values) override {
    return link_.ask(sql, values);
  }
  int run(std::string_view sql, std::span<const Value> values) override {
    return link_.run(sql, values);
  }

 private:
  ServerLink& link_;
};

std::string what_it_means(const ServerError& error) {
  if (error.state == "LW001")
    return "a pupil is handed over to one instructor of this school, by their login; nothing is "
           "written";
  if (error.state == "42501" ||
      error.text.find("permission denied for database") != std::string::npos)
    return "the server doesn't let you: it is another instructor's pupil or test centre, or you "
           "are no member of the school ('loopwright school admit' makes one); nothing is written";
  if (error.state == "55P03")
    return "others are using it at this moment; nothing is changed, try again";
  if (error.state == "23505" && error.text.find("pupil_code") != std::string::npos)
    return "another pupil of the school has this code; take another";
  if (error.state.starts_with("53"))
    return "the server is full (disk, memory or connections); nothing is written, tell who runs it";
  if (error.text.find("definition of service") != std::string::npos)
    return "your service file has no service of that name; see ~/.pg_service.conf, or "
           "PGSERVICEFILE "
           "where that is set";
  if (is_no_value(error)) return "a text or number of it can't be kept there; nothing is written";
  if (error.state.empty() && error.text.find("certificate") != std::string::npos)
    return "the server's certificate isn't one to trust under this name, so nothing is sent to it; "
           "see sslrootcert in your service file";
  if (met_another(error))
    return "others write into the same rows all the time; nothing is written, try again";
  if (is_away(error))
    return "the server can't be reached, or doesn't let you in; look at the address, the network "
           "and your password file; what wasn't acknowledged may have to be done again";
  return "the server can't do it; nothing is written";
}

}  // namespace

void tell(const std::string& address, const ServerError& error) {
  const std::string text = address + ": " + what_it_means(error) + " (" + error.text + ")";
  if (is_no_value(error)) throw DamagedRow(text, error.text);
  throw InputError(text);
}

ServerStore::ServerStore(const std::filesystem::path& address) try
    : Connection(address), link_(address.string(), longest_answer) {
  link_.connect();
  need_version();
} catch (const ServerError& error) {
  tell(address.string(), error);
}

void ServerStore::need_version() {
  const std::string prepare = "'loopwright school prepare', by the database's owner, ";
  try {
    Rows row = link_.ask("SELECT version, oldest_program FROM school_schema", {});
    if (!row.next()) throw ServerError{"42P01", "school_schema is empty"};
    const int version = row.at(0).number(), oldest = row.at(1).number();
    if (version < school_version())
      throw InputError(place().string() + ": was made by an older Loopwright (book version " +
                       std::to_string(version) + "; this program needs " +
                       std::to_string(school_version()) + "); " + prepare +
                       "brings it up to date while others go on using it");
    if (oldest > school_version())
      throw InputError(place().string() + ": needs a newer Loopwright (book version " +
                       std::to_string(version) + "; this program knows " +
                       std::to_string(school_version()) + "); use that one");
  } catch (const ServerError& error) {
    if (error.state != "42P01") throw;  // no such table
    throw InputError(place().string() + ": holds no school's book; " + prepare + "makes one");
  }
}

void ServerStore::check() {
  try {
    if (!link_.is_connected()) link_.connect();
    need_version();
  } catch (const ServerError& error) {
    tell(place().string(), error);
  }
}

// Whoever runs the server empties its pages, log, replicas and backups: nobody else may.
void ServerStore::leave_no_byte() {}

void ServerStore::transact(Access access, const std::function<void(Database&)>& act) {
  const std::string name = access == Access::write ? random_name() : std::string();
  for (Patience patience;;) {
    try {
      if (!link_.is_connected()) link_.connect();
      return once(access, name, act);
    } catch (const ServerError& error) {
      if (is_away(error))
        link_.drop();
      else
        link_.roll_back();
      if (!is_away(error) && !met_another(error)) tell(place().string(), error);
      if (!patience.wait(error)) tell(place().string(), error);
    } catch (...) {
      link_.roll_back();
      throw;
    }
  }
}

void ServerStore::once(Access access, const std::string& name,
                       const std::function<void(Database&)>& act) {
  ServerDatabase within(link_);
  if (access == Access::read) {
    link_.exec("BEGIN ISOLATION LEVEL SERIALIZABLE READ ONLY; SET LOCAL lock_timeout = '20s'");
    act(within);
  } else {
    link_.exec(begin_write);
    const auto put = [&](const std::string& one) {
      return run(within, "INSERT INTO act (id) VALUES (?) ON CONFLICT DO NOTHING", one);
    };
    if (put(name) == 1)
      act(within);
    else
      put(random_name());
  }
  link_.exec("COMMIT");
}

}  // namespace loopwright::book
