#include "loopwright/book/school.hpp"

#include <algorithm>
#include <array>
#include <chrono>
#include <thread>

#include "book/odd_rows.hpp"
#include "book/school_schema.hpp"
#include "book/server_store.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::book {
namespace {

constexpr const char* make_roles = R"sql(
DO $body$
DECLARE
  one TEXT;
BEGIN
  FOREACH one IN ARRAY ARRAY['loopwright_instructor', 'loopwright_office'] LOOP
    IF NOT EXISTS (SELECT 1 FROM pg_roles WHERE rolname = one) THEN EXECUTE format('CREATE ROLE %I NOLOGIN', one); END IF;
  END LOOP;
END $body$;
)sql";

// Roles belong to the whole server: who is admitted to another database's school stays out of this one.
constexpr const char* members_alone =
    "DO $body$ BEGIN EXECUTE format('REVOKE CONNECT ON DATABASE %I FROM PUBLIC', "
    "current_database()); END $body$";

Value first_of(Rows rows) {
  return rows.next() ? rows.at(0).value() : Value{};
}

bool is_there(ServerLink& link, const char* sql) {
  return first_of(link.ask(sql, {})) == Value{std::int64_t{1}};
}

std::size_t version_of(ServerLink& link) {
  if (!is_there(link,
                "SELECT count(*) FROM pg_tables WHERE schemaname = 'public' AND tablename = "
                "'school_schema'"))
    return 0;
  const Value version = first_of(link.ask("SELECT version FROM school_schema", {}));
  const auto* number = std::get_if<std::int64_t>(&version);
  return number == nullptr ? 0 : static_cast<std::size_t>(*number);
}

/// As they stand in a statement.
struct LoginNames {
  std::string login, database;
};
/// Throws InputError when the server has no such login.
LoginNames names_of(ServerLink& link, const std::string& login) {
  const std::vector<Value> values{login};
  Rows name = link.ask(
      "SELECT quote_ident(rolname), quote_ident(current_database()) FROM pg_roles WHERE rolname = "
      "? "
      "AND rolcanlogin",
      values);
  if (!name.next())
    throw InputError(login +
                     ": the server has no such login; whoever runs it makes one (CREATE ROLE … "
                     "LOGIN)");
  return {name.at(0).text(), name.at(1).text()};
}

/// A member of this database's school: roles belong to the whole server, the right to connect doesn't.
bool is_member(ServerLink& link, const std::string& login) {
  const std::vector<Value> values{login};
  return first_of(link.ask("SELECT count(*) FROM pg_roles WHERE rolname = ? AND "
                           "(pg_has_role(oid, 'loopwright_instructor', 'MEMBER') OR "
                           "pg_has_role(oid, 'loopwright_office', 'MEMBER')) AND "
                           "has_database_privilege(oid, current_database(), 'CONNECT')",
                           values)) == Value{std::int64_t{1}};
}

/// To another school of this server: the roles are the server's, and without them it would see nothing there either.
bool is_admitted_elsewhere(ServerLink& link, const std::string& login) {
  const std::vector<Value> values{login};
  const Value count = first_of(link.ask(
      "SELECT count(*) FROM pg_database, aclexplode(datacl) AS allowed, pg_roles WHERE rolname = ? "
      "AND allowed.grantee = pg_roles.oid AND allowed.privilege_type = 'CONNECT' AND datname <> "
      "current_database()",
      values));
  return count != Value{std::int64_t{0}};
}

Value pupils_held(ServerLink& link, const std::string& login) {
  const std::vector<Value> values{login};
  return first_of(link.ask("SELECT count(*) FROM pupil WHERE holder = ?", values));
}

std::string text_of(const Value& number) {
  return std::to_string(std::get<std::int64_t>(number));
}

/// Two who prepare the same book at once make the same table, role or right (PostgreSQL 15 documentation, appendix A; XX000 is
/// "tuple concurrently updated"): whoever comes second finds it made when it tries again.
bool met_another_owner(const ServerError& error) {
  constexpr std::array states{"23505", "42P07", "42710", "42701", "XX000", "40001", "40P01"};
  return std::ranges::find(states, error.state) != states.end();
}

