// Source: OSM wiki Tag:railway=level_crossing, Key:crossing:barrier. 60 m is ours.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A road over two tracks 25 m apart, and a third 200 m on.
BuiltTown road_over_tracks(const std::string& lines) {
  return built_town(R"(
     pq       r
W    ab       c    E
     st       u
w1 WabcE highway=unclassified
w11 pas railway=rail
w12 qbt railway=rail
w13 rcu railway=rail
)" + lines,
                    "GB-ENG");
}

TEST_CASE("a road over rails without a crossing mapped has no level crossing",
          "[mark][level_crossings]") {
  CHECK(places(road_over_tracks(""), Kind::level_crossing).empty());
}

TEST_CASE("a level crossing is passed in both directions", "[mark][level_crossings]") {
  const BuiltTown town = road_over_tracks("nc railway=level_crossing\n");
  CHECK(chances(town, Kind::level_crossing) == Texts{"EcW", "WcE"});
  CHECK(reasons(town, Kind::level_crossing) == Texts{"certain railway=level_crossing nc"});
}

TEST_CASE("two tracks close together are one level crossing", "[mark][level_crossings]") {
  const BuiltTown town = road_over_tracks(
      "na railway=level_crossing\n"
      "nb railway=level_crossing\n"
      "nc railway=level_crossing\n");
  CHECK(places(town, Kind::level_crossing) == Texts{"na", "nc"});
  CHECK(chances(town, Kind::level_crossing) == Texts{"Ecb", "Wabc", "bcE", "cbaW"});
}

TEST_CASE("a half barrier without a light tag says nothing of lights", "[mark][level_crossings]") {
  const BuiltTown town = road_over_tracks("nc railway=level_crossing crossing:barrier=half\n");
  CHECK(reasons(town, Kind::level_crossing) ==
        Texts{"certain railway=level_crossing crossing:barrier=half nc"});
}

TEST_CASE("of two nodes of one crossing, the one that tells more is named",
          "[mark][level_crossings]") {
  const BuiltTown town = road_over_tracks(
      "na railway=level_crossing\n"
      "nb railway=level_crossing crossing:barrier=full crossing:light=yes\n");
  CHECK(reasons(town, Kind::level_crossing) ==
        Texts{"certain railway=level_crossing crossing:barrier=full crossing:light=yes nb"});
}

TEST_CASE("two roads over the same tracks are two level crossings", "[mark][level_crossings]") {
  const BuiltTown town = built_town(R"(
   p
W  a  E
V  b  F
   q
w1 WaE highway=unclassified
w2 VbF highway=unclassified
w3 WV highway=unclassified
w11 pabq railway=rail
na railway=level_crossing
nb railway=level_crossing
)");
  CHECK(places(town, Kind::level_crossing) == Texts{"na", "nb"});
}

TEST_CASE("a crossing of a railway out of use is reported and no place",
          "[mark][level_crossings]") {
  for (const char* kind : {"disused", "abandoned", "tram"}) {
    const BuiltTown town = built_town(std::string(R"(
   p
W  a  E
   q
w1 WaE highway=unclassified
na railway=level_crossing
w11 paq railway=)") + kind + "\n");
    CHECK(places(town, Kind::level_crossing).empty());
    CHECK(oddities(town) == Texts{"na level crossing without a railway in use"});
  }
}

TEST_CASE("light, narrow and preserved railways have level crossings", "[mark][level_crossings]") {
  for (const char* kind : {"light_rail", "narrow_gauge", "preserved"}) {
    const BuiltTown town = built_town(std::string(R"(
   p
W  a  E
   q
w1 WaE highway=unclassified
na railway=level_crossing
w11 paq railway=)") + kind + "\n");
    CHECK(places(town, Kind::level_crossing) == Texts{"na"});
  }
}

TEST_CASE("a tram's crossing is no level crossing", "[mark][level_crossings]") {
  const BuiltTown town = road_over_tracks("na railway=tram_level_crossing\n");
  CHECK(places(town, Kind::level_crossing).empty());
  CHECK(oddities(town).empty());
}

// 60 m is ours.
TEST_CASE("tracks 50 m apart are one level crossing, 100 m apart two", "[mark][level_crossings]") {
  const auto crossings = [](const std::string& gap) {
    const std::string above = "     p" + gap + "q\n", road = "W    a" + gap + "c    E\n",
                      below = "     s" + gap + "t\n";
    return places(built_town(above + road + below +
                             "w1 WacE highway=unclassified\nw11 pas railway=rail\n"
                             "w12 qct railway=rail\nna railway=level_crossing\n"
                             "nc railway=level_crossing\n"),
                  Kind::level_crossing)
        .size();
  };
  CHECK(crossings(" ") == 1);
  CHECK(crossings("   ") == 2);
}

}  // namespace
}  // namespace loopwright::test
