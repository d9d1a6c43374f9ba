// Method: the calendar is the library's (std::chrono, proleptic Gregorian); a wall clock is kept as
// seconds since 1970-01-01T00:00 on that clock, so an instant's civil time is its UTC seconds plus
// its offset, cut into days and the rest. Texts follow RFC 3339, seconds and offset optional.
#include "loopwright/base/instant.hpp"

#include <cassert>
#include <chrono>
#include <cstdio>

namespace loopwright {
namespace {

constexpr std::int64_t day_s = 86400;

std::chrono::year_month_day calendar(Date date) {
  return std::chrono::year{date.year} / std::chrono::month{static_cast<unsigned>(date.month)} /
         std::chrono::day{static_cast<unsigned>(date.day)};
}

CivilTime civil_from_seconds(std::int64_t seconds) {
  const std::int64_t days = (seconds >= 0 ? seconds : seconds - day_s + 1) / day_s;
  const int rest = static_cast<int>(seconds - days * day_s);
  return {date_from_days(days), rest / 3600, rest / 60 % 60, rest % 60};
}

/// Takes fixed-width fields off the front of a text.
class Reader {
 public:
  explicit Reader(std::string_view text) : rest_(text) {}
  [[nodiscard]] bool done() const { return rest_.empty(); }
  bool take(char c) {
    if (rest_.empty() || rest_.front() != c) return false;
    rest_.remove_prefix(1);
    return true;
  }
  /// A number of exactly so many digits that is at most `most`.
  bool take(int& number, std::size_t digits, int most) {
    if (rest_.size() < digits) return false;
    number = 0;
    for (const char c : rest_.substr(0, digits)) {
      if (c < '0' || c > '9') return false;
      number = number * 10 + (c - '0');
    }
    rest_.remove_prefix(digits);
    return number <= most;
  }

 private:
  std::string_view rest_;
};

bool take_date(Reader& reader, Date& date) {
  return reader.take(date.year, 4, 9999) && reader.take('-') && reader.take(date.month, 2, 12) &&
         reader.take('-') && reader.take(date.day, 2, 31) && calendar(date).ok();
}

bool take_clock(Reader& reader, CivilTime& time) {
  if (!reader.take(time.hour, 2, 23) || !reader.take(':')) return false;
  if (!reader.take(time.minute, 2, 59)) return false;
  return !reader.take(':') || reader.take(time.second, 2, 59);
}

bool take_offset(Reader& reader, std::optional<std::int32_t>& offset_s) {
  if (reader.done()) return true;
  if (reader.take('Z')) {
    offset_s = 0;
    return true;
  }
  const bool west = reader.take('-');
  int hours = 0;
  int minutes = 0;
  if (!west && !reader.take('+')) return false;
  if (!reader.take(hours, 2, 23) || !reader.take(':') || !reader.take(minutes, 2, 59)) return false;
  offset_s = (west ? -1 : 1) * (hours * 3600 + minutes * 60);
  return true;
}

}  // namespace

CivilTime Instant::civil() const {
  return civil_from_seconds(unix_s + offset_s);
}

std::int64_t days_since_epoch(Date date) {
  assert(calendar(date).ok());
  return std::chrono::sys_days{calendar(date)}.time_since_epoch().count();
}

Date date_from_days(std::int64_t days) {
  const std::chrono::year_month_day found{
      std::chrono::sys_days{std::chrono::days{static_cast<int>(days)}}};
  return {static_cast<int>(found.year()), static_cast<int>(static_cast<unsigned>(found.month())),
          static_cast<int>(static_cast<unsigned>(found.day()))};
}

Weekday weekday_of(Date date) {
  const std::chrono::weekday day{std::chrono::sys_days{calendar(date)}};
  return static_cast<Weekday>(day.iso_encoding() - 1);
}

std::int64_t civil_seconds(const CivilTime& time) {
  return days_since_epoch(time.date) * day_s + time.hour * 3600 + time.minute * 60 + time.second;
}

std::optional<WrittenTime> read_time(std::string_view text) {
  Reader reader(text);
  WrittenTime written;
  const bool read = take_date(reader, written.civil.date) && reader.take('T') &&
                    take_clock(reader, written.civil) && take_offset(reader, written.offset_s) &&
                    reader.done();
  return read ? std::optional(written) : std::nullopt;
}

std::optional<Date> read_date(std::string_view text) {
  Reader reader(text);
  Date date;
  return take_date(reader, date) && reader.done() ? std::optional(date) : std::nullopt;
}

std::string write_time(const Instant& instant) {
  const CivilTime t = instant.civil();
  const int minutes = (instant.offset_s < 0 ? -instant.offset_s : instant.offset_s) / 60;
  char text[80];
  std::snprintf(text, sizeof text, "%04d-%02d-%02dT%02d:%02d:%02d%c%02d:%02d", t.date.year,
                t.date.month, t.date.day, t.hour, t.minute, t.second,
                instant.offset_s < 0 ? '-' : '+', minutes / 60, minutes % 60);
  return text;
}

std::string write_clock(const Instant& instant) {
  const CivilTime t = instant.civil();
  char text[32];
  std::snprintf(text, sizeof text, "%02d:%02d", t.hour, t.minute);
  return text;
}

}  // namespace loopwright
