// 1. Rules are gone through in order. One after ';' that is in force or unknown on the day wipes
//    out what earlier rules said of it, small hours of the night before included; one that is off
//    only takes out its own times. One that names no days wipes out only when the rule before it
//    names none either: who writes "Mo-Sa 08:00-13:00; 15:00-18:00" means both, and so read both
//    outside readers. One after '||' counts only while nothing is in force or unknown.
// 2. A rule that speaks of the day gives its spans; one that speaks of the day before gives what of
//    them lies behind midnight.
// 3. Holidays that nobody knows are tried both ways, each day by itself. All the same: settled.
//    Else unknown, because of them.
// 4. On a bank holiday the answer is worked out again as if it were none; another answer then means
//    that the holiday made the difference.
// Source: OSM wiki Key:opening_hours/specification, rule separators ("; " replaces the days it
// touches); that "off" with times cuts only these: the specification's explanation of closed.
#include "hours/evaluate.hpp"

#include <algorithm>

#include "hours/day_match.hpp"
#include "hours/day_times.hpp"

namespace loopwright::hours {
namespace {

/// What the rules so far say of the minute.
struct Said {
  Answer answer{Tri::no, Reason::stated, {}};

  void by(const Rule& rule, bool open_end) {
    answer.rule = rule.text;
    answer.reason = Reason::stated;
    answer.in_force = rule.state == State::off ? Tri::no : Tri::yes;
    if (rule.state == State::unknown) {
      answer = {Tri::unknown, rule.by_comment ? Reason::comment : Reason::said_unknown, rule.text};
    } else if (open_end && rule.state == State::in_force) {
      answer = {Tri::unknown, Reason::open_end, rule.text};
    }
  }
  void by_unknown_sun(const Rule& rule) { answer = {Tri::unknown, Reason::no_sun, rule.text}; }
};

/// Lays the spans of a rule over what was said; `minute` is counted from the midnight of `day`, on
/// which the spans begin.
void lay_spans(const Rule& rule, std::int64_t day, int minute, Assumption& assumption, Said& said) {
  if (rule.spans.empty() && minute < day_minutes) said.by(rule, false);
  for (const TimeSpan& span : rule.spans) {
    const auto times = minutes_on(span, day, assumption.setting());
    if (!times) {
      said.by_unknown_sun(rule);
    } else if (times->from <= minute && minute < times->to) {
      said.by(rule, span.open_end);
    }
  }
}

bool may_pass_midnight(const Rule& rule) {
  return std::ranges::any_of(rule.spans, [](const TimeSpan& span) {
    return span.open_end || span.to.event != SunEvent::none || span.from.event != SunEvent::none ||
           span.to.minutes > day_minutes;
  });
}

Answer answer_assuming(const Rules& rules, const WallMinute& at, Assumption& assumption) {
  Said said;
  for (const Rule& rule : rules.rules) {
    if (rule.joint == Joint::falls_back && said.answer.in_force != Tri::no) continue;
    const bool of_today = speaks_of(rule, at.day, assumption);
    if (of_today && replaces(rules, rule)) said = {};
    if (of_today) lay_spans(rule, at.day, at.minute, assumption, said);
    if (may_pass_midnight(rule) && speaks_of(rule, at.day - 1, assumption)) {
      lay_spans(rule, at.day - 1, at.minute + day_minutes, assumption, said);
    }
  }
  return said.answer;
}

/// The answer over all ways in which unknown holidays may fall, when it is one.
class OverAll {
 public:
  OverAll(const Rules& rules, const WallMinute& at, const Setting& setting)
      : rules_(rules), at_(at), setting_(setting), first_(answer(0)) {}

  Answer settled() {
    // Every subset of the days asked for; when further days come up, all over again.
    for (std::uint32_t bits = asked_; bits != 0; bits = (bits - 1) & asked_) {
      const std::uint32_t before = asked_;
      const Answer other = answer(bits);
      if (other.in_force != first_.in_force) return unsettled(other);
      if (asked_ != before) bits = asked_ + 1;
    }
    return first_;
  }

 private:
  Answer answer(std::uint32_t bits) {
    Assumption assumption(setting_, at_.day, bits);
    const Answer answer = answer_assuming(rules_, at_, assumption);
    asked_ |= assumption.asked();
    bank_ = bank_ || assumption.asked_for_bank();
    return answer;
  }
  [[nodiscard]] Answer unsettled(const Answer& other) const {
    const Slice told = other.rule.length > 0 ? other.rule : first_.rule;
    return {Tri::unknown, bank_ ? Reason::no_holidays : Reason::no_terms, told};
  }

  const Rules& rules_;
  const WallMinute& at_;
  const Setting& setting_;
  std::uint32_t asked_ = 0;
  bool bank_ = false;
  Answer first_;
};

bool near_bank_holiday(std::int64_t day, const Setting& setting) {
  for (std::int64_t d = day - 1; d <= day + 1; ++d) {
    if (setting.bank_holiday(date_from_days(d)) == Tri::yes) return true;
  }
  return false;
}

}  // namespace

bool replaces(const Rules& rules, const Rule& rule) {
  if (rule.joint != Joint::replaces || rule.state == State::off) return false;
  if (names_days(rule)) return true;
  const bool is_first = &rule == rules.rules.data();
  return !is_first && rule.state == State::in_force && !names_days(*(&rule - 1));
}

Answer answer_at(const Rules& rules, const WallMinute& at, const Setting& setting) {
  Answer answer = OverAll(rules, at, setting).settled();
  if (!rules.names_bank_holidays || answer.in_force == Tri::unknown) return answer;
  if (!near_bank_holiday(at.day, setting)) return answer;
  Assumption plain(setting, at.day, 0);
  plain.without_bank_holidays();
  if (answer_assuming(rules, at, plain).in_force != answer.in_force) {
    answer.reason = Reason::holiday;
  }
  return answer;
}

WallMinute next_look(const Rules& rules, const WallMinute& at, const Setting& setting) {
  int next = day_minutes;
  const auto consider = [&](int minute) {
    if (minute > at.minute) next = std::min(next, minute);
  };
  for (const Rule& rule : rules.rules) {
    for (const TimeSpan& span : rule.spans) {
      if (const auto today = minutes_on(span, at.day, setting)) {
        consider(today->from), consider(today->to);
      }
      if (const auto before = minutes_on(span, at.day - 1, setting)) {
        consider(before->from - day_minutes), consider(before->to - day_minutes);
      }
    }
  }
  return next == day_minutes ? WallMinute{at.day + 1, 0} : WallMinute{at.day, next};
}

}  // namespace loopwright::hours
