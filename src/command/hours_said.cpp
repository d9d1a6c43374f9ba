// Method:
//   1. The text in words, then the verdict at the moment asked for.
//   2. Why: the bank holiday by its name when it decides, and the rule of the text that does; of an
//      answer nobody can give, what it hangs on.
//   3. When the answer changes next, and into what.
#include "command/hours_said.hpp"

#include <algorithm>
#include <array>
#include <ostream>

#include "command/folded.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/mark/ordinary_car.hpp"

namespace loopwright::command {
namespace {

using hours::Answer;
using hours::Reason;
using hours::Tri;

constexpr int ahead_days = 400;
constexpr int far_days = 3652;     // ten years: what doesn't change within them never does
constexpr std::size_t shown = 64;  // characters of a text that can't be read

bool begins_character(char byte) {
  return (static_cast<unsigned char>(byte) & 0xc0U) != 0x80U;
}

/// Characters of a UTF-8 text.
std::size_t characters(std::string_view text) {
  return static_cast<std::size_t>(std::ranges::count_if(text, begins_character));
}

/// The byte at which the n-th character begins, counted from nought; the size when there are fewer.
std::size_t byte_of(std::string_view text, std::size_t n) {
  for (std::size_t k = 0; k < text.size(); ++k)
    if (begins_character(text[k]) && n-- == 0) return k;
  return text.size();
}

std::string first_characters(std::string_view text, std::size_t n) {
  return std::string(text.substr(0, byte_of(text, n)));
}

std::string last_characters(std::string_view text, std::size_t n) {
  return std::string(text.substr(byte_of(text, characters(text) - n)));
}

/// As much of a text as one wants to see of it.
std::string clipped(std::string_view text) {
  return characters(text) > shown ? first_characters(text, shown - 1) + "…" : std::string(text);
}

std::string_view verdict(Tri in_force) {
  constexpr std::array<std::string_view, 3> words{"not in force", "in force", "unknown"};
  return words[static_cast<std::size_t>(in_force)];
}

/// "Monday 30 November 2026 is St Andrew's Day, a bank holiday in Scotland"
/// Rules: `days` is how many days after the moment's day it is.
std::string holiday_line(const Moment& when, int days) {
  const Date day = date_from_days(days_since_epoch(when.at.civil().date) + days);
  const std::string name(when.setting.bank_holiday_name(day));
  const std::string where = nation_name(when.region.code);
  if (!name.empty()) return spoken_day(day) + " is " + name + ", a bank holiday in " + where;
  return spoken_day(day) + " is no bank holiday in " + where;
}

/// "the text says 'PH off'", or that no part of it speaks of that time.
std::string rule_line(std::string_view text, const hours::Slice& rule) {
  if (rule.length == 0) return "that time is outside the hours given";
  return "the text says '" + std::string(trim(rule.of(text))) + "'";
}

std::string why(const Answer& answer, std::string_view text, const Moment& when) {
  std::string line;
  if (answer.reason == Reason::holiday) line = holiday_line(when, answer.holiday_days) + "; ";
  const std::string_view reason = hours::words(answer.reason);
  if (!reason.empty()) line = std::string(reason) + "; ";
  line += rule_line(text, answer.rule);
  if (answer.replaced)
    line +=
        "; " + std::string(hours::words(Reason::replaced)) + ": both may be meant, read the sign";
  return line;
}

/// A change, or why none is told.
struct Change {
  std::optional<Instant> at;
  std::string then;
  bool never = false;        ///< no part of the text hangs on the time
  bool unknown_now = false;  ///< nobody can tell what holds now
};

/// The next change by a function of how many days to look ahead.
template <class Next>
std::optional<Instant> change_of(Next next) {
  const auto soon = next(ahead_days);
  return soon ? soon : next(far_days);
}

void say_change(std::ostream& out, const Change& change, const Moment& when) {
  if (change.at) {
    const Instant at = when.setting.on_clock(*change.at);
    print_folded(
        out, 0,
        "changes: " + spoken_moment(at) + put_back_words(when.at, at) + ", then " + change.then);
    return;
  }
  print_folded(out, 0,
               change.unknown_now ? "changes: the text can't say when"
               : change.never     ? "changes: never"
                                  : "changes: not within ten years");
}

void say_moment(std::ostream& out, const Moment& when, std::string_view verdict) {
  print_folded(out, 0,
               spoken_moment(when.at) + " in " + nation_name(when.region.code) + ": " +
                   std::string(verdict));
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
    text += (text.empty() ? ": '" : ", '") + clipped(row.condition.text()) + "'";
  }
  return text;
}

std::string why(const hours::Conditional& value, const hours::Possible& possible,
                const Moment& when) {
  if (possible.reason == Reason::holiday) return holiday_line(when, possible.holiday_days);
  const std::string_view reason = hours::words(possible.reason);
  if (!reason.empty()) return std::string(reason) + open_conditions(value, when);
  if (possible.has(hours::Possible::base)) return "no condition holds then";
  for (std::size_t k = 0; k < value.rows().size(); ++k)
    if (possible.has(k + 1)) return "'" + value.rows()[k].condition.text() + "' holds then";
  return {};
}

bool is_unreadable(const hours::ConditionPart& part) {
  return part.kind == hours::PartKind::hours && !part.hours.readable();
}

std::string readable_words(const hours::Condition& condition) {
  if (std::ranges::any_of(condition.parts(), is_unreadable)) return "at hours that can't be read";
  return condition.words();
}

constexpr std::string_view plate_hint =
    "a plate is typed so: Mon to Sat 7-10am 4-7pm is Mo-Sa 07:00-10:00,16:00-19:00; At any time is "
    "24/7; for & write a comma";

/// Typed as plates have it: with words of theirs, or hours by am and pm.
bool is_like_a_plate(std::string_view text) {
  const std::string typed = lower(text);
  constexpr std::array<std::string_view, 3> marks{" to ", "any time", "&"};
  const bool has_words = std::any_of(marks.begin(), marks.end(), [&](std::string_view mark) {
    return typed.find(mark) != std::string::npos;
  });
  if (has_words) return true;
  for (std::size_t k = 2; k < typed.size(); ++k) {
    const bool half_of_day = typed[k] == 'm' && (typed[k - 1] == 'a' || typed[k - 1] == 'p');
    if (half_of_day && typed[k - 2] >= '0' && typed[k - 2] <= '9') return true;
  }
  return false;
}

}  // namespace

