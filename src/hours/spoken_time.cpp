// 1. Up to the half hour minutes are past the hour, after it to the next; quarters and halves have
//    their names; noon and midnight too.
// 2. A beginning from 7:00 to 18:59 and an end from 7:01 to 19:00 have one meaning without the part
//    of the day: "seven" as a beginning is the morning, as an end the evening.
// 3. When both ends lie in the same part of the day it is said once; when the second is that of the next
//    day this is said.
#include "hours/spoken_time.hpp"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <string_view>

#include "loopwright/base/plain_words.hpp"

namespace loopwright::hours {
namespace {

constexpr int noon = day_minutes / 2;
constexpr int morning_seven = 7 * 60, evening_seven = 19 * 60;

enum class Manner { plain, with_part_of_day };

std::string hour_word(int hour) {
  return number_word(hour % 12 == 0 ? 12 : hour % 12);
}

std::string clock_words(int minutes) {
  if (minutes == 0) return "midnight";
  if (minutes == noon) return "noon";
  const int hour = minutes / 60, past = minutes % 60;
  if (past == 0) return hour_word(hour);
  const int off = past <= 30 ? past : 60 - past;
  const std::string how_far = off == 15 ? "quarter" : off == 30 ? "half" : number_word(off);
  const bool odd = off % 5 != 0;
  return how_far + (odd ? (off == 1 ? " minute" : " minutes") : "") +
         (past <= 30 ? " past " : " to ") + hour_word(past <= 30 ? hour : hour + 1);
}

std::string_view part_of_day(int minutes) {
  if (minutes == 0 || minutes == noon) return "";
  if (minutes < noon) return " in the morning";
  if (minutes < 18 * 60) return " in the afternoon";
  return minutes < 22 * 60 ? " in the evening" : " at night";
}

std::string sun_words(const ClockTime& time) {
  constexpr std::array<std::string_view, 5> names{"", "dawn", "sunrise", "sunset", "dusk"};
  const std::string name(names[static_cast<std::size_t>(time.event)]);
  if (time.minutes == 0) return name;
  const int off = std::abs(time.minutes);
  const std::string how_far = off % 60 == 0
                                  ? number_word(off / 60) + (off == 60 ? " hour" : " hours")
                                  : number_word(off) + (off == 1 ? " minute" : " minutes");
  return how_far + (time.minutes < 0 ? " before " : " after ") + name;
}

int of_day(const ClockTime& time) {
  return time.minutes % day_minutes;
}

std::string_view part_of(const ClockTime& time) {
  return time.event == SunEvent::none ? part_of_day(of_day(time)) : std::string_view();
}

std::string time_words(const ClockTime& time) {
  return time.event == SunEvent::none ? clock_words(of_day(time)) : sun_words(time);
}

bool is_plain(const TimeSpan& span) {
  const auto fits = [](const ClockTime& time, int from, int to) {
    return time.event != SunEvent::none || (from <= time.minutes && time.minutes <= to);
  };
  return fits(span.from, morning_seven, evening_seven - 1) &&
         (span.open_end || fits(span.to, morning_seven + 1, evening_seven));
}

std::string span_words(const TimeSpan& span, Manner manner) {
  const bool whole_day = span.from.event == SunEvent::none && span.to.event == SunEvent::none &&
                         !span.open_end && span.from.minutes == 0 && span.to.minutes == day_minutes;
  if (whole_day) return "all day";
  const bool plain = manner == Manner::plain;
  const std::string from_part(plain ? std::string_view() : part_of(span.from));
  if (span.open_end) return "from " + time_words(span.from) + from_part + " on";
  const std::string to_part(plain ? std::string_view() : part_of(span.to));
  // "Eight in the morning till seven in the morning": said without the day it would be an hour less.
  const bool next_day = span.to.event == SunEvent::none && span.from.event == SunEvent::none &&
                        (span.to.minutes >= day_minutes + noon ||
                         (span.to.minutes > day_minutes && from_part == to_part));
  const bool once = from_part == to_part && !next_day;
  return time_words(span.from) + (once ? "" : from_part) + " till " + time_words(span.to) +
         to_part + (next_day ? " the next day" : "");
}

}  // namespace

std::string spans_in_words(const std::vector<TimeSpan>& spans) {
  const Manner manner =
      std::ranges::all_of(spans, is_plain) ? Manner::plain : Manner::with_part_of_day;
  std::vector<std::string> parts;
  for (const TimeSpan& span : spans) parts.push_back(span_words(span, manner));
  return listed(parts);
}

}  // namespace loopwright::hours
