// The way to a school's server. What needs one is run by the test school_both_stores, which starts it.
#include <catch2/catch.hpp>
#include <chrono>
#include <cstdlib>

#include "../src/book/server_link.hpp"

namespace loopwright::book {
namespace {

TEST_CASE("places for values are numbered as the server has them", "[book]") {
  CHECK(with_dollars("SELECT ? WHERE a = ?") == "SELECT $1 WHERE a = $2");
  CHECK(with_dollars("SELECT ?2 WHERE a = '?' AND b = ?2") == "SELECT $2 WHERE a = '?' AND b = $2");
}

TEST_CASE("a server that doesn't answer is given up in bounded time, and asked anew afterwards",
          "[book]") {
  const char* address = std::getenv("LOOPWRIGHT_TEST_BOOK");
  if (address == nullptr) return;  // a file answers
  ServerLink link(address, std::chrono::milliseconds(300));
  link.connect();
  const auto start = std::chrono::steady_clock::now();
  std::string told;
  try {
    link.exec("SELECT pg_sleep(30)");
  } catch (const ServerError& error) {
    CHECK(error.state.empty());  // as a connection that is lost
    told = error.text;
  }
  CHECK(told == "no answer within 0.3 s");
  CHECK(std::chrono::steady_clock::now() - start < std::chrono::seconds(10));
  CHECK_FALSE(link.is_connected());
  link.connect();
  Rows row = link.ask("SELECT 7", {});
  REQUIRE(row.next());
  CHECK(row.at(0).number() == 7);
}

}  // namespace
}  // namespace loopwright::book
