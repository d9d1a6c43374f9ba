// Source: OSM wiki Tag:highway=mini_roundabout; Highway Code rules 188 and 189.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

constexpr std::string_view tee = R"(
W   m   E
.
.
.
    S
w1 WmE highway=tertiary
w2 Sm highway=residential
)";

BuiltTown tee_with(const std::string& lines, std::string_view region = "GB-ENG") {
  return built_town(std::string(tee) + lines, region);
}

TEST_CASE("a junction without the tag is no mini-roundabout", "[mark][minis]") {
  CHECK(places(tee_with(""), Kind::mini_roundabout).empty());
  CHECK(places(tee_with("nm highway=turning_circle\n"), Kind::mini_roundabout).empty());
}

TEST_CASE("a mini-roundabout is passed in every way but back", "[mark][minis]") {
  const BuiltTown town = tee_with("nm highway=mini_roundabout direction=clockwise\n");
  CHECK(places(town, Kind::mini_roundabout) == Texts{"nm"});
  CHECK(arms(town, Kind::mini_roundabout) == Texts{"in E out E", "in S out S", "in W out W"});
  CHECK(chances(town, Kind::mini_roundabout) == Texts{"EmS left 1", "EmW ahead 2", "SmE right 2",
                                                      "SmW left 1", "WmE ahead 1", "WmS right 2"});
  CHECK(reasons(town, Kind::mini_roundabout) == Texts{"certain highway=mini_roundabout nm"});
  CHECK(oddities(town).empty());
}

TEST_CASE("where one drives on the right, a mini's exits are counted the other way",
          "[mark][minis]") {
  const BuiltTown town = tee_with("nm highway=mini_roundabout\n", "LI");
  CHECK(chances(town, Kind::mini_roundabout) == Texts{"EmS left 2", "EmW ahead 1", "SmE right 1",
                                                      "SmW left 2", "WmE ahead 2", "WmS right 1"});
}

TEST_CASE("nobody emerges at a mini-roundabout", "[mark][minis]") {
  const BuiltTown town = tee_with("nm highway=mini_roundabout\n");
  CHECK(chances(town, Kind::emerge).empty());
  CHECK(chances(town, Kind::turn_off).empty());
}

TEST_CASE("a mini's private arm isn't counted", "[mark][minis]") {
  const BuiltTown town = built_town(R"(
    N
.
.
W   m   E
.
.
    S
w1 WmE highway=tertiary
w2 Sm highway=residential
w3 Nm highway=residential access=private
nm highway=mini_roundabout
)");
  CHECK_THAT(chances(town, Kind::mini_roundabout),
             Catch::VectorContains(std::string("WmE ahead 1")));
}

/// Two minis on one road, as far apart as the gap is long.
BuiltTown two_minis(const std::string& gap, const std::string& lines = "") {
  const std::string space(gap.size(), ' ');
  return built_town("    N\n.\n.\nW   m" + gap + "n   E\n.\n.\n     " + space + "S\n" + R"(
w1 WmnE highway=tertiary
w2 Sn highway=residential
w3 Nm highway=residential
nm highway=mini_roundabout
)" + lines);
}

TEST_CASE("two minis 50 m apart are a double mini, each a place of its own", "[mark][minis]") {
  const BuiltTown town = two_minis(" ", "nn highway=mini_roundabout\n");
  CHECK(places(town, Kind::double_mini) == Texts{"nm", "nn"});
  CHECK(places(town, Kind::mini_roundabout).empty());
  CHECK(chances(town, Kind::double_mini).size() == 12);
  CHECK(reasons(town, Kind::double_mini) ==
        Texts{"certain highway=mini_roundabout nm", "certain highway=mini_roundabout nn"});
  CHECK(control(town, "Wmn") == "mini-roundabout");
  CHECK(chances(town, Kind::emerge).empty());
}

TEST_CASE("two minis 75 m apart are two plain ones", "[mark][minis]") {
  const BuiltTown town = two_minis("  ", "nn highway=mini_roundabout\n");
  CHECK(places(town, Kind::mini_roundabout) == Texts{"nm", "nn"});
  CHECK(places(town, Kind::double_mini).empty());
}

TEST_CASE("a mini near another junction is no double mini", "[mark][minis]") {
  CHECK(places(two_minis(" "), Kind::mini_roundabout) == Texts{"nm"});
}

TEST_CASE("two minis that only a car park's road joins are no double mini", "[mark][minis]") {
  const BuiltTown town = built_town(R"(
N  m   M
.
S  n   P
w1 NmM highway=tertiary
w2 SnP highway=tertiary
w3 mn highway=service
w4 NS highway=residential
w5 MP highway=residential
nm highway=mini_roundabout
nn highway=mini_roundabout
)");
  CHECK(places(town, Kind::mini_roundabout) == Texts{"nm", "nn"});
}

TEST_CASE("a mini in the middle of a road is passed ahead, inferred and reported",
          "[mark][minis]") {
  const BuiltTown town = built_town(R"(
W   m
     
    E
w1 WmE highway=tertiary
nm highway=mini_roundabout
)");
  CHECK(chances(town, Kind::mini_roundabout) == Texts{"EmW ahead 1", "WmE ahead 1"});
  CHECK(reasons(town, Kind::mini_roundabout) == Texts{"inferred highway=mini_roundabout nm"});
  CHECK(oddities(town) == Texts{"nm mini-roundabout where no road joins"});
}

TEST_CASE("a mini at a road's end is reported and no place", "[mark][minis]") {
  const BuiltTown town = tee_with("nW highway=mini_roundabout\n");
  CHECK(places(town, Kind::mini_roundabout).empty());
  CHECK(oddities(town) == Texts{"nW mini-roundabout at a road's end"});
}

TEST_CASE("a mini on a roundabout's ring is reported, and the ring counts", "[mark][minis]") {
  const BuiltTown town = built_town(draw_town(R"(
     a
W   d b   E
     c
w1 abcda highway=tertiary junction=roundabout
w2 Wd highway=tertiary
w3 Eb highway=tertiary
nb highway=mini_roundabout
)",
                                              20),
                                    "GB-ENG");
  CHECK(places(town, Kind::mini_roundabout).empty());
  CHECK(places(town, Kind::roundabout) == Texts{"w1"});
  CHECK(oddities(town) == Texts{"nb mini-roundabout on a roundabout's ring"});
}

TEST_CASE("a mini tagged the wrong way round is reported and not believed", "[mark][minis]") {
  const BuiltTown town = tee_with("nm highway=mini_roundabout direction=anticlockwise\n");
  CHECK_THAT(chances(town, Kind::mini_roundabout),
             Catch::VectorContains(std::string("SmW left 1")));
  CHECK(oddities(town) == Texts{"nm mini-roundabout is tagged the wrong way round"});
}

}  // namespace
}  // namespace loopwright::test
