#include <catch2/catch.hpp>

#include "loopwright/base/text.hpp"

namespace loopwright {
namespace {

using Parts = std::vector<std::string_view>;

TEST_CASE("nothing splits into one empty part", "[base]") {
  CHECK(split("", ';') == Parts{""});
  CHECK(trim(" \t\r\n").empty());
}

TEST_CASE("parts come trimmed and in order, empty ones too", "[base]") {
  CHECK(split("a; b ;c", ';') == Parts{"a", "b", "c"});
  CHECK(split(";x;;", ';') == Parts{"", "x", "", ""});
  CHECK(trim("  two words ") == "two words");
}

TEST_CASE("lower case changes A to Z and nothing else", "[base]") {
  CHECK(lower("GB-Wls ÄÉ 30") == "gb-wls ÄÉ 30");
}

TEST_CASE("whole numbers are read whole", "[base]") {
  CHECK(read_int("42") == 42);
  CHECK(read_int("-7") == -7);
  for (const char* text : {"", " 42", "42 ", "4.2", "+4", "4x", "99999999999"}) {
    INFO(text);
    CHECK_FALSE(read_int(text));
  }
}

TEST_CASE("numbers are read with a point, and only when finite", "[base]") {
  CHECK(read_number("51.5877") == 51.5877);
  CHECK(read_number("-2") == -2.0);
  for (const char* text : {"", "51,5", "nan", "inf", "1e999", "0x10", "5 "}) {
    INFO(text);
    CHECK_FALSE(read_number(text));
  }
}

}  // namespace
}  // namespace loopwright
