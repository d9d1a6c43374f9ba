#include <catch2/catch.hpp>
#include <cmath>

#include "mark/shape_town.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using test::hilly_town;
using test::is_run;
using test::why_run;

test::BuiltTown with(const std::string& way_tags, const std::string& node_line = "") {
  return test::built_town("A       p       B\nw1 ApB highway=tertiary " + way_tags + "\n" +
                          node_line);
}

/// Up and down again about 500 m east, as steep on either side, sharp at the top.
test::Hill roof(double percent) {
  return [percent](double east_m) { return -percent / 100 * std::abs(east_m - 500); };
}

std::string road_at(const std::string& limit) {
  return "A                                       B\nw1 AB highway=primary maxspeed=\"" + limit +
         "\"\n";
}

TEST_CASE("a plain road and a plain bridge are no brow", "[mark]") {
  CHECK_FALSE(is_run(with(""), "AB", Kind::brow));
  CHECK_FALSE(is_run(with("bridge=yes"), "AB", Kind::brow));
  CHECK_FALSE(is_run(with("bridge=yes bridge:structure=arch"), "AB", Kind::brow));
}

TEST_CASE("a humpback bridge is a brow both ways, however short", "[mark]") {
  const test::BuiltTown town = test::built_town(R"(
    A        B C        D
  w1 AB highway=tertiary
  w2 BC highway=tertiary bridge=yes bridge:structure=humpback
  w3 CD highway=tertiary
  )");
  CHECK(why_run(town, "BC", Kind::brow) == "bridge:structure=humpback certain");
  CHECK(is_run(town, "CB", Kind::brow));
  CHECK_FALSE(is_run(town, "AB", Kind::brow));
  CHECK(why_run(with("bridge=humpback"), "AB", Kind::brow) == "bridge=humpback certain");
}

TEST_CASE("a blind summit mapped on the road is a brow, other hazards are none", "[mark]") {
  CHECK(why_run(with("", "np hazard=blind_summit\n"), "AB", Kind::brow) ==
        "hazard=blind_summit (node/" + std::to_string(test::osm_node('p')) + ") certain");
  CHECK(is_run(with("hazard=dip"), "AB", Kind::brow));
  CHECK(is_run(with("", "np traffic_sign=GB:528\n"), "AB", Kind::brow));
  CHECK_FALSE(is_run(with("hazard=curve"), "AB", Kind::brow));
  CHECK_FALSE(is_run(with("", "np hazard=animal_crossing\n"), "AB", Kind::brow));
}

// Highway Code rule 126: 73 m at 60 mph. 14 % over 150 m: K = 10.7, 71 m seen.
TEST_CASE("a crest that hides the road within the stopping distance is a brow", "[mark]") {
  const test::BuiltTown town = hilly_town(road_at("60 mph"), roof(7));
  CHECK(why_run(town, "AB", Kind::brow) ==
        "elevation grid: about 71 m seen over the crest inferred");
  CHECK(is_run(town, "BA", Kind::brow));
}

TEST_CASE("the same crest hides nothing from who drives 40, and a gentle one from nobody",
          "[mark]") {
  CHECK_FALSE(is_run(hilly_town(road_at("40 mph"), roof(7)), "AB", Kind::brow));
  CHECK_FALSE(is_run(hilly_town(road_at("60 mph"), roof(4)), "AB", Kind::brow));
}

TEST_CASE("a dip in the grid and a steady hill are no crest", "[mark]") {
  CHECK_FALSE(is_run(hilly_town(road_at("60 mph"), roof(-7)), "AB", Kind::brow));
  CHECK_FALSE(is_run(hilly_town(road_at("60 mph"), [](double east_m) { return 0.1 * east_m; }),
                     "AB", Kind::brow));
}

}  // namespace
}  // namespace loopwright::mark
