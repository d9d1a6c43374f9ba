#include "book/empty_book.hpp"

#include <postgresql/libpq-fe.h>

#include <cstdlib>
#include <memory>
#include <stdexcept>

namespace loopwright::test {

book::Book empty_book(const std::filesystem::path& file) {
  const char* address = std::getenv("LOOPWRIGHT_TEST_BOOK");
  if (address == nullptr) return book::Book::open(file, book::Opening::may_make);
  const std::unique_ptr<PGconn, decltype(&PQfinish)> owner(
      PQconnectdb(std::getenv("LOOPWRIGHT_TEST_OWNER")), &PQfinish);
  const std::unique_ptr<PGresult, decltype(&PQclear)> result(
      PQexec(
          owner.get(),
          "SET client_min_messages = error; TRUNCATE pupil, street_use, seen, centre, act CASCADE"),
      &PQclear);
  if (PQresultStatus(result.get()) != PGRES_COMMAND_OK)
    throw std::runtime_error(PQerrorMessage(owner.get()));
  return book::Book::open(address, book::Opening::must_be_there);
}

}  // namespace loopwright::test