/// Runs what the owner does in one transaction.
template <class Act>
auto by_owner(const std::string& address, Act act) {
  constexpr int most_tries = 10;
  constexpr std::chrono::milliseconds pause{200};
  for (int tries = 1;; ++tries) {
    ServerLink link(address);
    try {
      link.connect();
      link.exec("BEGIN");
      const auto result = act(link);
      link.exec("COMMIT");
      return result;
    } catch (const ServerError& error) {
      if (error.state == "42501")
        throw InputError(address +
                         ": only the database's owner can do this, with the right to make "
                         "roles (" +
                         error.text + ")");
      if (!met_another_owner(error) || tries == most_tries) tell(address, error);
    }
    std::this_thread::sleep_for(pause);
  }
}

void need_server(const std::string& address) {
  if (!is_address(address))
    throw UsageError("a school's book is on a server: --book postgresql://… names it");
}

}  // namespace

bool is_address(std::string_view place) {
  return place.starts_with("postgresql://") || place.starts_with("postgres://");
}

bool prepare_school(const std::string& address) {
  need_server(address);
  return by_owner(address, [](ServerLink& link) {
    // Policies are changed under locks that everyone's statements wait for: rather not now than all waiting for one.
    link.exec("SET LOCAL lock_timeout = '3s'");
    const std::size_t version = version_of(link);
    const auto steps = school_steps();
    for (std::size_t k = version; k < steps.size(); ++k) link.exec(steps[k]);
    link.exec(make_roles);
    link.exec(school_rights());
    link.exec(members_alone);
    // Whoever reads a whole table meets all who write into it (PostgreSQL 15 documentation, 13.2.3): rows are looked up by
    // their indexes, also while a table is small.
    link.exec(
        "DO $body$ BEGIN EXECUTE format('ALTER DATABASE %I SET enable_seqscan = off', "
        "current_database()); END $body$");
    link.exec("DELETE FROM act WHERE at < now() - INTERVAL '7 days'");
    return version < steps.size();
  });
}

std::vector<std::string> odd_rows_for_all(const std::string& address) {
  need_server(address);
  return by_owner(address, [](ServerLink& link) { return odd_rows(link); });
}

void admit(const std::string& address, const std::string& login, Membership as, Before before) {
  need_server(address);
  by_owner(address, [&](ServerLink& link) {
    const LoginNames names = names_of(link, login);
    const Value held = pupils_held(link, login);
    if (before == Before::nobody && held != Value{std::int64_t{0}} && !is_member(link, login))
      throw InputError(login + ": a login of this name holds " + text_of(held) +
                       " of the school's pupils, and may have been another person's; the office "
                       "hands them over first, or --same-person says that they are this one's");
    const std::string role =
        as == Membership::office ? "loopwright_office" : "loopwright_instructor";
    link.exec(("GRANT " + role + " TO " + names.login).c_str());
    link.exec(("GRANT CONNECT ON DATABASE " + names.database + " TO " + names.login).c_str());
    return true;
  });
}

int leave(const std::string& address, const std::string& login) {
  need_server(address);
  return by_owner(address, [&](ServerLink& link) {
    const LoginNames names = names_of(link, login);
    if (!is_member(link, login))
      throw InputError(login + ": is no member of this school; nothing is changed");
    link.exec(("REVOKE CONNECT ON DATABASE " + names.database + " FROM " + names.login).c_str());
    if (!is_admitted_elsewhere(link, login))
      link.exec(("REVOKE loopwright_instructor, loopwright_office FROM " + names.login).c_str());
    return static_cast<int>(std::get<std::int64_t>(pupils_held(link, login)));
  });
}

void hand_over(Book& book, std::string_view code, const std::string& login) {
  if (!is_address(book.file().string()))
    throw UsageError(
        "a pupil is handed over within a school: --book postgresql://… names its book");
  const int changed = book.connection().write([&](Database& db) {
    Rows row = ask(db, "SELECT hand_over(?, ?)", std::string(code), login);
    row.next();
    return row.at(0).number();
  });
  if (changed == 0)
    throw InputError("there is no pupil " + std::string(code) +
                     " among yours; 'loopwright pupil list' shows who is");
}

std::vector<std::string> codes_of_same_holder(const Book& book, std::string_view code) {
  return book.connection().read([&](Database& db) {
    std::vector<std::string> codes;
    for (auto row = ask(db,
                        "SELECT code FROM pupil WHERE holder = (SELECT holder FROM pupil WHERE "
                        "lower(code) = lower(?)) ORDER BY lower(code)",
                        std::string(code));
         row.next();)
      codes.push_back(row.at(0).text());
    return codes;
  });
}

}  // namespace loopwright::book
