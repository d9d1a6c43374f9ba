// Method: the answers of a thing are walked along from midnight to midnight. An hour has the mark of
// its first minute, or that of a change when the answer is another within it. What can't be told is
// keep out for streets and turns, check the plate for bus lanes and gates: room lanes decides.
#include "command/lanes_day.hpp"

#include <algorithm>
#include <ostream>

#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "loopwright/hours/zone.hpp"

namespace loopwright::command {
namespace {

using lanes::May;
using lanes::Thing;
using lanes::ThingVerdict;

constexpr std::string_view keep_out = "k", usable = "·", check = "?", changes = "/";
constexpr int hours_a_day = 24;

/// What holds from a moment on.
struct Span {
  Instant from;
  ThingVerdict verdict;
};

/// Of a limit its number, as far as there is room.
std::string mark_of(const lanes::TimedThing& thing, const ThingVerdict& verdict) {
  if (verdict.may == May::check) return std::string(check);
  if (thing.thing != Thing::limit) return std::string(verdict.may == May::yes ? usable : keep_out);
  const std::size_t digits = verdict.limit.find_first_not_of("0123456789");
  return digits == 0 ? std::string(usable)
                     : verdict.limit.substr(0, std::min(digits, std::size_t{3}));
}

Instant midnight(const Day& day, int hour) {
  if (hour < hours_a_day) return hours::instant_in(day.zone, {day.date, hour, 0, 0});
  return hours::instant_in(day.zone, {date_from_days(days_since_epoch(day.date) + 1), 0, 0, 0});
}

/// The answers of the day, each other than the one before.
std::vector<Span> spans_of(const lanes::TimedThing& thing, const Day& day) {
  const Instant begin = midnight(day, 0), end = midnight(day, hours_a_day);
  const auto at = [&](const Instant& when) {
    return lanes::verdict_on(thing, {when, when}, day.setting);
  };
  std::vector<Span> spans{{begin, at(begin)}};
  auto change = lanes::next_change(thing, begin, day.setting);
  while (change && change->unix_s < end.unix_s) {
    const ThingVerdict verdict = at(*change);
    if (verdict != spans.back().verdict) spans.push_back({*change, verdict});
    change = lanes::next_change(thing, *change, day.setting);
  }
  return spans;
}

std::string mark_of_hour(const DayRow& row, const std::vector<Span>& spans, const Instant& from,
                         const Instant& to) {
  std::string mark;
  for (const Span& span : spans) {
    if (span.from.unix_s >= to.unix_s) break;
    const std::string own = mark_of(row.thing, span.verdict);
    const bool within = span.from.unix_s > from.unix_s;
    if (within && own != mark) return std::string(changes);
    mark = own;
  }
  return mark;
}

std::size_t width_of(std::string_view mark) {
  return mark == usable ? 1 : mark.size();
}

void print_cell(std::ostream& out, std::string_view mark) {
  constexpr std::size_t cell = 3;
  out << std::string(cell - std::min(cell, width_of(mark)), ' ') << mark;
}

void print_heads(std::ostream& out) {
  out << "    ";
  for (int hour = 0; hour < hours_a_day; ++hour) out << (hour < 10 ? " 0" : " ") << hour;
  out << '\n';
}

void print_row(std::ostream& out, const DayRow& row, const Day& day, std::size_t number) {
  const std::string digits = std::to_string(number);
  out << std::string(digits.size() < 3 ? 3 - digits.size() : 0, ' ') << digits << ' ';
  const std::vector<Span> spans = spans_of(row.thing, day);
  for (int hour = 0; hour < hours_a_day; ++hour)
    print_cell(out, mark_of_hour(row, spans, midnight(day, hour), midnight(day, hour + 1)));
  out << '\n';
}

/// "00:00 usable; 07:00 in force, keep out; 10:00 usable"; "all day: check the plate (hours not
/// mapped)". What the hours alone don't tell is said once.
std::string spans_words(const DayRow& row, const Day& day) {
  const lanes::TimedThing& thing = row.thing;
  std::vector<std::string> told;
  const auto words = [&](const ThingVerdict& verdict) {
    const bool mapped = thing.thing == Thing::limit || !thing.shut.empty();
    std::string because = verdict.because;
    if (because.empty() && !mapped) because = thing.words;
    const bool again = std::ranges::find(told, because) != told.end();
    if (!again) told.push_back(because);
    return lanes::verdict_words(thing, verdict) +
           (because.empty() || again ? "" : " (" + because + ")");
  };
  const std::vector<Span> spans = spans_of(thing, day);
  if (spans.size() == 1) return "all day: " + words(spans.front().verdict);
  std::string text;
  for (const Span& span : spans) {
    text += (text.empty() ? "" : "; ") + write_clock(day.setting.on_clock(span.from)) + " " +
            words(span.verdict);
  }
  return text;
}

/// Of the two days a year on which an hour comes twice, or not at all: which hour.
void print_clocks(std::ostream& out, const Day& day) {
  const Instant begin = day.setting.on_clock(midnight(day, 0));
  const auto change = day.setting.next_clock_change(begin);
  if (!change || change->unix_s >= midnight(day, hours_a_day).unix_s) return;
  const Instant after = day.setting.on_clock(*change);
  const bool back = after.offset_s < begin.offset_s;
  const Instant hour{change->unix_s, back ? after.offset_s : begin.offset_s};
  print_folded(out, 2,
               "the clocks are put " + std::string(back ? "back" : "forward") + ": the hour from " +
                   write_clock(hour) + (back ? " comes twice" : " is left out"));
}

void print_legend(std::ostream& out, const std::vector<DayRow>& rows) {
  out << "  k keep out, · may be used, ? check the plate, / changes within the hour\n";
  const bool limits =
      std::ranges::any_of(rows, [](const DayRow& row) { return row.thing.thing == Thing::limit; });
  if (limits) out << "  a speed limit shows its number, or ? check the signs\n";
}

}  // namespace

void print_day(std::ostream& out, const std::vector<DayRow>& rows, const Day& day) {
  const std::string_view holiday = day.setting.bank_holiday_name(day.date);
  out << spoken_day(day.date) << (holiday.empty() ? "" : ", ") << holiday << ", hour by hour\n";
  if (rows.empty()) {
    print_folded(out, 2, "nothing here has hours, as far as it is mapped");
    return;
  }
  print_heads(out);
  for (std::size_t k = 0; k < rows.size(); ++k) print_row(out, rows[k], day, k + 1);
  print_legend(out, rows);
  print_clocks(out, day);
  for (std::size_t k = 0; k < rows.size(); ++k) {
    print_folded(out, 2, std::to_string(k + 1) + " is " + rows[k].name);
    print_folded(out, 4, spans_words(rows[k], day));
    if (!rows[k].thing.doubt.empty()) print_folded(out, 4, "in doubt: " + rows[k].thing.doubt);
  }
}

}  // namespace loopwright::command
