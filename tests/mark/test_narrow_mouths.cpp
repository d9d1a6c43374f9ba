// Turning off into a road where two cars don't fit: under 4.8 m, Manual for Streets figure 7.1.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A side road, plain for its first 25 m (jg), then as given from g to S.
BuiltTown side_road(const std::string& mouth, const std::string& beyond) {
  return built_town(R"(
W   j   E
    g
.
.
    S
w1 WjE highway=secondary
w2 jg highway=residential )" +
                    mouth + "\nw3 gS highway=residential " + beyond + "\n");
}

TEST_CASE("a mouth of usual width is no narrow one", "[mark][narrow_mouth]") {
  const BuiltTown town = side_road("width=6", "width=6");
  CHECK(chances(town, Kind::narrow_mouth).empty());
  CHECK(chances(town, Kind::turn_off) == Texts{"Ejg left", "Wjg right"});
}

TEST_CASE("turning off into a narrow road is its own kind of turning off", "[mark][narrow_mouth]") {
  const BuiltTown town = side_road("width=4", "width=4");
  CHECK(chances(town, Kind::narrow_mouth) == Texts{"Ejg left", "Wjg right"});
  CHECK(reasons(town, Kind::narrow_mouth) == Texts{"inferred width=4 w2"});
  CHECK(chances(town, Kind::turn_off).empty());
  CHECK(places(town, Kind::turn_off) == Texts{"nj"});
  CHECK(places(town, Kind::narrow_mouth).empty());
}

TEST_CASE("a narrow mouth is harder to turn into than a plain one", "[mark][narrow_mouth]") {
  const auto hardest = [](const BuiltTown& town) {
    int hardness = 0;
    for (const road::Chance& chance : town.roads().chances) {
      if (road::meets(chance.kind, Kind::turn_off))
        hardness = std::max<int>(hardness, chance.hardness);
    }
    return hardness;
  };
  CHECK(hardest(side_road("width=4", "width=4")) > hardest(side_road("width=6", "width=6")));
}

TEST_CASE("a sign and a measured width make a narrow mouth certain", "[mark][narrow_mouth]") {
  const BuiltTown town = built_town(R"(
W   j   E
    g
.
.
    S
w1 WjE highway=secondary
w2 Sgj highway=residential width=4
ng highway=give_way
)");
  CHECK(reasons(town, Kind::narrow_mouth) == Texts{"certain width=4 w2"});
}

TEST_CASE("a road that narrows 25 m up has a narrow mouth", "[mark][narrow_mouth]") {
  CHECK(chances(side_road("", "width=3.5"), Kind::narrow_mouth) == Texts{"Ejg left", "Wjg right"});
}

TEST_CASE("a road that narrows further up has none", "[mark][narrow_mouth]") {
  const BuiltTown town = built_town(R"(
W   j   E
.
    g
.
    S
w1 WjE highway=secondary
w2 jg highway=residential
w3 gS highway=residential width=3.5
)");
  CHECK(chances(town, Kind::narrow_mouth).empty());
}

TEST_CASE("coming out of a narrow road is plain emerging", "[mark][narrow_mouth]") {
  CHECK(chances(side_road("width=4", "width=4"), Kind::emerge) == Texts{"gjE right", "gjW left"});
}

}  // namespace
}  // namespace loopwright::test
