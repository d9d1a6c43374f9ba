// 1. Zones by country: the system's zone.tab (country, ISO 6709 place of the chief city, zone), the
//    nearest place of the country wins.
// 2. Clock to instant and back: the date library over the system's compiled zone files.
// Source of the table's form: tz database, zone.tab.
#include "loopwright/hours/zone.hpp"

#include <date/tz.h>

#include <cmath>
#include <fstream>
#include <limits>

#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::hours {
namespace {

constexpr const char* zone_table = "/usr/share/zoneinfo/zone.tab";

/// "+5130" or "-0000731" as degrees: so many digits of degrees, two of minutes, maybe of seconds.
double degrees(std::string_view text, std::size_t degree_digits) {
  const auto number = [text](std::size_t at, std::size_t digits) {
    return at < text.size() ? read_int(text.substr(at, digits)).value_or(0) : 0;
  };
  const double value = number(1, degree_digits) + number(1 + degree_digits, 2) / 60.0 +
                       number(3 + degree_digits, 2) / 3600.0;
  return text.front() == '-' ? -value : value;
}

/// The place in "+513030-0000731".
Point place(std::string_view text) {
  const std::size_t longitude = text.find_first_of("+-", 1);
  return point_from_degrees(degrees(text.substr(0, longitude), 2),
                            degrees(text.substr(longitude), 3));
}

const date::time_zone& located(std::string_view zone) {
  try {
    return *date::locate_zone(zone);
  } catch (const std::runtime_error&) {
    throw InputError("the system has no time zone '" + std::string(zone) + "'; install tzdata");
  }
}

std::int32_t offset_of(const date::sys_info& info) {
  return static_cast<std::int32_t>(info.offset.count());
}

}  // namespace

std::string zone_of(std::string_view region_code, Point near) {
  std::ifstream table(zone_table);
  if (!table) throw InputError(std::string(zone_table) + ": can't be read; install tzdata");
  std::string nearest = "UTC";
  double nearest_m = std::numeric_limits<double>::infinity();
  for (std::string line; std::getline(table, line);) {
    const auto cells = split(line, '\t');
    if (cells.size() < 3 || cells[0] != region_code.substr(0, 2)) continue;
    const double metres = distance_m(near, place(cells[1]));
    if (metres >= nearest_m) continue;
    nearest_m = metres;
    nearest = cells[2];
  }
  return nearest;
}

Instant instant_in(std::string_view zone, const CivilTime& civil) {
  const std::int64_t wall_s = civil_seconds(civil);
  const auto info = located(zone).get_info(date::local_seconds(std::chrono::seconds(wall_s)));
  // `first` holds before the clocks change. A time that comes twice is the first of the two; one
  // that is jumped over, counted on the old clock, is as much later on the new one.
  const std::int64_t unix_s = wall_s - offset_of(info.first);
  const bool jumped_over = info.result == date::local_info::nonexistent;
  return {unix_s, offset_of(jumped_over ? info.second : info.first)};
}

Instant with_offset_of(std::string_view zone, std::int64_t unix_s) {
  const auto info = located(zone).get_info(date::sys_seconds(std::chrono::seconds(unix_s)));
  return {unix_s, offset_of(info)};
}

}  // namespace loopwright::hours
