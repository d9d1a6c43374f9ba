// The library's place of the sun is by the equinox of the year 2000, its sidereal time by that of the day:
// the precession between the two, by now a minute and a half of time, must be put in, or sunrise and
// sunset are both that much early.
//
// The library looks for the next rise and set after a moment: the morning's is asked from the day's
// midnight on the local clock, the evening's from noon, since far north dusk may come after midnight.
#include "hours/sun.hpp"

#include <libnova/julian_day.h>
#include <libnova/precession.h>
#include <libnova/rise_set.h>
#include <libnova/solar.h>
#include <libnova/transform.h>

#include <cmath>

#include "loopwright/hours/sun_place.hpp"

namespace loopwright::hours {
namespace {

constexpr double epoch = 2440587.5;  // the Julian day of 1970-01-01T00:00Z
constexpr double seconds_of_day = 86'400;

std::int64_t unix_of(double julian_day) {
  return std::llround((julian_day - epoch) * seconds_of_day);
}

/// Where the sun stands, by the equinox of the day.
void place_of_sun(double julian_day, ln_equ_posn* place) {
  ln_equ_posn of_2000{};
  ln_get_solar_equ_coords(julian_day, &of_2000);
  ln_get_equ_prec(&of_2000, julian_day, place);
}

enum class Event : std::uint8_t { rise, set };

std::optional<std::int64_t> next(Event event, double julian_day, ln_lnlat_posn place,
                                 double horizon_deg) {
  ln_rst_time times{};
  if (ln_get_body_rst_horizon(julian_day, &place, place_of_sun, horizon_deg, &times) != 0) {
    return std::nullopt;
  }
  return unix_of(event == Event::rise ? times.rise : times.set);
}

}  // namespace

SunPlace sun_place(const Instant& at, Point from) {
  const double julian_day = epoch + static_cast<double>(at.unix_s) / seconds_of_day;
  ln_equ_posn sun{};
  place_of_sun(julian_day, &sun);
  ln_lnlat_posn there{from.lon(), from.lat()};
  ln_hrz_posn seen{};
  ln_get_hrz_from_equ(&sun, &there, julian_day, &seen);
  // The library counts from south; a compass from north.
  return {std::fmod(seen.az + 180, 360), seen.alt};
}

std::optional<SunMoments> sun_on(Date day, std::int32_t offset_s, Point place) {
  const double midnight = epoch + static_cast<double>(days_since_epoch(day)) -
                          static_cast<double>(offset_s) / seconds_of_day;
  const double noon = midnight + 0.5;
  const ln_lnlat_posn there{place.lon(), place.lat()};
  const auto sunrise = next(Event::rise, midnight, there, LN_SOLAR_STANDART_HORIZON);
  const auto sunset = next(Event::set, noon, there, LN_SOLAR_STANDART_HORIZON);
  if (!sunrise || !sunset) return std::nullopt;
  return SunMoments{*sunrise, *sunset, next(Event::rise, midnight, there, LN_SOLAR_CIVIL_HORIZON),
                    next(Event::set, noon, there, LN_SOLAR_CIVIL_HORIZON)};
}

}  // namespace loopwright::hours