void say_hours(std::ostream& out, const hours::Hours& hours, const Moment& when) {
  print_folded(out, 0, "read as: " + hours.words());
  const Answer answer = hours.at(when.at, when.setting);
  say_moment(out, when, verdict(answer.in_force));
  print_folded(out, 0, "why: " + why(answer, hours.text(), when));
  const auto at =
      change_of([&](int days) { return hours.next_change(when.at, when.setting, days); });
  const Tri then = at ? hours.at(*at, when.setting).in_force : Tri::unknown;
  say_change(
      out, {at, std::string(verdict(then)), hours.never_changes(), answer.in_force == Tri::unknown},
      when);
}

void say_conditional(std::ostream& out, const hours::Conditional& value, const Moment& when) {
  const mark::LearnersCar car;
  for (const auto& [row_value, condition] : value.rows()) {
    print_folded(out, 0, "read as: " + row_value + " " + readable_words(condition));
  }
  print_folded(out, 0, "else: " + value.base());
  const auto possible = value.at(when.at.civil(), when.setting, car);
  say_moment(out, when, values_of(value, possible));
  print_folded(out, 0, "why: " + why(value, possible, when));
  const auto at =
      change_of([&](int days) { return value.next_change(when.at, when.setting, car, days); });
  const Instant then = at ? when.setting.on_clock(*at) : when.at;
  const std::string values = values_of(value, value.at(then.civil(), when.setting, car));
  say_change(out, {at, values, value.never_changes(), !possible.settled()}, when);
}

std::size_t character_at(std::string_view text, std::size_t byte) {
  return characters(text.substr(0, byte)) + 1;
}

void show_unreadable(std::ostream& out, std::string_view text, const hours::Unread& unread) {
  std::string before = printable(text.substr(0, unread.at));
  std::string behind = printable(text.substr(unread.at));
  constexpr std::size_t half = shown / 2;
  if (characters(before) + characters(behind) > shown) {
    if (characters(before) > half) before = "…" + last_characters(before, half - 1);
    const std::size_t room = shown - characters(before);
    if (characters(behind) > room) behind = first_characters(behind, room - 1) + "…";
  }
  out << "can't be read: " << before << behind << '\n'
      << "               " << std::string(characters(before), ' ') << "^ here\n";
  print_folded(out, 0, "looked for: " + std::string(unread.wanted));
  if (is_like_a_plate(text)) print_folded(out, 0, std::string(plate_hint));
}

}  // namespace loopwright::command
