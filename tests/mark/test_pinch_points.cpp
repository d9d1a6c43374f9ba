// Sources: OSM wiki Tag:traffic_calming=choker and Key:priority. 60 m to lights is ours.
#include <algorithm>
#include <catch2/catch.hpp>
#include <string>

#include "mark/chance_texts.hpp"

namespace loopwright::test {
namespace {

using road::Kind;

BuiltTown street_with(const std::string& lines, const std::string& tags = "") {
  return built_town(R"(
W   s a t   E
w1 WsatE highway=residential )" +
                    tags + "\n" + lines);
}

/// A road whose middle, from a to b, is a way of its own.
BuiltTown road_with_middle(const std::string& middle, const std::string& rest = "") {
  return built_town("W   ab   E\nw1 Wa highway=unclassified " + rest +
                    "\nw2 ab highway=unclassified " + middle + "\nw3 bE highway=unclassified " +
                    rest + "\n");
}

/// What the chance of a pinch point says to who comes from a stretch.
std::string tag_from(const BuiltTown& town, std::string_view entry) {
  const road::Roads roads = town.roads();
  const auto from = roads.chances_from(town.stretch(entry));
  const auto chance = std::ranges::find(from, Kind::pinch_point, &road::Chance::kind);
  return chance == from.end() ? "none" : std::string(roads.text(chance->tag));
}

TEST_CASE("a street without narrowings has no pinch point", "[mark][pinch_points]") {
  CHECK(places(street_with("na traffic_calming=island\n"), Kind::pinch_point).empty());
}

TEST_CASE("at a choker without a mapped priority nobody knows who goes first",
          "[mark][pinch_points]") {
  for (const std::string form : {"choker", "chicane"}) {
    const BuiltTown town = street_with("na traffic_calming=" + form + "\n");
    CHECK(chances(town, Kind::pinch_point) == Texts{"EaW", "WaE"});
    CHECK(reasons(town, Kind::pinch_point) ==
          Texts{"certain traffic_calming=" + form + " (priority not mapped) na"});
  }
}

TEST_CASE("a mapped priority is ours one way and theirs the other", "[mark][pinch_points]") {
  const BuiltTown town = street_with("na traffic_calming=choker priority=forward\n");
  CHECK(tag_from(town, "Wa") == "traffic_calming=choker priority=forward (ours)");
  CHECK(tag_from(town, "Ea") == "traffic_calming=choker priority=forward (oncoming traffic's)");
}

TEST_CASE("a priority alone makes a pinch point, on a way or on a node", "[mark][pinch_points]") {
  CHECK(reasons(road_with_middle("priority=backward"), Kind::pinch_point) ==
        Texts{"certain priority=backward (oncoming traffic's) w2",
              "certain priority=backward (ours) w2"});
  CHECK(reasons(street_with("na priority=forward\n"), Kind::pinch_point) ==
        Texts{"certain priority=forward (oncoming traffic's) na",
              "certain priority=forward (ours) na"});
}

TEST_CASE("a choker on a way and on its node is one pinch point", "[mark][pinch_points]") {
  const BuiltTown town = built_town(R"(
W   amb   E
w1 Wa highway=residential
w2 amb highway=residential traffic_calming=choker
w3 bE highway=residential
nm traffic_calming=choker priority=forward
)");
  CHECK(places(town, Kind::pinch_point) == Texts{"w2"});
  CHECK(chances(town, Kind::pinch_point) == Texts{"EbmaW", "WambE"});
}

TEST_CASE("a bridge of one lane between wider roads is a pinch point", "[mark][pinch_points]") {
  CHECK(reasons(road_with_middle("bridge=yes lanes=1"), Kind::pinch_point) ==
        Texts{"certain bridge=yes lanes=1 (priority not mapped) w2"});
  CHECK(reasons(road_with_middle("bridge=yes width=3.5 priority=forward"), Kind::pinch_point) ==
        Texts{"certain priority=forward (oncoming traffic's) w2",
              "certain priority=forward (ours) w2"});
}

TEST_CASE("a bridge is none when it is wide, or when its road is as narrow",
          "[mark][pinch_points]") {
  CHECK(places(road_with_middle("bridge=yes lanes=2"), Kind::pinch_point).empty());
  CHECK(places(road_with_middle("bridge=yes width=4.5"), Kind::pinch_point).empty());
  CHECK(places(road_with_middle("bridge=no lanes=1"), Kind::pinch_point).empty());
  CHECK(places(road_with_middle("bridge=yes lanes=1", "lanes=1"), Kind::pinch_point).empty());
}

TEST_CASE("on a one-way street nobody comes the other way", "[mark][pinch_points]") {
  const BuiltTown town = built_town(R"(
W   a   E
    S
w1 WaE highway=residential oneway=yes
w2 ESW highway=residential
na traffic_calming=choker
)");
  CHECK(chances(town, Kind::pinch_point).empty());
}

TEST_CASE("where lights let the two sides through in turn, it is theirs", "[mark][pinch_points]") {
  const BuiltTown town = street_with(
      "na traffic_calming=choker\n"
      "ns highway=traffic_signals traffic_signals:direction=forward\n"
      "nt highway=traffic_signals traffic_signals:direction=backward\n");
  CHECK(places(town, Kind::pinch_point).empty());
  CHECK(town.report.counted("pinch points taken in turn by lights") == 1);
}

TEST_CASE("lights of the next junction leave a pinch point alone", "[mark][pinch_points]") {
  const BuiltTown town = street_with(
      "na traffic_calming=choker\n"
      "ns highway=traffic_signals traffic_signals:direction=backward\n");
  CHECK(places(town, Kind::pinch_point) == Texts{"na"});
}

TEST_CASE("a narrow bridge is one when the road is wider on either side of it",
          "[mark][pinch_points]") {
  // The crossing parts the bridge in two.
  const auto bridge = [](const std::string& before, const std::string& behind) {
    return places(built_town("W   amb   E\nw1 Wa highway=unclassified " + before +
                             "\nw2 amb highway=unclassified bridge=yes lanes=1\n"
                             "w3 bE highway=unclassified " +
                             behind + "\nnm highway=crossing crossing=zebra\n"),
                  Kind::pinch_point);
  };
  CHECK(bridge("", "") == Texts{"w2"});
  CHECK(bridge("lanes=1", "") == Texts{"w2"});
  CHECK(bridge("", "width=3.5") == Texts{"w2"});
  CHECK(bridge("lanes=1", "width=3.5").empty());
}

}  // namespace
}  // namespace loopwright::test
