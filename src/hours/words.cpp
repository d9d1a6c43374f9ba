// 1. A rule: its days, then its times; one that is off begins with "not", one that is unknown with
//    "perhaps", and a rule's own words are quoted.
// 2. Rules are parted by ';' ("otherwise" for those that only fill in). A rule that a later one
//    replaces on all its days isn't said; where it is replaced on some, the later begins with "but".
// 3. Of a condition: hours as above, a state of the road "when it is wet", a property or user as
//    mapped. Of clauses: "but not …" for those that take away.
#include <algorithm>
#include <array>
#include <optional>
#include <span>

#include "hours/evaluate.hpp"
#include "hours/parse.hpp"
#include "hours/spoken_days.hpp"
#include "hours/spoken_time.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/timetable.hpp"

namespace loopwright::hours {
namespace {

std::string when_of(const Rule& rule) {
  const std::string days = days_in_words(rule);
  if (rule.spans.empty()) return days.empty() ? "at any time" : days;
  const std::string times = spans_in_words(rule.spans);
  if (times == "all day") return days.empty() ? "at any time" : days;
  return (days.empty() ? "every day" : days) + ", " + times;
}

/// "on " Sunday, "in " August, "in the " school holidays; nothing before weeks, years and times.
std::string_view preposition(const Rule& rule) {
  if (!rule.days.empty()) {
    const DayItem& first = rule.days.back().front();
    return first.kind == DayItem::Kind::school_holiday ? "in the " : "on ";
  }
  if (rule.dates.empty()) return "";
  const bool from_months = rule.dates.front().from.day == 1 && rule.dates.front().to.day == 0;
  return from_months ? "in " : "on ";
}

std::string off_words(const Rule& rule) {
  const bool always = rule.spans.empty() && days_in_words(rule).empty();
  if (always) return "never";
  return "not " + std::string(preposition(rule)) + when_of(rule);
}

std::string rule_words(const Rule& rule, std::string_view text) {
  const std::string quoted = "\u201c" + std::string(rule.comment.of(text)) + "\u201d";
  const std::string said = rule.comment.length > 0 ? " (" + quoted + ")" : "";
  if (rule.state == State::off) return off_words(rule) + said;
  if (rule.by_comment) {
    const bool bare = rule.spans.empty() && days_in_words(rule).empty();
    return bare ? quoted : when_of(rule) + said;
  }
  return (rule.state == State::unknown ? "perhaps " : "") + when_of(rule) + said;
}

bool same_days(const Rule& a, const Rule& b) {
  return a.years == b.years && a.dates == b.dates && a.weeks == b.weeks && a.days == b.days;
}

/// Weekdays of a rule that names nothing else; empty for other rules.
std::optional<std::uint8_t> weekdays_alone(const Rule& rule) {
  if (!rule.years.empty() || !rule.dates.empty() || !rule.weeks.empty()) return std::nullopt;
  if (rule.days.size() != 1) return std::nullopt;
  std::uint8_t bits = 0;
  for (const DayItem& item : rule.days.front()) {
    if (item.kind != DayItem::Kind::weekdays) return std::nullopt;
    bits = static_cast<std::uint8_t>(bits | item.weekdays);
  }
  return bits;
}

/// Some day may be named by both.
bool may_share_days(const Rule& a, const Rule& b) {
  const auto first = weekdays_alone(a), second = weekdays_alone(b);
  return !first || !second || (*first & *second) != 0;
}

/// Nothing of the k-th rule is left by those behind it.
bool is_replaced(const Rules& rules, std::size_t k) {
  const auto behind = std::span(rules.rules).subspan(k + 1);
  return std::ranges::any_of(behind, [&](const Rule& later) {
    return replaces(rules, later) && (!names_days(later) || same_days(rules.rules[k], later));
  });
}

std::string_view joint_words(const Rules& rules, std::size_t k) {
  const Rule& rule = rules.rules[k];
  if (rule.joint == Joint::falls_back) return "; otherwise ";
  const auto before = std::span(rules.rules).first(k);
  const bool instead = replaces(rules, rule) && std::ranges::any_of(before, [&](const Rule& r) {
                         return may_share_days(r, rule);
                       });
  return instead ? "; but " : "; ";
}

std::string part_words(const ConditionPart& part) {
  if (part.kind == PartKind::hours) return part.hours.words();
  if (part.kind == PartKind::road_state) {
    return part.text == "flashing" ? "when lights flash" : "when it is " + part.text;
  }
  if (part.kind == PartKind::property) return "with " + part.text;
  return part.kind == PartKind::user ? "for " + part.text : "\u201c" + part.text + "\u201d";
}

}  // namespace

std::string Hours::words() const {
  if (!rules_) return text_;
  std::string all;
  for (std::size_t k = 0; k < rules_->rules.size(); ++k) {
    if (is_replaced(*rules_, k)) continue;
    if (!all.empty()) all += joint_words(*rules_, k);
    all += rule_words(rules_->rules[k], text_);
  }
  return all;
}

std::string Condition::words() const {
  std::vector<std::string> parts;
  for (const ConditionPart& part : parts_) parts.push_back(part_words(part));
  return listed(parts);
}

std::string Timetable::words() const {
  std::string text;
  for (const Conditional::Row& row : clauses_.rows()) {
    const bool yes = row.value == "yes";
    const std::string when = row.condition.words();
    if (text.empty()) {
      text = yes ? when : "";
    } else {
      text += (yes ? "; and " : "; but not ") + when;
    }
  }
  return text.empty() ? "never" : text;
}

std::string_view name(Weekday day) {
  constexpr std::array<std::string_view, 7> names{"Monday", "Tuesday",  "Wednesday", "Thursday",
                                                  "Friday", "Saturday", "Sunday"};
  return names[static_cast<std::size_t>(day)];
}

}  // namespace loopwright::hours
