// Method:
//   1. CLI11 sorts words into options; its own refusals become one line with the way to the help.
//   2. Texts become values: numbers within their range, times.
//   3. A time without an offset is read off the clock of the area, one with another offset is told
//      by that clock; no time at all is now. This is
//      the only place of the program that reads the clock.
#include "command/arguments.hpp"

#include <chrono>
#include <cmath>
#include <iostream>
#include <utility>

#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

std::string as_given(std::string_view text) {
  constexpr std::size_t shown = 40;  // characters; more would bury what the option takes
  if (printable(text) != text) return "text that can't be printed";
  const std::size_t end = bytes_of(text, shown);
  return "'" + std::string(text.substr(0, end)) + (end < text.size() ? "…'" : "'");
}

int whole_number(std::string_view option, std::string_view text, Between allowed) {
  const std::optional<int> number = read_int(text);
  if (number && *number >= allowed.low && *number <= allowed.high) return *number;
  throw UsageError(std::string(option) + " takes a whole number from " +
                   std::to_string(allowed.low) + " to " + std::to_string(allowed.high) + ", not " +
                   as_given(text));
}

Region region_named(std::string_view code) {
  if (auto region = find_region(code)) return *region;
  throw UsageError("--region takes " + std::string(regions_there_are) + ", not " + as_given(code));
}

WrittenTime time_of(std::string_view option, std::string_view text) {
  // Until 1972 there were clocks whose offset was no whole minute (tz database, Africa/Monrovia), which texts of
  // times can't say; a lesson on the last day of 9999 would end in a year of five digits.
  constexpr int first_year = 1973, last_year = 9998;
  const auto written = read_time(text);
  if (!written) {
    throw UsageError(std::string(option) +
                     " takes a date and time, such as 2026-11-28T15:00, not " + as_given(text));
  }
  if (written->civil.date.year < first_year || written->civil.date.year > last_year) {
    throw UsageError(std::string(option) + " takes years from 1973 to 9998, not " + as_given(text));
  }
  return *written;
}

Instant moment(const std::optional<WrittenTime>& written, std::string_view zone) {
  if (!written) {
    const auto now = std::chrono::system_clock::now().time_since_epoch();
    return hours::with_offset_of(zone,
                                 std::chrono::duration_cast<std::chrono::seconds>(now).count());
  }
  if (!written->offset_s) return hours::instant_in(zone, written->civil);
  return hours::with_offset_of(zone, civil_seconds(written->civil) - *written->offset_s);
}

Instant moment(const std::optional<WrittenTime>& written, const road::AreaInfo& area) {
  const Instant at = moment(written, area.zone);
  tell_jump(std::cerr, written, at);
  return at;
}

std::string kinds_help() {
  std::string text = "Kinds, and what may follow them after a colon:\n";
  for (const road::Kind kind : road::all_kinds()) {
    text.append("  ").append(road::name(kind));
    const char* before = ": ";
    for (const road::Movement movement : road::movements_of(kind)) {
      text.append(std::exchange(before, ", ")).append(road::name(movement));
    }
    for (const wish::Verdict verdict : wish::verdicts_of(kind)) {
      text.append(std::exchange(before, ", ")).append(wish::want_word(verdict));
    }
    text += '\n';
  }
  return text;
}

double read_pace(std::string_view text) {
  const std::optional<double> pace = read_number(text);
  if (!pace || *pace < wish::least_pace || *pace > wish::most_pace)
    throw UsageError("--pace takes a number from 0.8 to 1.6, not " + as_given(text));
  return std::round(*pace * 100) / 100;
}

void add_trip(Options& app, TripTexts& texts) {
  app.add_option("--start", texts.start, "date and time, 2026-11-28T15:00 (default: now)");
  app.add_option("--level", texts.level, "of the learner, 1 to 5 (default: 3)");
  app.add_option("--pace", texts.pace, pace_help);
}

Trip trip_of(const TripTexts& texts) {
  Trip trip;
  if (!texts.start.empty()) trip.start = time_of("--start", texts.start);
  if (!texts.level.empty()) trip.level = whole_number("--level", texts.level, {1, 5});
  if (!texts.pace.empty()) trip.pace = read_pace(texts.pace);
  return trip;
}

}  // namespace loopwright::command
