// Lanes that fall. Sources: OSM wiki Key:lanes, Key:turn; Highway Code rule 134.
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

/// A road from W over m to E, each half with its tags.
BuiltTown two_halves(const std::string& west, const std::string& east) {
  return built_town("W   m   E\nw1 Wm highway=primary " + west + "\nw2 mE highway=primary " + east +
                    "\n");
}

/// The same with a side road to the south at m.
BuiltTown at_side_road(const std::string& west, const std::string& east,
                       const std::string& lines = "") {
  return built_town("W   m   E\n.\n.\n    S\nw1 Wm highway=primary " + west +
                    "\nw2 mE highway=primary " + east + "\nw3 Sm highway=residential\n" + lines);
}

const std::string two_ahead = "lanes=3 lanes:forward=2 lanes:backward=1";
const std::string one_ahead = "lanes=2 lanes:forward=1 lanes:backward=1";

TEST_CASE("without mapped lanes nothing merges", "[mark][merge]") {
  CHECK(places(two_halves("", ""), Kind::lanes_merge).empty());
  CHECK(places(two_halves("lanes=3", "lanes=2"), Kind::lanes_merge).empty());
  CHECK(places(two_halves(two_ahead, ""), Kind::lanes_merge).empty());
}

TEST_CASE("lanes merge where there is one fewer in our direction", "[mark][merge]") {
  const BuiltTown town = two_halves(two_ahead, one_ahead);
  CHECK(chances(town, Kind::lanes_merge) == Texts{"WmE"});
  CHECK(reasons(town, Kind::lanes_merge) ==
        Texts{"certain lanes:forward=2, then lanes:forward=1 w2"});
}

TEST_CASE("half of a total number of lanes is inferred", "[mark][merge]") {
  const BuiltTown town = two_halves("lanes=4", "lanes=2");
  CHECK(chances(town, Kind::lanes_merge) == Texts{"WmE"});
  CHECK(reasons(town, Kind::lanes_merge) ==
        Texts{"inferred half of lanes=4, then half of lanes=2 w2"});
}

TEST_CASE("where a dual carriageway of two lanes ends, they merge", "[mark][merge]") {
  const BuiltTown town = built_town(R"(
W       m     E
V
w1 Wm highway=primary name=Mill_Road oneway=yes lanes=2
w2 mV highway=primary name=Mill_Road oneway=yes lanes=2
w3 mE highway=primary name=Mill_Road lanes=2
w4 VW highway=primary
)");
  CHECK(chances(town, Kind::lanes_merge) == Texts{"WmE"});
  CHECK(reasons(town, Kind::lanes_merge) == Texts{"inferred lanes=2, then half of lanes=2 w3"});
}

TEST_CASE("an arrow that merges ends its lane", "[mark][merge]") {
  const BuiltTown town = two_halves(two_ahead + " turn:lanes:forward=through|merge_to_left", "");
  CHECK(chances(town, Kind::lanes_merge) == Texts{"WmE"});
  CHECK(reasons(town, Kind::lanes_merge) ==
        Texts{"certain turn:lanes:forward=through|merge_to_left w1"});
}

TEST_CASE("two lanes ahead at lights that are one behind them merge", "[mark][merge]") {
  const BuiltTown town = at_side_road(two_ahead + " turn:lanes:forward=through|through;right",
                                      one_ahead, "nm highway=traffic_signals\n");
  CHECK(chances(town, Kind::lanes_merge) == Texts{"WmE"});
  CHECK(reasons(town, Kind::lanes_merge) ==
        Texts{"certain turn:lanes:forward=through|through;right, then lanes:forward=1 w2"});
}

TEST_CASE("a lane that turns off at the junction doesn't merge", "[mark][merge]") {
  CHECK(places(at_side_road(two_ahead + " turn:lanes:forward=through|right", one_ahead),
               Kind::lanes_merge)
            .empty());
  CHECK(places(at_side_road(two_ahead + " turn:lanes:forward=through|right", one_ahead,
                            "nm highway=traffic_signals\n"),
               Kind::lanes_merge)
            .empty());
}

TEST_CASE("lanes without arrows before a junction say nothing", "[mark][merge]") {
  CHECK(places(at_side_road(two_ahead, one_ahead), Kind::lanes_merge).empty());
}

TEST_CASE("where the road forks under another number, lanes ahead part", "[mark][merge]") {
  const std::string through = two_ahead + " turn:lanes:forward=through|through;right ref=A41";
  const std::string lights = "nm highway=traffic_signals\n";
  CHECK(places(at_side_road(through, one_ahead + " ref=B7", lights), Kind::lanes_merge).empty());
  CHECK(places(at_side_road(through, one_ahead + " ref=A41", lights), Kind::lanes_merge).size() ==
        1);
}

TEST_CASE("lanes that contradict their arrows say nothing", "[mark][merge]") {
  CHECK(places(two_halves(two_ahead + " turn:lanes:forward=||", one_ahead), Kind::lanes_merge)
            .empty());
}

TEST_CASE("nor does a road with no lane left for those who come", "[mark][merge]") {
  const std::string arrows = " turn:lanes:forward=|through";
  CHECK(places(two_halves("lanes=3" + arrows, one_ahead), Kind::lanes_merge).size() == 1);
  CHECK(places(two_halves("lanes=2" + arrows, one_ahead), Kind::lanes_merge).empty());
  CHECK(places(two_halves("lanes=2 oneway=yes turn:lanes=|through", "oneway=yes lanes=1"),
               Kind::lanes_merge)
            .size() == 1);
}

TEST_CASE("nor do they where roads join", "[mark][merge]") {
  const std::string arrows = " turn:lanes:forward=through|through|right";
  CHECK(places(at_side_road("lanes=4 lanes:forward=3 lanes:backward=1" + arrows, one_ahead),
               Kind::lanes_merge)
            .size() == 1);
  CHECK(places(at_side_road(two_ahead + arrows, one_ahead), Kind::lanes_merge).empty());
  CHECK(places(at_side_road(two_ahead + arrows, one_ahead, "nm highway=traffic_signals\n"),
               Kind::lanes_merge)
            .empty());
}

TEST_CASE("a bus lane that ends is no lane that merges", "[mark][merge]") {
  CHECK(
      places(two_halves(two_ahead + " lanes:bus:forward=1", one_ahead), Kind::lanes_merge).empty());
}

TEST_CASE("where a lane becomes the buses', ours is one fewer", "[mark][merge]") {
  const BuiltTown town = two_halves(two_ahead, two_ahead + " lanes:bus:forward=1");
  CHECK(chances(town, Kind::lanes_merge) == Texts{"WmE"});
  CHECK(reasons(town, Kind::lanes_merge) ==
        Texts{"certain lanes:forward=2, then lanes:forward=2 less 1 for buses w2"});
}

TEST_CASE("one lane fewer for a few metres is no merging", "[mark][merge]") {
  const BuiltTown town =
      built_town("W   mn   E\nw1 Wm highway=primary " + two_ahead + "\nw2 mn highway=primary " +
                 one_ahead + "\nw3 nE highway=primary " + two_ahead + "\n");
  CHECK(places(town, Kind::lanes_merge).empty());
}

}  // namespace
}  // namespace loopwright::test
