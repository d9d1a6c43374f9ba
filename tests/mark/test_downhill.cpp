#include <algorithm>
#include <catch2/catch.hpp>

#include "mark/shape_town.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using test::hilly_town;
using test::is_run;
using test::why_run;

std::string road_with(const std::string& tags) {
  return "A                       B\nw1 AB highway=tertiary " + tags + "\n";
}

TEST_CASE("a flat road is no downhill", "[mark]") {
  const test::BuiltTown town = test::built_town(road_with("incline=0%"));
  CHECK_FALSE(is_run(town, "AB", Kind::downhill));
  CHECK_FALSE(is_run(town, "BA", Kind::downhill));
}

TEST_CASE("8 % down is downhill for who drives down, not for who drives up", "[mark]") {
  const test::BuiltTown town = test::built_town(road_with("incline=-8%"));
  CHECK(why_run(town, "AB", Kind::downhill) == "incline=-8% certain");
  CHECK_FALSE(is_run(town, "BA", Kind::downhill));
  const test::BuiltTown up = test::built_town(road_with("incline=9%"));
  CHECK(is_run(up, "BA", Kind::downhill));
  CHECK_FALSE(is_run(up, "AB", Kind::downhill));
}

TEST_CASE("7.9 % isn't steep enough, and down alone doesn't say how steep", "[mark]") {
  CHECK_FALSE(is_run(test::built_town(road_with("incline=-7.9%")), "AB", Kind::downhill));
  CHECK_FALSE(is_run(test::built_town(road_with("incline=down")), "AB", Kind::downhill));
}

TEST_CASE("80 m of steep road are no run of it", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A        B  C        D
  w1 AB highway=tertiary
  w2 BC highway=tertiary incline=-12%
  w3 CD highway=tertiary
  )");
  CHECK_FALSE(is_run(town, "BC", Kind::downhill));
}

TEST_CASE("an elevation grid finds a steep hill within a long road, inferred", "[mark]") {
  // 300 m flat, 400 m at 10 % down, 300 m flat
  const auto hill = [](double east_m) { return 40 - 0.1 * std::clamp(east_m - 300, 0.0, 400.0); };
  const test::BuiltTown town =
      hilly_town("A                                       B\nw1 AB highway=tertiary\n", hill);
  CHECK(why_run(town, "AB", Kind::downhill) == "elevation grid: about 10 % down inferred");
  CHECK_FALSE(is_run(town, "BA", Kind::downhill));
}

TEST_CASE("a bridge over a valley is no downhill", "[mark]") {
  const auto hill = [](double east_m) { return -0.1 * east_m; };
  CHECK(is_run(hilly_town(road_with(""), hill), "AB", Kind::downhill));
  CHECK_FALSE(is_run(hilly_town(road_with("bridge=yes"), hill), "AB", Kind::downhill));
}

}  // namespace
}  // namespace loopwright::mark
