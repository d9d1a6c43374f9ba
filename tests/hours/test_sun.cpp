// Sunrise, sunset and civil twilight through the year against the equations of NOAA's solar
// calculator (gml.noaa.gov/grad/solcalc, after Meeus, Astronomical Algorithms, ch. 25), worked out
// here by themselves. The horizon is that of HM Nautical Almanac Office (Astronomical Information Sheet
// 7): sunrise and sunset with the sun's centre at 90 degrees 50 minutes from the zenith, civil
// twilight at 96 degrees.
#include <catch2/catch.hpp>

#include <cmath>
#include <ctime>
#include <numbers>
#include <optional>
#include <utility>

#include "loopwright/hours/setting.hpp"
#include "loopwright/hours/sun_place.hpp"

namespace loopwright::hours {
namespace {

double sine(double degrees) {
  return std::sin(degrees * std::numbers::pi / 180);
}

double cosine(double degrees) {
  return std::cos(degrees * std::numbers::pi / 180);
}

struct Sun {
  double declination_deg = 0, equation_of_time_min = 0;
};

/// centuries: Julian, since 2000.
Sun sun_at(double centuries) {
  const double t = centuries;
  const double mean = 280.46646 + t * (36000.76983 + t * 0.0003032);
  const double anomaly = 357.52911 + t * (35999.05029 - 0.0001537 * t);
  const double e = 0.016708634 - t * (0.000042037 + 0.0000001267 * t);
  const double centre = sine(anomaly) * (1.914602 - t * (0.004817 + 0.000014 * t)) +
                        sine(2 * anomaly) * (0.019993 - 0.000101 * t) +
                        sine(3 * anomaly) * 0.000289;
  const double node = 125.04 - 1934.136 * t;
  const double longitude = mean + centre - 0.00569 - 0.00478 * sine(node);
  const double tilt = 23.4392911 - 0.0130042 * t + 0.00256 * cosine(node);
  const double half = sine(tilt / 2) / cosine(tilt / 2);
  const double y = half * half;
  const double equation = y * sine(2 * mean) - 2 * e * sine(anomaly) +
                          4 * e * y * sine(anomaly) * cosine(2 * mean) -
                          0.5 * y * y * sine(4 * mean) - 1.25 * e * e * sine(2 * anomaly);
  const double degree = 180 / std::numbers::pi;
  return {std::asin(sine(tilt) * sine(longitude)) * degree, 4 * equation * degree};
}

enum class Half { morning, evening };

/// Minutes after midnight UTC; empty when the sun doesn't pass that height.
std::optional<double> passes(std::int64_t day, Point place, double height_deg, Half half) {
  double minutes = half == Half::morning ? 360 : 1080;
  for (int turn = 0; turn < 6; ++turn) {
    const double days = static_cast<double>(day) - 10957.5 + minutes / 1440;  // since 2000-01-01T12
    const Sun sun = sun_at(days / 36525);
    const double hour = (sine(height_deg) - sine(place.lat()) * sine(sun.declination_deg)) /
                        (cosine(place.lat()) * cosine(sun.declination_deg));
    if (std::abs(hour) > 1) return std::nullopt;
    const double angle = std::acos(hour) * 180 / std::numbers::pi;
    minutes = 720 - 4 * (place.lon() + (half == Half::morning ? angle : -angle)) -
              sun.equation_of_time_min;
  }
  return minutes;
}

/// The largest difference over a year, with its sign.
struct Spread {
  double earliest = 0, latest = 0;
  void add(double ours, const std::optional<double>& theirs) {
    REQUIRE(theirs);
    earliest = std::min(earliest, ours - *theirs), latest = std::max(latest, ours - *theirs);
  }
};

void check_year(Point place) {
  const Setting utc("GB-ENG", "", place);
  Spread sunrise, sunset, dawn, dusk;
  constexpr double horizon = -50.0 / 60, twilight = -6;
  const std::int64_t first = days_since_epoch({2026, 1, 1});
  for (std::int64_t day = first; day < first + 365; ++day) {
    const auto ours = utc.sun(date_from_days(day));
    REQUIRE(ours);
    sunrise.add(ours->sunrise, passes(day, place, horizon, Half::morning));
    sunset.add(ours->sunset, passes(day, place, horizon, Half::evening));
    dawn.add(ours->dawn.value(), passes(day, place, twilight, Half::morning));
    dusk.add(ours->dusk.value(), passes(day, place, twilight, Half::evening));
  }
  for (const Spread& spread : {sunrise, sunset, dawn, dusk}) {
    CHECK(spread.earliest > -1);
    CHECK(spread.latest < 1);
  }
}

}  // namespace

TEST_CASE("sunrise, sunset, dawn and dusk are right to the minute all the year", "[hours]") {
  check_year(point_from_degrees(51.5877, -2.9984));  // Newport
  check_year(point_from_degrees(53.7997, -1.5492));  // Leeds
  check_year(point_from_degrees(60.155, -1.145));    // Lerwick
}

TEST_CASE("asked about days all over some years the sun is worked out once for each", "[hours]") {
  const Setting there("GB-ENG", "Europe/London", point_from_degrees(53.7997, -1.5492));
  const Setting copy = there;
  const std::int64_t first = days_since_epoch({2026, 1, 1});
  const auto round = [&](const Setting& setting) {
    int minutes = 0;
    const std::clock_t before = std::clock();
    for (std::int64_t day = 0; day < 365; ++day) {
      // 97 and 365 have no common factor: every day once, none beside the last.
      const auto sun = setting.sun(date_from_days(first + day * 97 % 365));
      REQUIRE(sun);
      minutes += sun->dawn.value() + 2 * sun->sunrise + 3 * sun->sunset + 5 * sun->dusk.value();
    }
    return std::pair(minutes, std::clock() - before);
  };
  const auto [worked_out, took] = round(there);
  for (const Setting& again : {there, copy}) {
    const auto [kept, took_again] = round(again);
    CHECK(kept == worked_out);
    CHECK(took_again * 5 < took);
  }
}

TEST_CASE("a day on which the sun doesn't rise is kept as such, and years far off are told",
          "[hours]") {
  const Setting north("NO", "UTC", point_from_degrees(71.2, 25.8));
  for (int twice = 0; twice < 2; ++twice) {
    CHECK_FALSE(north.sun({2026, 12, 21}).has_value());
    const auto spring = north.sun({2026, 3, 20});
    REQUIRE(spring);
    CHECK(spring->sunset > spring->sunrise);
    // 1024 days on, in the dark of January: it pushes the other out.
    CHECK_FALSE(north.sun(date_from_days(days_since_epoch({2026, 3, 20}) + 1024)).has_value());
    const auto later = north.sun({2300, 3, 20});
    REQUIRE(later);
    CHECK(later->sunset > later->sunrise);
  }
}

TEST_CASE("the place of the sun is that of a published example", "[hours]") {
  // Reda and Andreas, Solar Position Algorithm (NREL/TP-560-34302, 2008), table A5.1: 17 October 2003,
  // 12:30:30 at UTC-7, 39.742476 N 105.1786 W: zenith 50.11162 degrees (refraction of 0.01 in it, seen
  // from 1830 m), azimuth 194.34024 degrees.
  const Instant at{civil_seconds({{2003, 10, 17}, 12, 30, 30}) + 7 * 3600, -7 * 3600};
  const SunPlace sun = sun_place(at, point_from_degrees(39.742476, -105.1786));
  CHECK(sun.bearing_deg == Approx(194.34024).margin(0.02));
  CHECK(90 - sun.height_deg == Approx(50.11162).margin(0.03));
}

TEST_CASE("the sun is deep below the horizon at midnight and above it at noon", "[hours]") {
  const auto height = [](int hour) {
    return sun_place({civil_seconds({{2026, 11, 28}, hour, 0, 0}), 0},
                     point_from_degrees(54.3, 2.6))
        .height_deg;
  };
  CHECK(height(0) < -40);
  CHECK(height(12) > 10);
}

}  // namespace loopwright::hours
