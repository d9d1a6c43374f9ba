// Method: each hour from five in the morning is asked all through; where the answer changes within,
// the times of the day at which it does are listed below the table.
#include "command/lanes_day.hpp"

#include <ostream>

#include "command/hours_place.hpp"
#include "command/lanes_words.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/lanes/lanes.hpp"

namespace loopwright::command {
namespace {

constexpr int first_hour = 5, last_hour = 23;
constexpr std::string_view keep_out = "k", usable = "·", check = "?", changes = "/";

/// What keeps cars out by its hours.
struct DayRow {
  std::string name;
  std::string hours;    ///< when it keeps them out, as of hours::Timetable; empty: not mapped
  bool always = false;  ///< it always does
  bool doubtful = false;
};

struct Day {
  Date date;
  std::string_view zone;
  [[nodiscard]] Instant at(int hour, int minute) const {
    return hours::instant_in(zone, {date, hour, minute, 0});
  }
};

std::string_view mark_of(const DayRow& row, const hours::Answer& answer) {
  switch (answer.in_force) {
    case hours::Tri::yes:
      return keep_out;
    case hours::Tri::no:
      return row.doubtful ? check : usable;
    case hours::Tri::unknown:
      break;
  }
  return answer.reason == hours::Reason::changes ? changes : check;
}

std::string_view mark_of(const DayRow& row, const Day& day, int hour,
                         const hours::Setting& setting) {
  if (row.always) return keep_out;
  if (row.hours.empty()) return check;
  const hours::Timetable hours(row.hours);
  return mark_of(row, hours.through(day.at(hour, 0), day.at(hour, 59), setting));
}

/// "07:30 keep out, 09:30 may be used"
std::string changes_of(const DayRow& row, const Day& day, const hours::Setting& setting) {
  const hours::Timetable hours(row.hours);
  std::string text;
  auto change = hours.next_change(day.at(first_hour, 0).plus_seconds(-60), setting, 1);
  while (change && setting.on_clock(*change).civil().date == day.date) {
    const std::string_view mark = mark_of(row, hours.at(*change, setting));
    text += (text.empty() ? "" : ", ") + write_clock(setting.on_clock(*change)) +
            (mark == keep_out ? " keep out"
             : mark == usable ? " may be used"
                              : " check");
    change = hours.next_change(*change, setting, 1);
  }
  return text;
}

/// When a street is shut, with the values of its rule the other way round.
std::string shut_hours(const road::Roads& roads, const road::TimedRule& rule) {
  const auto read = hours::read_conditional(roads.text(rule.base), roads.text(rule.text));
  std::string text = read.base() == "yes" ? "" : "yes @ (24/7); ";
  for (const hours::Conditional::Row& row : read.rows())
    text += (row.value == "yes" ? "no @ (" : "yes @ (") + row.condition.text() + "); ";
  return text.substr(0, text.size() - 2);
}

std::vector<DayRow> rows_of(const TimedDrive& drive) {
  std::vector<DayRow> rows;
  for (const auto& lane : lanes::bus_lanes_on(drive.roads, drive.loop, drive.setting)) {
    rows.push_back({street_of(drive.loop, lane.first) + ", " + lane_words(lane),
                    lane.hours.value_or(""), lane.what == "contraflow bus lane",
                    !lane.doubt.empty()});
  }
  for (const auto& met : lanes::rules_met(drive.roads, drive.loop, road::Timed::access)) {
    rows.push_back({street_of(drive.loop, met.rows.first) + ", street",
                    shut_hours(drive.roads, *met.rule), false, false});
  }
  return rows;
}

void print_heads(std::ostream& out) {
  out << "    ";
  for (int hour = first_hour; hour <= last_hour; ++hour) out << (hour < 10 ? " 0" : " ") << hour;
  out << '\n';
}

void print_row(std::ostream& out, const std::vector<std::string_view>& marks, std::size_t number) {
  const std::string digits = std::to_string(number);
  out << std::string(digits.size() < 3 ? 3 - digits.size() : 0, ' ') << digits << ' ';
  for (const std::string_view mark : marks) out << "  " << mark;
  out << '\n';
}

}  // namespace

void print_day(std::ostream& out, const TimedDrive& drive, const Date& date,
               std::string_view zone) {
  const Day day{date, zone};
  const auto rows = rows_of(drive);
  out << spoken_day(date) << ", hour by hour\n";
  if (rows.empty()) {
    out << "  no bus lane or street with hours on the way, as far as it is mapped\n";
    return;
  }
  print_heads(out);
  for (std::size_t k = 0; k < rows.size(); ++k) {
    std::vector<std::string_view> marks;
    for (int hour = first_hour; hour <= last_hour; ++hour)
      marks.push_back(mark_of(rows[k], day, hour, drive.setting));
    print_row(out, marks, k + 1);
  }
  for (std::size_t k = 0; k < rows.size(); ++k) {
    out << "  " << k + 1 << " is " << rows[k].name << '\n';
    if (rows[k].hours.empty() || rows[k].always) continue;
    const std::string list = changes_of(rows[k], day, drive.setting);
    if (!list.empty()) out << "    " << list << '\n';
  }
  out << "  " << keep_out << " keep out, " << usable << " may be used, " << check
      << " check the plate: all through the hour; " << changes << " changes within it\n";
}

}  // namespace loopwright::command
