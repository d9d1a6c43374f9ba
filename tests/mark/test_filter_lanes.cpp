// Lanes of their own for a turn at lights. Sources: OSM wiki Key:turn; Highway Code rule 177.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// Crossroads whose west arm has some tags.
BuiltTown cross(const std::string& west,
                const std::string& lines = "nx highway=traffic_signals\n") {
  return built_town(R"(
    N
.
.
W   x   E
.
.
    S
w1 Wx highway=primary )" +
                    west + R"(
w2 xE highway=primary
w3 NxS highway=residential
)" + lines);
}

TEST_CASE("lights without arrows have no filter lane", "[mark][filter]") {
  CHECK(places(cross("lanes=4"), Kind::filter_lane).empty());
}

TEST_CASE("a lane only for the left turn is a filter lane, practised turning left",
          "[mark][filter]") {
  const BuiltTown town = cross("turn:lanes:forward=left|through;right");
  CHECK(chances(town, Kind::filter_lane) == Texts{"WxN left"});
  CHECK(reasons(town, Kind::filter_lane) ==
        Texts{"certain turn:lanes:forward=left|through;right w1"});
  CHECK(chances(town, Kind::signals).size() == 12);
}

TEST_CASE("both turns may have lanes of their own", "[mark][filter]") {
  CHECK(chances(cross("turn:lanes:forward=left|through|slight_right"), Kind::filter_lane) ==
        Texts{"WxN left", "WxS right"});
}

TEST_CASE("the arrows may stand on the way before the last one", "[mark][filter]") {
  const BuiltTown town = built_town(R"(
     N
.
.
W   gx   E
.
.
     S
w1 Wg highway=primary turn:lanes:forward=through|right
w4 gx highway=primary
w2 xE highway=primary
w3 NxS highway=residential
nx highway=traffic_signals
)");
  CHECK(chances(town, Kind::filter_lane) == Texts{"gxS right"});
  CHECK(reasons(town, Kind::filter_lane) == Texts{"certain turn:lanes:forward=through|right w1"});
}

TEST_CASE("lanes that share their arrows are no filter lanes", "[mark][filter]") {
  CHECK(places(cross("turn:lanes:forward=left;through|through;right"), Kind::filter_lane).empty());
  CHECK(places(cross("turn:lanes:forward=|"), Kind::filter_lane).empty());
}

TEST_CASE("where all lanes turn one way there is no lane to choose", "[mark][filter]") {
  CHECK(places(cross("turn:lanes:forward=right|right"), Kind::filter_lane).empty());
}

TEST_CASE("arrows of those who drive away are not ours", "[mark][filter]") {
  CHECK(places(cross("turn:lanes:backward=left|through"), Kind::filter_lane).empty());
}

TEST_CASE("a turning lane without lights is no filter lane", "[mark][filter]") {
  CHECK(places(cross("turn:lanes:forward=left|through", ""), Kind::filter_lane).empty());
}

}  // namespace
}  // namespace loopwright::test
