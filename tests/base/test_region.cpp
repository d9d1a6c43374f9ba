// Sides and units: the borders of the country-coder library 5.6.1; codes: ISO 3166-1 and 3166-2:GB.
#include <catch2/catch.hpp>
#include <set>
#include <string>

#include "loopwright/base/region.hpp"
#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright {
namespace {

TEST_CASE("no region is no region", "[base]") {
  CHECK_FALSE(find_region(""));
}

TEST_CASE("in Wales one drives on the left, in miles, under its own law", "[base]") {
  const auto wales = find_region("GB-WLS");
  REQUIRE(wales);
  CHECK(wales->code == "GB-WLS");
  CHECK(wales->side == Side::left);
  CHECK(wales->unit == SpeedUnit::mph);
  CHECK(wales->own_rules);
}

TEST_CASE("in Ireland one drives on the left, in kilometres", "[base]") {
  const auto ireland = find_region("IE");
  REQUIRE(ireland);
  CHECK(ireland->side == Side::left);
  CHECK(ireland->unit == SpeedUnit::kmh);
  CHECK(ireland->own_rules);
}

TEST_CASE("Liechtenstein drives on the right by general rules", "[base]") {
  const auto liechtenstein = find_region("LI");
  REQUIRE(liechtenstein);
  CHECK(liechtenstein->side == Side::right);
  CHECK(liechtenstein->unit == SpeedUnit::kmh);
  CHECK_FALSE(liechtenstein->own_rules);
}

TEST_CASE("sides and units of other countries are theirs", "[base]") {
  CHECK(find_region("JP")->side == Side::left);
  CHECK(find_region("JP")->unit == SpeedUnit::kmh);
  CHECK(find_region("US")->side == Side::right);
  CHECK(find_region("US")->unit == SpeedUnit::mph);
  CHECK(find_region("IM")->side == Side::left);
  CHECK(find_region("IM")->unit == SpeedUnit::mph);
  CHECK(find_region("GI")->side == Side::right);
}

TEST_CASE("a region may be typed in lower case", "[base]") {
  CHECK(find_region("gb-sct")->code == "GB-SCT");
  CHECK(find_region("ie")->code == "IE");
}

TEST_CASE("bare GB is refused, since its nations' limits differ", "[base]") {
  CHECK_FALSE(find_region("GB"));
  CHECK_FALSE(find_region("gb"));
}

TEST_CASE("codes that no country has are refused", "[base]") {
  for (const char* code : {"XX", "UK", "GB-UKM", "GB-WAL", "IE-D", "LIE", "L", "A D", " IE", "*"}) {
    INFO(code);
    CHECK_FALSE(find_region(code));
  }
}

TEST_CASE("every listed country is a country, once", "[base]") {
  std::multiset<std::string> codes;
  const auto rows = read_table(rule_text("regions"));
  for (const auto& row : rows) {
    if (row.at(0) != "country") continue;
    for (const auto code : split(row.at(1), ' ')) codes.emplace(code);
  }
  CHECK(codes.size() == 249);  // ISO 3166-1 lists 249 countries
  CHECK(std::set<std::string>(codes.begin(), codes.end()).size() == codes.size());
  for (const auto& row : rows) {
    if (row.at(0) != "left" && row.at(0) != "mph") continue;
    for (const auto code : split(row.at(1), ' ')) CHECK(codes.count(std::string(code)) == 1);
  }
}

TEST_CASE("units read as they are written", "[base]") {
  CHECK(name(Side::left) == "left");
  CHECK(name(Side::right) == "right");
  CHECK(parse_speed_unit(name(SpeedUnit::mph)) == SpeedUnit::mph);
  CHECK(parse_speed_unit(name(SpeedUnit::kmh)) == SpeedUnit::kmh);
  CHECK_FALSE(parse_speed_unit("knots"));
}

}  // namespace
}  // namespace loopwright
