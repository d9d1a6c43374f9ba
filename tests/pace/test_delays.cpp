#include <catch2/catch.hpp>
#include <cmath>

#include "pace/plain_roads.hpp"

using namespace loopwright;
using namespace loopwright::test;
using pace::Pace;
using pace::Spell;
using road::Control;

namespace {

std::int64_t delay_ms(Control control, const pace::Learner& learner,
                      const Instant& start = saturday) {
  const PlainRoads town;
  const road::Roads roads = town.roads();
  return Pace(roads, learner, start).at(control).likely_ms;
}

/// Mean wait for a gap of critical_s in a stream of so many cars an hour (Poisson arrivals).
double gap_wait_s(double cars_an_hour, double critical_s) {
  const double q = cars_an_hour / 3600;
  return (std::exp(q * critical_s) - q * critical_s - 1) / q;
}

/// Uniform part of the delay at signals, Webster (Road Research Technical Paper 39, 1958).
double signal_delay_s(double cycle_s, double green_share, double saturation) {
  return cycle_s * std::pow(1 - green_share, 2) / (2 * (1 - green_share * saturation));
}

}  // namespace

TEST_CASE("a road that just goes on costs no delay", "[pace]") {
  CHECK(delay_ms(Control::none, {.level = 1}) == 0);
  CHECK(delay_ms(Control::priority, {.level = 1}) == 0);
}

TEST_CASE("delays at level 5 are those of the table", "[pace]") {
  // TRADE 2.6, a judgement: give-way left 6, right 10; stop 4 more; mini 6; roundabout 8; …
  const pace::Learner ready{.level = 5};
  CHECK(delay_ms(Control::give_way_near, ready) == 6000);
  CHECK(delay_ms(Control::give_way_far, ready) == 10000);
  CHECK(delay_ms(Control::stop_near, ready) == delay_ms(Control::give_way_near, ready) + 4000);
  CHECK(delay_ms(Control::stop_far, ready) == delay_ms(Control::give_way_far, ready) + 4000);
  CHECK(delay_ms(Control::across, ready) == 6000);
  CHECK(delay_ms(Control::signals, ready) == 20000);
  CHECK(delay_ms(Control::signal_crossing, ready) == 5000);
  CHECK(delay_ms(Control::zebra, ready) == 3000);
  CHECK(delay_ms(Control::mini_roundabout, ready) == 6000);
  CHECK(delay_ms(Control::roundabout, ready) == 8000);
  CHECK(delay_ms(Control::multi_lane_roundabout, ready) == 12000);
}

TEST_CASE("beginners wait longer at junctions, and the morning peak makes it longer still",
          "[pace]") {
  CHECK(delay_ms(Control::roundabout, {.level = 1}) == 10400);
  CHECK(delay_ms(Control::roundabout, {.level = 2}) == 10400);
  CHECK(delay_ms(Control::roundabout, {.level = 3}) == 9200);
  CHECK(delay_ms(Control::roundabout, {.level = 4}) == 8000);
  CHECK(delay_ms(Control::roundabout, {.level = 4}, friday_morning) == 14000);
  CHECK(delay_ms(Control::roundabout, {.level = 4, .factor = 1.5}) == 12000);
}

TEST_CASE("the peak is on weekdays from 7:30 until 9:30 and from 16:30 until 18:30", "[pace]") {
  const auto at = [](std::int64_t after_friday_8_s) {
    return delay_ms(Control::signals, {.level = 5}, friday_morning.plus_seconds(after_friday_8_s));
  };
  CHECK(at(-1801) == 20000);     // 7:29:59
  CHECK(at(-1800) == 35000);     // 7:30
  CHECK(at(5400 - 1) == 35000);  // 9:29:59
  CHECK(at(5400) == 20000);
  CHECK(at(30600) == 35000);   // 16:30
  CHECK(at(37800) == 20000);   // 18:30
  CHECK(at(86400) == 20000);   // Saturday 8:00
  CHECK(at(-86400) == 35000);  // Thursday
}

