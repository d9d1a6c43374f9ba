#include "command/hours_place.hpp"

#include <array>
#include <utility>

#include "command/folded.hpp"
#include "loopwright/hours/hours.hpp"
#include "loopwright/hours/zone.hpp"

namespace loopwright::command {

Nation nation_of(const Region& region, const HoursPlace& place) {
  std::string zone = hours::zone_of(region.code, place.at.value_or(Point{}));
  return {hours::Setting(region.code, zone, place.at, place.terms), zone};
}

std::string nation_name(std::string_view region_code) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 5> names{
      {{"GB-ENG", "England"},
       {"GB-WLS", "Wales"},
       {"GB-SCT", "Scotland"},
       {"GB-NIR", "Northern Ireland"},
       {"IE", "Ireland"}}};
  for (const auto& [code, name] : names)
    if (code == region_code) return std::string(name);
  return std::string(region_code);
}

std::string spoken_day(const Date& day) {
  constexpr std::array months{"January",   "February", "March",    "April",
                              "May",       "June",     "July",     "August",
                              "September", "October",  "November", "December"};
  return std::string(hours::name(weekday_of(day))) + " " + std::to_string(day.day) + " " +
         months[static_cast<std::size_t>(day.month - 1)] + " " + std::to_string(day.year);
}

std::string spoken_moment(const Instant& at) {
  return spoken_day(at.civil().date) + ", " + write_clock(at);
}

std::string put_back_words(const Instant& now, const Instant& later) {
  const bool later_on_clock = now.civil() < later.civil();
  return later.unix_s > now.unix_s && !later_on_clock ? " (clocks put back)" : "";
}

void tell_jump(std::ostream& out, const std::optional<WrittenTime>& written, const Instant& taken) {
  if (!written || written->offset_s || written->civil == taken.civil()) return;
  const Instant as_written{civil_seconds(written->civil), 0};
  print_folded(out, 0,
               "The clocks go forward that night: there is no " + write_clock(as_written) +
                   ", it is taken for " + write_clock(taken));
}

}  // namespace loopwright::command
