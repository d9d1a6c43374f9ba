// Where one may begin near a door, never at it. Highway Code rule 243: no stopping within 10 m of a junction; that a corner
// names the place and how far from the door it is are this project's.
#include <catch2/catch.hpp>

#include <algorithm>

#include "find/crossing_lesson.hpp"
#include "loopwright/find/begin_places.hpp"

namespace loopwright::test {
namespace {

find::BeginAsk ask_near(char letter) {
  const road::Roads roads = town().roads();
  const Instant noon{1795867200, 0};
  return {.door = roads.nodes[town().node(letter).index()].at,
          .from_m = 100,
          .to_m = 1500,
          .room_m = 20,
          .corner_m = 400,
          .apart_m = 200,
          .most = 8,
          .stay = {noon, noon.plus_seconds(3600)}};
}

TEST_CASE("places to begin lie near the door, never at it, and apart", "[find][begin]") {
  const road::Roads roads = town().roads();
  const find::BeginAsk ask = ask_near('A');
  const auto places = find::places_to_begin(roads, ask, setting_of(roads));
  REQUIRE_FALSE(places.empty());
  CHECK(places.size() <= ask.most);
  for (const find::BeginPlace& place : places) {
    CHECK(place.off_m >= 100);
    CHECK(place.off_m <= 1500);
    CHECK(distance_m(place.at, ask.door) == Approx(place.off_m));
    CHECK_FALSE(place.street.empty());
    CHECK_FALSE(place.corner.empty());
    CHECK(place.street != place.corner);
    CHECK_THAT(place.check, Catch::StartsWith("check lines, signs and drives"));
    REQUIRE_FALSE(place.alongside.empty());
    CHECK(find::stands_beside(place, place.alongside.front()));
    for (const find::BeginPlace& other : places)
      CHECK((&other == &place || distance_m(other.at, place.at) >= 200));
  }
  CHECK(std::is_sorted(places.begin(), places.end(),
                       [](const auto& a, const auto& b) { return a.off_m < b.off_m; }));
}

TEST_CASE("a place lies beside a kerb with room, ten metres and more from any junction",
          "[find][begin]") {
  const road::Roads roads = town().roads();
  for (const find::BeginPlace& place :
       find::places_to_begin(roads, ask_near('A'), setting_of(roads)))
    for (const StretchId stretch : place.alongside) {
      const auto kerbs = roads.pull_ups_of(stretch);
      CHECK(std::any_of(kerbs.begin(), kerbs.end(), [](const road::PullUp& kerb) {
        return static_cast<double>(kerb.to_m - kerb.from_m) >= 20;
      }));
      for (const NodeId node : {roads.from_node(stretch), roads.to_node(stretch)})
        CHECK(distance_m(roads.nodes[node.index()].at, place.at) >= 10);
    }
}

TEST_CASE("with no kerb of that room there is no place", "[find][begin]") {
  const road::Roads roads = town().roads();
  find::BeginAsk ask = ask_near('A');
  ask.room_m = 5000;
  CHECK(find::places_to_begin(roads, ask, setting_of(roads)).empty());
}

TEST_CASE("a place that is named is taken however far from the door", "[find][begin]") {
  const road::Roads roads = town().roads();
  find::BeginAsk ask = ask_near('A');
  const auto near = find::places_to_begin(roads, ask, setting_of(roads));
  REQUIRE_FALSE(near.empty());
  ask.door = point_from_degrees(0, 0);
  const auto named = find::place_to_begin_at(roads, ask, near[0].at, setting_of(roads));
  REQUIRE(named.size() == 1);
  CHECK(named[0].at == near[0].at);
  CHECK(find::place_to_begin_at(roads, ask, point_from_degrees(1, 1), setting_of(roads)).empty());
}

}  // namespace
}  // namespace loopwright::test
