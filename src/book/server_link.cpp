// Method: values go as text and come back as text, told apart by their types' numbers (pg_type.dat); numbers are written
// in the shortest form that reads back the same. A statement is sent, and its answer waited for until it is too late: libpq's own
// calls wait for ever.
#include "book/server_link.hpp"

#include <poll.h>

#include <array>
#include <charconv>
#include <cstdlib>
#include <optional>
#include <vector>

#include "book/damaged.hpp"
#include "loopwright/base/error.hpp"

namespace loopwright::book {
namespace {

constexpr Oid int8_type = 20, int2_type = 21, int4_type = 23, float4_type = 700, float8_type = 701,
              numeric_type = 1700;

std::string one_line(const char* text) {
  std::string line;
  for (const char* at = text; *at != '\0'; ++at) line += *at == '\n' ? ' ' : *at;
  while (!line.empty() && line.back() == ' ') line.pop_back();
  return line;
}

std::string number_text(double number) {
  std::array<char, 32> text{};
  const auto end = std::to_chars(text.data(), text.data() + text.size(), number).ptr;
  return {text.data(), end};
}

/// nullopt: NULL.
std::optional<std::string> sent(const Value& value) {
  if (std::holds_alternative<std::monostate>(value)) return std::nullopt;
  if (const auto* number = std::get_if<std::int64_t>(&value)) return std::to_string(*number);
  if (const auto* number = std::get_if<double>(&value)) return number_text(*number);
  const auto& text = std::get<std::string>(value);
  if (text.find('\0') != std::string::npos)
    throw DamagedRow("a text with a zero byte can't be kept in a book on a server");
  return text;
}

template <class Number>
std::optional<Number> whole(std::string_view text) {
  Number number{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
  if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
  return number;
}

Value received(const PGresult* result, int row, int column) {
  if (PQgetisnull(result, row, column) != 0) return {};
  std::string text(PQgetvalue(result, row, column),
                   static_cast<std::size_t>(PQgetlength(result, row, column)));
  switch (PQftype(result, column)) {
    case int8_type:
    case int2_type:
    case int4_type:
    case numeric_type:  // what sum() gives of whole numbers
      if (const auto number = whole<std::int64_t>(text)) return *number;
      [[fallthrough]];
    case float4_type:
    case float8_type:
      if (const auto number = whole<double>(text)) return *number;
      return text;
    default:
      return text;
  }
}

/// Throws UsageError.
void need_address(const std::string& address) {
  char* complaint = nullptr;
  const std::unique_ptr<PQconninfoOption, decltype(&PQconninfoFree)> options(
      PQconninfoParse(address.c_str(), &complaint), &PQconninfoFree);
  if (!options) {
    PQfreemem(complaint);  // it isn't said: it may hold a password
    throw UsageError(
        "--book: the server's address can't be read; it is such as "
        "postgresql://school.example/book or postgresql:///?service=NAME");
  }
  for (const PQconninfoOption* option = options.get(); option->keyword != nullptr; ++option) {
    const std::string_view name = option->keyword;
    if ((name == "password" || name == "sslpassword") && option->val != nullptr)
      throw UsageError(
          "--book: a password on the command line can be read by others; put it into "
          "~/.pgpass (mode 0600), or name a service of ~/.pg_service.conf: "
          "postgresql:///?service=NAME");
  }
}

}  // namespace

std::string with_dollars(std::string_view sql) {
  std::string dollars;
  int next = 0;
  bool quoted = false;
  for (std::size_t k = 0; k < sql.size(); ++k) {
    if (sql[k] == '\'') quoted = !quoted;
    if (quoted || sql[k] != '?') {
      dollars += sql[k];
      continue;
    }
    dollars += '$';
    const bool numbered = k + 1 < sql.size() && sql[k + 1] >= '1' && sql[k + 1] <= '9';
    if (!numbered) dollars += std::to_string(++next);
  }
  return dollars;
}

ServerLink::ServerLink(std::string address, std::optional<std::chrono::milliseconds> longest_answer)
    : address_(std::move(address)), longest_answer_(longest_answer) {
  need_address(address_);
}

void ServerLink::connect() {
  // Later ones beat earlier ones; those before the address are only defaults.
  constexpr std::array names{"connect_timeout",
                             "keepalives_idle",
                             "keepalives_interval",
                             "keepalives_count",
                             "dbname",
                             "sslmode",
                             "client_encoding",
                             "target_session_attrs",
                             "tcp_user_timeout",
                             "application_name",
                             static_cast<const char*>(nullptr)};
  const std::array values{"5",
                          "10",
                          "5",
                          "3",
                          address_.c_str(),
                          "verify-full",
                          "UTF8",
                          "read-write",
                          "15000" /* ms */,
                          "loopwright",
                          static_cast<const char*>(nullptr)};
  drop();
  connection_.reset(PQconnectdbParams(names.data(), values.data(), 1));
  if (PQstatus(connection_.get()) == CONNECTION_OK) {
    PQsetNoticeProcessor(
        connection_.get(), [](void*, const char*) {}, nullptr);
    return;
  }
  const std::string why = one_line(PQerrorMessage(connection_.get()));
  drop();
  throw ServerError{"", why};
}

bool ServerLink::is_connected() const {
  return connection_ && PQstatus(connection_.get()) == CONNECTION_OK;
}

void ServerLink::roll_back() noexcept {
  if (!is_connected()) return drop();
  try {
    exec("ROLLBACK");
  } catch (const ServerError&) {
    drop();
  }
}

ServerLink::Result ServerLink::checked(PGresult* given) {
  Result result(given, &PQclear);
  const ExecStatusType status = PQresultStatus(result.get());
  if (status == PGRES_COMMAND_OK || status == PGRES_TUPLES_OK) return result;
  const char* state = PQresultErrorField(result.get(), PG_DIAG_SQLSTATE);
  const char* text = PQresultErrorField(result.get(), PG_DIAG_MESSAGE_PRIMARY);
  const bool lost = PQstatus(connection_.get()) != CONNECTION_OK;
  throw ServerError{lost || state == nullptr ? "" : state,
                    one_line(text == nullptr ? PQerrorMessage(connection_.get()) : text)};
}

void ServerLink::wait_for_answer() {
  using Clock = std::chrono::steady_clock;
  const std::chrono::milliseconds longest = longest_answer_.value_or(std::chrono::hours(24));
  const Clock::time_point last = Clock::now() + longest;
  while (PQisBusy(connection_.get()) != 0) {
    const auto left =
        std::chrono::duration_cast<std::chrono::milliseconds>(last - Clock::now()).count();
    pollfd socket{PQsocket(connection_.get()), POLLIN, 0};
    const int ready = left > 0 ? ::poll(&socket, 1, static_cast<int>(left)) : 0;
    if (ready == 0) {
      drop();
      throw ServerError{"", "no answer within " +
                                number_text(static_cast<double>(longest.count()) / 1000) + " s"};
    }
    if (ready > 0 && PQconsumeInput(connection_.get()) == 0)
      throw ServerError{"", one_line(PQerrorMessage(connection_.get()))};
  }
}

ServerLink::Result ServerLink::answer() {
  Result last(nullptr, &PQclear);
  for (;;) {
    wait_for_answer();
    PGresult* next = PQgetResult(connection_.get());
    if (next == nullptr) return last;
    const ExecStatusType before = PQresultStatus(last.get());
    if (!last || before == PGRES_COMMAND_OK || before == PGRES_TUPLES_OK)
      last.reset(next);
    else
      PQclear(next);
  }
}

ServerLink::Result ServerLink::result_of(std::string_view sql, std::span<const Value> values) {
  std::vector<std::optional<std::string>> texts;
  texts.reserve(values.size());
  for (const Value& value : values) texts.push_back(sent(value));
  std::vector<const char*> pointers;
  pointers.reserve(values.size());
  for (const auto& text : texts) pointers.push_back(text ? text->c_str() : nullptr);
  const int sent = PQsendQueryParams(connection_.get(), with_dollars(sql).c_str(),
                                     static_cast<int>(values.size()), nullptr, pointers.data(),
                                     nullptr, nullptr, 0);
  return checked(sent == 0 ? nullptr : answer().release());
}

void ServerLink::exec(const char* sql) {
  checked(PQsendQuery(connection_.get(), sql) == 0 ? nullptr : answer().release());
}

Rows ServerLink::ask(std::string_view sql, std::span<const Value> values) {
  const Result result = result_of(sql, values);
  const int columns = PQnfields(result.get()), rows = PQntuples(result.get());
  std::vector<std::string> names;
  for (int k = 0; k < columns; ++k) names.emplace_back(PQfname(result.get(), k));
  std::vector<Value> found;
  for (int row = 0; row < rows; ++row)
    for (int k = 0; k < columns; ++k) found.push_back(received(result.get(), row, k));
  return {std::move(names), std::move(found)};
}

int ServerLink::run(std::string_view sql, std::span<const Value> values) {
  const Result result = result_of(sql, values);
  return std::atoi(PQcmdTuples(result.get()));
}

}  // namespace loopwright::book
