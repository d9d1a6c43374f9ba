#include <catch2/catch.hpp>

#include "loopwright/base/error.hpp"
#include "loopwright/file/ledger.hpp"

namespace loopwright::file {
namespace {

TEST_CASE("an empty ledger has no rows", "[file][ledger]") {
  CHECK(read_ledger("", "driven.txt").empty());
  CHECK(read_ledger("# nothing yet\n\n", "driven.txt").empty());
}

TEST_CASE("a ledger's rows come in the order of its lines", "[file][ledger]") {
  const auto rows = read_ledger(
      "# mine\n2026-11-27 123 2\r\n2026-11-28\t9100000000071\t1  # rain\n"
      "2026-11-28 -45 1\n",
      "d.txt");
  REQUIRE(rows.size() == 3);
  CHECK(rows[0] == LedgerRow{{2026, 11, 27}, 123, 2});
  CHECK(rows[1] == LedgerRow{{2026, 11, 28}, 9100000000071, 1});
  // Of a map that somebody drew and didn't upload: editors number new objects downwards from -1.
  CHECK(rows[2] == LedgerRow{{2026, 11, 28}, -45, 1});
}

TEST_CASE("a line of a ledger that can't be read is told with its number", "[file][ledger]") {
  const auto said = [](std::string_view line) -> std::string {
    try {
      read_ledger("# mine\n" + std::string(line) + "\n", "driven.txt");
    } catch (const InputError& error) {
      return error.what();
    }
    return "";
  };
  const std::string takes =
      "driven.txt, line 2: takes a day, an OSM way and how often it was driven (1 to 100), such as "
      "2026-11-28 123456 2, not ";
  CHECK(said("2026-11-27 123") == takes + "'2026-11-27 123'");
  CHECK(said("2026-11-27 123 2 3") == takes + "'2026-11-27 123 2 3'");
  CHECK(said("2026-11-31 123 2") == takes + "'2026-11-31 123 2'");
  CHECK(said("2026-11-27 0 2") == takes + "'2026-11-27 0 2'");
  CHECK(said("2026-11-27\t123\t0") == takes + "'2026-11-27 123 0'");
  CHECK(said("2026-11-27 123 101") == takes + "'2026-11-27 123 101'");
  CHECK(said("2026-11-27 Mill Street, all of it, up and down") ==
        takes + "'2026-11-27 Mill Street, all of it, up an…'");
}

TEST_CASE("a lesson counts its own day and the thirty days that end with it", "[file][ledger]") {
  const std::vector<LedgerRow> rows{{{2026, 11, 28}, 7, 1}, {{2026, 11, 28}, 7, 2},
                                    {{2026, 10, 30}, 7, 4}, {{2026, 10, 29}, 7, 8},
                                    {{2026, 11, 29}, 7, 9}, {{2026, 11, 1}, 3, 5}};
  const auto use = street_use(rows, {2026, 11, 28});
  REQUIRE(use.size() == 2);
  CHECK(use[0] == wish::StreetUse{3, 0, 5});
  CHECK(use[1] == wish::StreetUse{7, 3, 7});
}

}  // namespace
}  // namespace loopwright::file
