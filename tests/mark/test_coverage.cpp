#include <catch2/catch.hpp>

#include "support/built_town.hpp"

namespace loopwright::mark {
namespace {

double told_m(const test::BuiltTown& town, std::string_view streets, std::string_view fact) {
  for (const road::Coverage& c : town.report.coverage()) {
    if (c.streets == streets && c.fact == fact) return c.told_m;
  }
  return -1;
}

TEST_CASE("coverage tells by length which streets carry a fact", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A    B         C
  w1 AB highway=residential width=6 parking:both=no
  w2 BC highway=residential lit=yes
  )");
  CHECK(told_m(town, "residential streets", "a width") == Approx(125).margin(1));
  CHECK(told_m(town, "residential streets", "parking along it") == Approx(125).margin(1));
  CHECK(told_m(town, "residential streets", "street lamps") == Approx(250).margin(1));
  CHECK(told_m(town, "residential streets", "a speed limit") == 0);
  CHECK(told_m(town, "main roads", "a width") == -1);
}

TEST_CASE("a key that only begins alike tells nothing", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A    B
  w1 AB highway=tertiary widths=6 litter=no parkings=3
  )");
  CHECK(told_m(town, "main roads", "a width") == 0);
  CHECK(told_m(town, "main roads", "street lamps") == 0);
  CHECK(told_m(town, "main roads", "parking along it") == 0);
}

TEST_CASE("road no learner may drive isn't counted", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A    B    C
  w1 AB highway=tertiary
  w2 BC highway=residential access=private
  )");
  CHECK(told_m(town, "residential streets", "a width") == -1);
}

}  // namespace
}  // namespace loopwright::mark
