#include "loopwright/book/school.hpp"

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

/// Runs what the owner does in one transaction.
template <class Act>
auto by_owner(const std::string& address, Act act) {
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
    tell(address, error);
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

void admit(const std::string& address, const std::string& login, Membership as) {
  need_server(address);
  by_owner(address, [&](ServerLink& link) {
    const std::vector<Value> values{
        login, as == Membership::office ? "loopwright_office" : "loopwright_instructor"};
    Rows name = link.ask(
        "SELECT quote_ident(rolname), quote_ident(current_database()) FROM "
        "pg_roles WHERE rolname = ? AND rolcanlogin",
        std::span(values).first(1));
    if (!name.next())
      throw InputError(login +
                       ": the server has no such login; whoever runs it makes one (CREATE "
                       "ROLE … LOGIN)");
    const std::string to = " TO " + name.at(0).text();
    link.exec(("GRANT " + std::get<std::string>(values[1]) + to).c_str());
    link.exec(("GRANT CONNECT ON DATABASE " + name.at(1).text() + to).c_str());
    return true;
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

}  // namespace loopwright::book
