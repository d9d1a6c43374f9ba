// spans = span { ',' span };  span = time '-' time [ '+' ] | time '+' | number '-' number
// time = hours ':' minutes | event | '(' event ('+' | '-') hours ':' minutes ')'
//
// 1. A ',' goes on with a further span only when a time follows; else it parts rules.
// 2. An end before or at the beginning is on the next day; "26:00" says so itself. Of times by the
//    sun that is settled day by day.
// 3. "07:00+" is a span whose end nobody knows; "07:00-12:00+" one that is known, and another. It stays
//    unknown before a further span too ("07:00+,12:00-16:00" at eight), where both outside readers say
//    no: a ban must not vanish.
// 4. A dot for the colon, a number of hours alone ("09-17") and am and pm are read, since mappers
//    write them and they have one meaning. A single time, or one every so many minutes, is a moment
//    and no time in which something is in force: it can't be read.
// Source: OSM wiki Key:opening_hours/specification, time selector.
#include "hours/read_times.hpp"

#include <array>
#include <utility>

namespace loopwright::hours {
namespace {

constexpr std::string_view wanted_time = "a time";

constexpr std::array<std::pair<std::string_view, SunEvent>, 4> events{
    {{"dawn", SunEvent::dawn},
     {"sunrise", SunEvent::sunrise},
     {"sunset", SunEvent::sunset},
     {"dusk", SunEvent::dusk}}};

SunEvent event_of(const Token& token) {
  if (token.kind != Token::Kind::word) return SunEvent::none;
  for (const auto& [word, event] : events) {
    if (token.text == word) return event;
  }
  return SunEvent::none;
}

/// Two digits, or three that begin with a nought ("030:00" is written, and means 30:00).
bool is_hour(const Token& token) {
  const bool padded = token.digits == 3 && token.number < 100;
  return token.kind == Token::Kind::number && (token.digits <= 2 || padded);
}

bool at_clock(const TokenReader& reader) {
  const bool separated = reader.is(":", 1) || reader.is(".", 1);
  return is_hour(reader.peek()) && separated && reader.is_number(2) && reader.peek(2).digits == 2;
}

bool is_half_of_day(const TokenReader& reader, std::size_t ahead) {
  return reader.is("am", ahead) || reader.is("pm", ahead);
}

/// "9-17" or "9am-5pm": hours alone, which only a pair says clearly.
bool at_bare_hours(const TokenReader& reader) {
  if (!reader.is_number() || reader.peek().digits > 2) return false;
  if (is_half_of_day(reader, 1)) return true;
  return reader.is("-", 1) && reader.is_number(2) && reader.peek(2).digits <= 2 &&
         !reader.is(":", 3);
}

/// Adds twelve hours for pm, and none for 12 am; false when the number is no such hour.
bool apply_half_of_day(TokenReader& reader, int& minutes) {
  if (!is_half_of_day(reader, 0)) return true;
  constexpr int noon = day_minutes / 2;
  if (minutes < 60 || minutes >= noon + 60) return reader.stop("an hour from 1 to 12");
  minutes = minutes % noon + (reader.is("pm") ? noon : 0);
  reader.skip();
  return true;
}

bool read_clock(TokenReader& reader, int& minutes) {
  const int hours = reader.peek().number;
  reader.skip();
  minutes = 0;
  if (reader.is(":") || reader.is(".")) {
    reader.skip();
    if (!reader.is_number() || reader.peek().number > 59) return reader.stop("minutes up to 59");
    minutes = reader.peek().number;
    reader.skip();
  }
  minutes += hours * 60;
  return apply_half_of_day(reader, minutes);
}

/// "(sunrise-01:30)" after its bracket.
bool read_shifted(TokenReader& reader, ClockTime& time) {
  time.event = event_of(reader.peek());
  if (time.event == SunEvent::none) return reader.stop("sunrise, sunset, dawn or dusk");
  reader.skip();
  const bool earlier = reader.is("-");
  if (!reader.take("-") && !reader.take("+")) return reader.stop("+ or -");
  if (!at_clock(reader)) return reader.stop("hours and minutes");
  if (!read_clock(reader, time.minutes)) return false;
  if (earlier) time.minutes = -time.minutes;
  return reader.take(")") || reader.stop(")");
}

bool read_time(TokenReader& reader, ClockTime& time) {
  if (reader.take("(")) return read_shifted(reader, time);
  time.event = event_of(reader.peek());
  if (time.event != SunEvent::none) {
    reader.skip();
    time.minutes = 0;
    return true;
  }
  const bool hours_alone = reader.is_number() && reader.peek().digits <= 2;
  if (!at_clock(reader) && !hours_alone) return reader.stop(wanted_time);
  return read_clock(reader, time.minutes);
}

bool is_fixed(const TimeSpan& span) {
  return span.from.event == SunEvent::none && span.to.event == SunEvent::none;
}

/// Where the sun's events lie when only the order of two times is asked for.
int usual_minutes(const ClockTime& time) {
  constexpr std::array<int, 5> usual{0, 330, 360, 1080, 1110};  // the specification's fall-backs
  return usual[static_cast<std::size_t>(time.event)] + time.minutes;
}

/// A fixed end that lies before the beginning is on the next day.
bool settle_end(TokenReader& reader, TimeSpan& span) {
  if (span.to.event != SunEvent::none) return true;
  const int from = usual_minutes(span.from);
  const bool whole_day = is_fixed(span) && span.to.minutes == from;
  if (span.to.minutes < from || whole_day) span.to.minutes += day_minutes;
  return span.to.minutes <= 2 * day_minutes || reader.stop("an end within the next day");
}

bool read_end(TokenReader& reader, std::vector<TimeSpan>& spans) {
  TimeSpan& span = spans.back();
  if (!read_time(reader, span.to) || !settle_end(reader, span)) return false;
  if (reader.is("/")) return reader.stop("a span of time, not moments in it");
  if (!reader.take("+")) return true;
  TimeSpan rest;
  rest.from = span.to;
  rest.open_end = true;
  spans.push_back(rest);
  return true;
}

bool read_span(TokenReader& reader, std::vector<TimeSpan>& spans) {
  TimeSpan& span = spans.emplace_back();
  if (!read_time(reader, span.from)) return false;
  if (span.from.event == SunEvent::none && span.from.minutes >= day_minutes) {
    return reader.stop("a beginning before 24:00");
  }
  if (reader.take("+")) {
    span.open_end = true;
    return true;
  }
  if (!reader.take("-") && !reader.take("to")) return reader.stop("- and the time it ends");
  return read_end(reader, spans);
}

/// Goes on past a ',' when a time follows.
bool goes_on(TokenReader& reader) {
  if (!reader.is(",")) return false;
  const std::size_t before_comma = reader.at();
  reader.skip();
  if (at_time(reader)) return true;
  reader.return_to(before_comma);
  return false;
}

}  // namespace

bool at_time(const TokenReader& reader) {
  if (reader.is("(")) return event_of(reader.peek(1)) != SunEvent::none;
  return event_of(reader.peek()) != SunEvent::none || at_clock(reader) || at_bare_hours(reader);
}

bool read_times(TokenReader& reader, std::vector<TimeSpan>& spans) {
  do {
    if (!read_span(reader, spans)) return false;
  } while (goes_on(reader));
  return true;
}

}  // namespace loopwright::hours