TEST_CASE("the peak goes by the clock on the wall, not by universal time", "[pace]") {
  const Instant summer_8_30{1782891000, 3600};  // Wednesday 1 July 2026, 08:30 in Britain
  CHECK(delay_ms(Control::signals, {.level = 5}, summer_8_30) == 35000);
  CHECK(delay_ms(Control::signals, {.level = 5}, {summer_8_30.unix_s, -4 * 3600}) == 20000);
}

// The whole table of our trade notes, which a simulation there bears out: waits at a give-way by the flow on the main
// road for critical gaps of 4.5 (experienced), 6.5 (learner) and 8 s (nervous).
TEST_CASE("the closed form of waiting for a gap gives the trade's table", "[pace]") {
  struct Row {
    double cars_an_hour, experienced_s, learner_s, nervous_s;
  };
  for (const Row& row : {Row{200, 0.61, 1.33, 2.07}, Row{400, 1.34, 3.03, 4.89},
                         Row{600, 2.20, 5.23, 8.76}, Row{900, 3.82, 9.81, 17.56}}) {
    INFO(row.cars_an_hour);
    CHECK(gap_wait_s(row.cars_an_hour, 4.5) == Approx(row.experienced_s).margin(0.01));
    CHECK(gap_wait_s(row.cars_an_hour, 6.5) == Approx(row.learner_s).margin(0.01));
    CHECK(gap_wait_s(row.cars_an_hour, 8.0) == Approx(row.nervous_s).margin(0.01));
  }
}

TEST_CASE("signals cost what the published formula gives for usual cycles", "[pace]") {
  // Check values: C60 g.45 x.6 -> 12.4 s, C90 g.40 x.7 -> 22.5 s, C120 g.35 x.8 -> 35.2 s.
  CHECK(signal_delay_s(60, .45, .6) == Approx(12.4).epsilon(0.005));
  CHECK(signal_delay_s(90, .40, .7) == Approx(22.5).epsilon(0.005));
  CHECK(signal_delay_s(120, .35, .8) == Approx(35.2).epsilon(0.005));
  const double ours_s = static_cast<double>(delay_ms(Control::signals, {.level = 5})) / 1000;
  CHECK(ours_s > signal_delay_s(60, .45, .6));
  CHECK(ours_s < signal_delay_s(120, .35, .8));
}

TEST_CASE("emerging across traffic costs a stop and a wait for a usual gap", "[pace]") {
  // Check values of the closed form: 200 cars an hour, 4.5 s: 0.61 s; 900 an hour, 6.5 s: 9.81 s.
  CHECK(gap_wait_s(200, 4.5) == Approx(0.61).epsilon(0.01));
  CHECK(gap_wait_s(900, 6.5) == Approx(9.81).epsilon(0.001));
  // Stopping from 20 mph and starting again (1.2 and 1.5 m/s²) loses 6.7 s, from 30 mph 10.1 s.
  const double beginner_s =
      static_cast<double>(delay_ms(Control::give_way_far, {.level = 1})) / 1000;
  CHECK(beginner_s > 6.7 + gap_wait_s(200, 6.5));
  CHECK(beginner_s < 10.1 + gap_wait_s(900, 6.5));
}

TEST_CASE("a main-road drive is slower than the limit by about what the ministry measures",
          "[pace]") {
  // DfT, local A roads in England, year to June 2023: 23.3 mph and 46.7 s of delay per mile, so
  // 154.5 s a mile against 107.8 s undelayed: a ratio of 1.43. An honest band, not a fit: in two
  // miles of 30 limit three signals, a roundabout, a zebra and a puffin, driven by a learner who
  // needs no prompts.
  CHECK((3600 / 23.3) / (3600 / 23.3 - 46.7) == Approx(1.43).epsilon(0.005));
  PlainRoads town;
  const StretchId road = town.add({.road_class = road::RoadClass::primary, .length_m = 2 * mile_m});
  const road::Roads roads = town.roads();
  const Pace pace(roads, {.level = 4}, saturday);
  Spell two_miles = pace.along(road);
  for (const Control control : {Control::signals, Control::signals, Control::signals,
                                Control::roundabout, Control::zebra, Control::signal_crossing})
    two_miles += pace.at(control);
  const double ratio = static_cast<double>(two_miles.likely_ms) / 1000 / (2 * 3600 / 30.0);
  CHECK(ratio == Approx(1.43).epsilon(0.1));
}
