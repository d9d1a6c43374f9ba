// A moment, with the offset its clock on the wall had: "2026-11-28T15:00:00+00:00".
//
// Rules: an Instant always carries an offset, so its civil date and time need no zone data.
// Texts without an offset are civil times; the zone of the area turns them into instants
// (hours/zone.hpp). Why: nothing reads the clock; today and the start are arguments.
// Source of the text form: ISO 8601 / RFC 3339.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace loopwright {

enum class Weekday : std::uint8_t {
  monday,
  tuesday,
  wednesday,
  thursday,
  friday,
  saturday,
  sunday
};

/// A date of the (proleptic) Gregorian calendar.
struct Date {
  int year = 1970;
  int month = 1;  ///< 1 to 12
  int day = 1;    ///< 1 to 31
  friend constexpr auto operator<=>(const Date&, const Date&) = default;
};

/// A date and time as read off a wall clock, to the second.
struct CivilTime {
  Date date;
  int hour = 0;
  int minute = 0;
  int second = 0;
  friend constexpr auto operator<=>(const CivilTime&, const CivilTime&) = default;
};

struct Instant {
  std::int64_t unix_s = 0;
  std::int32_t offset_s = 0;  ///< civil time minus UTC
  [[nodiscard]] CivilTime civil() const;
  /// This moment later on, the offset kept.
  [[nodiscard]] Instant plus_seconds(std::int64_t seconds) const {
    return {unix_s + seconds, offset_s};
  }
  friend constexpr bool operator==(const Instant&, const Instant&) = default;
};

/// Days since 1970-01-01. Rules: the date exists.
std::int64_t days_since_epoch(Date date);
Date date_from_days(std::int64_t days);
Weekday weekday_of(Date date);
/// Seconds since 1970-01-01T00:00 on the same wall clock.
std::int64_t civil_seconds(const CivilTime& time);

/// A civil time or an instant, as written. offset is empty when the text had none.
struct WrittenTime {
  CivilTime civil;
  std::optional<std::int32_t> offset_s;
};

/// Reads "2026-11-28T15:00", with or without seconds, with "Z", "+01:00" or no offset.
/// Empty when the text is none of these or the date doesn't exist.
std::optional<WrittenTime> read_time(std::string_view text);
/// Reads "2026-11-28". Empty when it is no such date.
std::optional<Date> read_date(std::string_view text);

/// "2026-11-28T15:00:00+00:00"
std::string write_time(const Instant& instant);
/// "15:41" on the wall clock of the instant.
std::string write_clock(const Instant& instant);

}  // namespace loopwright
