#include <catch2/catch.hpp>

#include "pace/plain_roads.hpp"

using namespace loopwright;
using namespace loopwright::test;
using pace::Pace;
using pace::Percentiles;
using pace::Spell;

TEST_CASE("no time has no range", "[pace]") {
  const Percentiles none = pace::percentiles_of({});
  CHECK(none.low == 0);
  CHECK(none.likely == 0);
  CHECK(none.high == 0);
}

TEST_CASE("low and high are the 10th and 90th percentile of a normal law", "[pace]") {
  // z(0.90) = 1.2816, as in any printed table of the standard normal distribution.
  const Percentiles p = pace::percentiles_of({600000, 100 * 100});
  CHECK(p.likely == 600);
  CHECK(p.low == Approx(600 - 128.16));
  CHECK(p.high == Approx(600 + 128.16));
}

TEST_CASE("independent delays add by variance, not by their extremes", "[pace]") {
  // Spreads of 3 and 4 make 5 (Pythagoras).
  const Spell both = Spell{10000, 9} + Spell{20000, 16};
  CHECK(both.likely_ms == 30000);
  CHECK(pace::percentiles_of(both).high == Approx(30 + 1.2816 * 5));
}

TEST_CASE("a wide spread never makes the low time less than half the likely one", "[pace]") {
  const Percentiles p = pace::percentiles_of({10000, 400});
  CHECK(p.low == 5);
  CHECK(p.high == Approx(10 + 1.2816 * 20));
}

TEST_CASE("an hour's drive is told to within a few minutes", "[pace]") {
  PlainRoads town;
  const StretchId road = town.add({.length_m = 25.5 * mile_m});
  const road::Roads roads = town.roads();
  const Pace pace(roads, {}, saturday);
  Spell hour = pace.along(road);
  CHECK(hour.likely_ms == 3600000);
  CHECK(hour.variance_s2 == Approx(3 * 3600));
  const Percentiles alone = pace::percentiles_of(hour);
  CHECK(alone.high - alone.likely == Approx(1.2816 * 103.92).epsilon(0.001));
  for (int i = 0; i < 10; ++i) hour += pace.at(road::Control::signals);
  const Percentiles with_lights = pace::percentiles_of(hour);
  // Ten lights add variance, so the range widens by much less than ten times their own.
  const Percentiles one_light = pace::percentiles_of(pace.at(road::Control::signals));
  const double widened = (with_lights.high - with_lights.likely) - (alone.high - alone.likely);
  CHECK(widened > 0);
  CHECK(widened < 10 * (one_light.high - one_light.likely) / 2);
}
