// Method:
//   1. The text in words, then the verdict at the moment asked for.
//   2. Why: the bank holiday by its name when it decides, and the rule of the text that does; of an
//      answer nobody can give, what it hangs on.
//   3. When the answer changes next, and into what.
#include "command/hours_said.hpp"

#include <algorithm>
#include <array>
#include <ostream>

#include "loopwright/base/text.hpp"
#include "loopwright/mark/ordinary_car.hpp"

namespace loopwright::command {
namespace {

using hours::Answer;
using hours::Reason;
using hours::Tri;

constexpr int ahead_days = 400;

std::string_view verdict(Tri in_force) {
  constexpr std::array<std::string_view, 3> words{"not in force", "in force", "unknown"};
  return words[static_cast<std::size_t>(in_force)];
}

/// "Monday 30 November 2026 is St Andrew's Day, a bank holiday in Scotland"
std::string holiday_line(const Moment& when) {
  const Date day = when.at.civil().date;
  const std::string name(when.setting.bank_holiday_name(day));
  const std::string where = nation_name(when.region.code);
  if (!name.empty()) return spoken_day(day) + " is " + name + ", a bank holiday in " + where;
  return spoken_day(day) + " is no bank holiday in " + where;
}

/// "the text says 'PH off'", or that no part of it speaks of that time.
std::string rule_line(std::string_view text, const hours::Slice& rule) {
  if (rule.length == 0) return "nothing in the text speaks of that time";
  return "the text says '" + std::string(trim(rule.of(text))) + "'";
}

std::string why(const Answer& answer, std::string_view text, const Moment& when) {
  std::string line;
  if (answer.reason == Reason::holiday) line = holiday_line(when) + "; ";
  const std::string_view reason = hours::words(answer.reason);
  if (!reason.empty()) line = std::string(reason) + "; ";
  return line + rule_line(text, answer.rule);
}

void say_change(std::ostream& out, const std::optional<Instant>& change, const Moment& when,
                std::string_view then) {
  if (change) {
    out << "changes: " << spoken_moment(when.setting.on_clock(*change)) << ", then " << then
        << '\n';
  } else {
    out << "changes: not within " << ahead_days << " days\n";
  }
}

void say_moment(std::ostream& out, const Moment& when) {
  out << spoken_moment(when.at) << " in " << nation_name(when.region.code) << ": ";
}

/// "20 mph", or all that may hold: "30 mph or 20 mph".
std::string values_of(const hours::Conditional& value, const hours::Possible& possible) {
  std::vector<std::string> values;
  for (std::size_t bit = 0; bit <= value.rows().size(); ++bit) {
    if (!possible.has(bit)) continue;
    if (std::ranges::find(values, value.value(bit)) == values.end())
      values.push_back(value.value(bit));
  }
  std::string text;
  for (const std::string& one : values) text += (text.empty() ? "" : " or ") + one;
  return values.size() > 1 ? "unknown, " + text : text;
}

/// ": 'flashing'", the conditions that nobody can tell of.
std::string open_conditions(const hours::Conditional& value, const Moment& when) {
  const mark::LearnersCar car;
  std::string text;
  for (const hours::Conditional::Row& row : value.rows()) {
    const Answer answer = row.condition.at(when.at.civil(), when.setting, car);
    if (answer.in_force != Tri::unknown) continue;
    text += (text.empty() ? ": '" : ", '") + row.condition.text() + "'";
  }
  return text;
}

std::string why(const hours::Conditional& value, const hours::Possible& possible,
                const Moment& when) {
  if (possible.reason == Reason::holiday) return holiday_line(when);
  const std::string_view reason = hours::words(possible.reason);
  if (!reason.empty()) return std::string(reason) + open_conditions(value, when);
  if (possible.has(hours::Possible::base)) return "no condition holds then";
  for (std::size_t k = 0; k < value.rows().size(); ++k)
    if (possible.has(k + 1)) return "'" + value.rows()[k].condition.text() + "' holds then";
  return {};
}

void show_unreadable_parts(std::ostream& out, const hours::Condition& condition) {
  for (const hours::ConditionPart& part : condition.parts()) {
    if (part.kind == hours::PartKind::hours && !part.hours.readable())
      show_unreadable(out, part.hours);
  }
}

}  // namespace

void say_hours(std::ostream& out, const hours::Hours& hours, const Moment& when) {
  out << "read as: " << hours.words() << '\n';
  const Answer answer = hours.at(when.at, when.setting);
  say_moment(out, when);
  out << verdict(answer.in_force) << '\n';
  out << "why: " << why(answer, hours.text(), when) << '\n';
  const auto change = hours.next_change(when.at, when.setting, ahead_days);
  const Tri then = change ? hours.at(*change, when.setting).in_force : Tri::unknown;
  say_change(out, change, when, verdict(then));
}

void say_conditional(std::ostream& out, const hours::Conditional& value, const Moment& when) {
  const mark::LearnersCar car;
  for (const auto& [row_value, condition] : value.rows()) {
    out << "read as: " << row_value << ' ' << condition.words() << '\n';
    show_unreadable_parts(out, condition);
  }
  out << "else: " << value.base() << '\n';
  const auto possible = value.at(when.at.civil(), when.setting, car);
  say_moment(out, when);
  out << values_of(value, possible) << '\n';
  out << "why: " << why(value, possible, when) << '\n';
  const auto change = value.next_change(when.at, when.setting, car, ahead_days);
  const Instant then = change ? when.setting.on_clock(*change) : when.at;
  say_change(out, change, when, values_of(value, value.at(then.civil(), when.setting, car)));
}

void show_unreadable(std::ostream& out, const hours::Hours& hours) {
  const std::string_view before = std::string_view(hours.text()).substr(0, hours.stopped_at());
  const auto columns = std::ranges::count_if(
      before, [](char c) { return (static_cast<unsigned char>(c) & 0xc0U) != 0x80U; });
  out << "can't be read: " << hours.text() << '\n'
      << "               " << std::string(static_cast<std::size_t>(columns), ' ') << "^ "
      << hours.problem() << " was looked for here\n";
}

}  // namespace loopwright::command
