// The library looks for the next rise and set after a moment: asked from the day's midnight on the
// local clock.
#include "hours/sun.hpp"

#include <libnova/julian_day.h>
#include <libnova/solar.h>

#include <cmath>

namespace loopwright::hours {
namespace {

struct RiseAndSet {
  std::int64_t rise = 0, set = 0;
};

std::int64_t unix_of(double julian_day) {
  constexpr double epoch = 2440587.5;  // the Julian day of 1970-01-01T00:00Z
  return std::llround((julian_day - epoch) * 86'400);
}

std::optional<RiseAndSet> after(double julian_day, ln_lnlat_posn place, double horizon_deg) {
  ln_rst_time times{};
  if (ln_get_solar_rst_horizon(julian_day, &place, horizon_deg, &times) != 0) return std::nullopt;
  return RiseAndSet{unix_of(times.rise), unix_of(times.set)};
}

}  // namespace

std::optional<SunMoments> sun_on(Date day, std::int32_t offset_s, Point place) {
  constexpr double epoch = 2440587.5;
  const double midnight =
      epoch + static_cast<double>(days_since_epoch(day)) - static_cast<double>(offset_s) / 86'400;
  const ln_lnlat_posn there{place.lon(), place.lat()};
  const auto sun = after(midnight, there, LN_SOLAR_STANDART_HORIZON);
  const auto twilight = after(midnight, there, LN_SOLAR_CIVIL_HORIZON);
  if (!sun || !twilight) return std::nullopt;
  return SunMoments{twilight->rise, sun->rise, sun->set, twilight->set};
}

}  // namespace loopwright::hours
