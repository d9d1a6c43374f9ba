// 1. A rule: its days, then its times; one that is off begins with "not", one that is unknown with
//    "perhaps", and a rule's own words are quoted.
// 2. Rules are parted by ';' ("otherwise" for those that only fill in).
// 3. Of a condition: hours as above, a state of the road "when it is wet", a property or user as
//    mapped. Of clauses: "but not …" for those that take away.
#include <array>

#include "hours/parse.hpp"
#include "hours/spoken_days.hpp"
#include "hours/spoken_time.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/timetable.hpp"

namespace loopwright::hours {
namespace {

std::string when_of(const Rule& rule) {
  const std::string days = days_in_words(rule);
  if (rule.spans.empty()) return days.empty() ? "at any time" : days;
  return (days.empty() ? "every day" : days) + ", " + spans_in_words(rule.spans);
}

std::string off_words(const Rule& rule) {
  const bool always = rule.spans.empty() && days_in_words(rule).empty();
  return always ? "never" : "not " + when_of(rule);
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

std::string joint_words(Joint joint) {
  return joint == Joint::falls_back ? "; otherwise " : "; ";
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
  for (const Rule& rule : rules_->rules) {
    if (!all.empty()) all += joint_words(rule.joint);
    all += rule_words(rule, text_);
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
