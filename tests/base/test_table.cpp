#include <catch2/catch.hpp>
#include <stdexcept>

#include "loopwright/base/table.hpp"

namespace loopwright {
namespace {

TEST_CASE("a table of nothing but comments has no rows", "[base]") {
  CHECK(read_table("").empty());
  CHECK(read_table("# a | b\n\n   \n # more").empty());
}

TEST_CASE("a row is a line, its cells trimmed, its comment gone", "[base]") {
  const auto rows = read_table("# kinds\n zebra | 2 |  # from the catalogue\n\nsignals|4\r\n");
  REQUIRE(rows.size() == 2);
  CHECK(rows[0] == TableRow{"zebra", "2", ""});
  CHECK(rows[1] == TableRow{"signals", "4"});
}

TEST_CASE("a cell is read as a number, with a point whatever the language", "[base]") {
  const auto rows = read_table("a | 12 | -3.5");
  CHECK(number_cell(rows[0], 1) == 12);
  CHECK(number_cell(rows[0], 2) == -3.5);
}

TEST_CASE("a wrong table names its row", "[base]") {
  const auto rows = read_table("speed | fast");
  CHECK_THROWS_WITH(number_cell(rows[0], 1), "'fast' is no number in table row 'speed | fast'");
  CHECK_THROWS_WITH(number_cell(rows[0], 2), "no column 3 in table row 'speed | fast'");
  CHECK_THROWS_AS(number_cell(rows[0], 2), std::logic_error);
  CHECK_THROWS_WITH(rule_text("weather"), "no rule table named weather");
}

TEST_CASE("a built-in table keeps every character of its file", "[base]") {
  // A CMake list would have eaten the semicolon; regions.txt has one and ends with a line end.
  const auto text = rule_text("regions");
  CHECK(text.find("the country's law differs inside it: one region must be named") !=
        std::string_view::npos);
  CHECK(text.find("on the left; all others drive on the right") != std::string_view::npos);
  CHECK(text.back() == '\n');
}

}  // namespace
}  // namespace loopwright
