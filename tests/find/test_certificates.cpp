// How good a loop is said to be. Definitions: DEVELOPERS.md, "Value of a loop", "Bounds".
#include <catch2/catch.hpp>

#include "loopwright/find/find.hpp"
#include "loopwright/wish/wish.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {

namespace {

const BuiltTown& streets() {
  static const BuiltTown town = built_town(draw_town(crossing_streets, 100), "GB-ENG");
  return town;
}

wish::Wish wish_for(int minutes, std::initializer_list<std::string_view> wants) {
  const road::Roads roads = streets().roads();
  const Point a = roads.nodes[streets().node('A').index()].at;
  wish::Wish wish;
  wish.home = point_from_degrees(a.lat(), a.lon() + 0.003);
  wish.start = {1795878000, 0};
  wish.minutes = minutes;
  for (const std::string_view want : wants) wish.wants.push_back(wish::read_want(want));
  return wish;
}

wish::Certificate certificate_of(const wish::Wish& wish, find::Effort effort) {
  const auto result = find::find_loops(streets().roads(), wish, {}, effort);
  REQUIRE(result.loops.size() == 1);
  return result.loops[0].certificate;
}

}  // namespace

TEST_CASE("a loop of junctions as many as fit has a bound above its worth", "[find][certificate]") {
  for (const int minutes : {12, 15, 20, 30})
    for (const find::Effort effort :
         {find::Effort::quick, find::Effort::soon, find::Effort::usual, find::Effort::thorough}) {
      const auto c = certificate_of(wish_for(minutes, {"roundabout=max"}), effort);
      REQUIRE(c.bound);
      CHECK(*c.bound >= c.value);
      CHECK(c.state == (*c.bound == c.value ? "best possible" : "within"));
    }
}

TEST_CASE("who looks longer finds no less, and in a small town more", "[find][certificate]") {
  for (const int minutes : {12, 20, 30, 45})
    for (const int spacing_s : {120, 180}) {
      wish::Wish wish = wish_for(minutes, {"roundabout=max"});
      wish.spacings = {{road::Kind::roundabout, spacing_s}};
      const auto quick = certificate_of(wish, find::Effort::quick);
      const auto soon = certificate_of(wish, find::Effort::soon);
      const auto usual = certificate_of(wish, find::Effort::usual);
      CAPTURE(minutes, spacing_s);
      CHECK(soon.value >= quick.value);
      CHECK(usual.value >= soon.value);
      if (minutes >= 30) CHECK(usual.value > quick.value);
    }
}

TEST_CASE("who looks longer says it no less closely", "[find][certificate]") {
  const wish::Wish wish = wish_for(20, {"roundabout=max", "emerge:right=2"});
  const auto quick = certificate_of(wish, find::Effort::quick);
  const auto thorough = certificate_of(wish, find::Effort::thorough);
  REQUIRE(quick.bound);
  REQUIRE(thorough.bound);
  CHECK(*thorough.bound <= *quick.bound);
}

TEST_CASE("counts alone are bounded by the road driven twice", "[find][certificate]") {
  for (const int minutes : {12, 15, 20}) {
    const auto c = certificate_of(wish_for(minutes, {"roundabout=1"}), find::Effort::usual);
    REQUIRE(c.bound);
    CHECK(*c.bound >= c.value);
    CHECK(*c.bound <= 0);
  }
}

TEST_CASE("where some drive has no road twice, one of counts is the best possible",
          "[find][certificate]") {
  for (const int minutes : {12, 13, 14}) {
    const auto c = certificate_of(wish_for(minutes, {"roundabout=1"}), find::Effort::usual);
    CAPTURE(minutes);
    CHECK(c.value == 0);
    CHECK(c.state == "best possible");
  }
}

TEST_CASE("what is welcome is no part of a bound", "[find][certificate]") {
  wish::Wish wish = wish_for(15, {"roundabout=max"});
  wish.welcome = {road::Kind::zebra};
  CHECK(certificate_of(wish, find::Effort::usual).state == "searched");
}

TEST_CASE("planned stops space passes, so they widen the bound", "[find][certificate]") {
  wish::Wish wish = wish_for(20, {"roundabout=max"});
  wish.stops.talk_minutes = 4;
  const auto result = find::find_loops(streets().roads(), wish, {}, find::Effort::thorough);
  for (const wish::Loop& loop : result.loops) {
    REQUIRE(loop.certificate.bound);
    CHECK(*loop.certificate.bound >= 11'000);  // one each two minutes of twenty, and the first
  }
}

TEST_CASE("a wish that can't be met tells what it needs at least", "[find][certificate]") {
  const auto wish = wish_for(12, {"roundabout:right=6", "level-crossing=6"});
  const auto result = find::find_loops(streets().roads(), wish, {});
  REQUIRE(result.shortfall);
  REQUIRE(result.shortfall->at_least_minutes);
  CHECK(*result.shortfall->at_least_minutes > 5);
  for (const wish::WantCost& cost : result.shortfall->costs) {
    CHECK(cost.minutes >= 0);
    CHECK(cost.minutes <= *result.shortfall->at_least_minutes);
  }
}

}  // namespace loopwright::test
