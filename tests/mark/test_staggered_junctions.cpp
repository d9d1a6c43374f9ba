// Two side roads on opposite sides, 40 m apart at most (from the trade; no published figure).
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// Side roads a (north) and b (south) 25 m apart.
constexpr std::string_view opposite = R"(
    N
.
    g
W   ab   E
     h
.
     S
w1 WabE highway=secondary
w2 Nga highway=residential
w3 Shb highway=residential
)";

TEST_CASE("one side road alone is no staggered junction", "[mark][staggered]") {
  CHECK(places(built_town("W a E\n.\n  S\nw1 WaE highway=secondary\nw2 Sa highway=residential\n"),
               Kind::staggered_junction)
            .empty());
}

TEST_CASE("a staggered junction is crossed from one side road to the other", "[mark][staggered]") {
  const BuiltTown town = built_town(opposite);
  CHECK(chances(town, Kind::staggered_junction) == Texts{"NabS ahead", "SbaN ahead"});
  CHECK(reasons(town, Kind::staggered_junction) ==
        Texts{"inferred side roads on opposite sides na"});
  CHECK(chances(town, Kind::emerge).size() == 4);
  CHECK(places(town, Kind::crossroads).empty());
}

TEST_CASE("signs on both side roads make a staggered junction certain", "[mark][staggered]") {
  const std::string both = "ng highway=give_way\nnh highway=give_way\n";
  CHECK(reasons(built_town(std::string(opposite) + both), Kind::staggered_junction) ==
        Texts{"certain highway=give_way ng"});
  CHECK(reasons(built_town(std::string(opposite) + "ng highway=give_way\n"),
                Kind::staggered_junction) == Texts{"inferred side roads on opposite sides na"});
}

TEST_CASE("a drive between the side roads changes nothing", "[mark][staggered]") {
  const BuiltTown town = built_town(draw_town(R"(
    N
.
.
W   a c b    E
.
.
      p S
w1 WacbE highway=secondary
w2 Na highway=residential
w3 Sb highway=residential
w4 pc highway=service
)",
                                              9),
                                    "GB-ENG");
  CHECK(chances(town, Kind::staggered_junction) == Texts{"NacbS ahead", "SbcaN ahead"});
}

TEST_CASE("a banned turn leaves the other way across", "[mark][staggered]") {
  const BuiltTown town = built_town(R"(
    N
.
.
W   ab   E
.
.
     S
w1 Wa highway=secondary
w4 ab highway=secondary
w5 bE highway=secondary
w2 Na highway=residential
w3 Sb highway=residential
r1 no_right_turn from=w4 via=b to=w3
)");
  CHECK(chances(town, Kind::staggered_junction) == Texts{"SbaN ahead"});
}

TEST_CASE("side roads on the same side are no staggered junction", "[mark][staggered]") {
  const BuiltTown town = built_town(R"(
    NM
.
.
W   ab   E
w1 WabE highway=secondary
w2 Na highway=residential
w3 Mb highway=residential
)");
  CHECK(places(town, Kind::staggered_junction).empty());
}

TEST_CASE("side roads 50 m apart are two junctions", "[mark][staggered]") {
  const BuiltTown town = built_town(R"(
    N
.
.
W   a b   E
.
.
      S
w1 WabE highway=secondary
w2 Na highway=residential
w3 Sb highway=residential
)");
  CHECK(places(town, Kind::staggered_junction).empty());
}

TEST_CASE("a road that ends at the next one isn't crossed", "[mark][staggered]") {
  const BuiltTown town = built_town(R"(
    N  P
.
.
W   a  b
.
.
       Q
w1 Wab highway=residential
w2 PbQ highway=secondary
w3 Na highway=residential
)",
                                    "GB-ENG");
  CHECK(places(town, Kind::staggered_junction).empty());
}

TEST_CASE("side roads on both sides of a dual carriageway with a gap are no staggered junction",
          "[mark][staggered]") {
  const BuiltTown town = built_town(R"(
      N
.
.
W     x     E
V     y     F
.
.
      S
w1 WxE highway=primary oneway=yes dual_carriageway=yes
w2 FyV highway=primary oneway=yes dual_carriageway=yes
w3 Nx highway=residential
w4 xy highway=residential
w7 Sy highway=residential
w5 WV highway=primary
w6 FE highway=primary
)");
  CHECK(places(town, Kind::staggered_junction).empty());
}

TEST_CASE("whether side roads lie on opposite sides doesn't hang on where the main road runs",
          "[mark][staggered]") {
  const auto main_road = [](std::string_view way, const std::string& sides) {
    return chances(built_town("    N\n.\n.\nW   a   P\nQ   b   E\n.\n.\n    S\nw1 " +
                              std::string(way) + " highway=secondary\n" + sides),
                   Kind::staggered_junction);
  };
  const std::string west = "w2 Wa highway=residential\nw3 Eb highway=residential\n";
  const std::string east = "w2 Pa highway=residential\nw3 Qb highway=residential\n";
  for (const std::string_view way : {"NabS", "SbaN"}) {
    CHECK(main_road(way, west) == Texts{"EbaW ahead", "WabE ahead"});
    CHECK(main_road(way, east) == Texts{"PabQ ahead", "QbaP ahead"});
    CHECK(main_road(way, "w2 Wa highway=residential\nw3 Qb highway=residential\n").empty());
    CHECK(main_road(way, "w2 Pa highway=residential\nw3 Eb highway=residential\n").empty());
  }
}

}  // namespace
}  // namespace loopwright::test
