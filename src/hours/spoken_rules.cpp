// 1. A rule: its days, then its times; one that is off begins with "not", one that is unknown with
//    "perhaps", and a rule's own words are quoted.
// 2. Rules are parted by ';' and the word that says what each does to those before it: "but" when it
//    takes their days or times, "and also" when it adds to their days, "otherwise" when it only fills in.
// 3. A rule of which a later one leaves nothing isn't said as if it held: the later one says, in brackets,
//    what doesn't count. Often the mapper meant both, and the plate shows it.
// 4. A rule that takes a day takes it from midnight to midnight, also what began the night before.
//    Where something did begin, that is said.
#include "hours/spoken_rules.hpp"

#include <algorithm>
#include <vector>

#include "hours/evaluate.hpp"
#include "hours/quoted.hpp"
#include "hours/replaced.hpp"
#include "hours/rule_days.hpp"
#include "hours/spoken_days.hpp"
#include "hours/spoken_time.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/base/printable.hpp"

namespace loopwright::hours {
namespace {

bool is_whole_day(const TimeSpan& span) {
  const bool fixed = span.from.event == SunEvent::none && span.to.event == SunEvent::none;
  return fixed && !span.open_end && span.to.minutes - span.from.minutes >= day_minutes;
}

/// Every minute of its days, and of every day at that.
bool is_always(const Rule& rule) {
  if (!speaks_of_every_day(rule)) return false;
  return rule.spans.empty() || std::ranges::any_of(rule.spans, is_whole_day);
}

bool hangs_on_the_sun(const TimeSpan& span) {
  return span.from.event != SunEvent::none || span.to.event != SunEvent::none;
}

/// Some minute of a day is in both, as far as the clock alone tells.
bool times_meet(const Rule& a, const Rule& b) {
  if (a.spans.empty() || b.spans.empty()) return true;
  for (const TimeSpan& one : a.spans) {
    for (const TimeSpan& other : b.spans) {
      const bool untold = hangs_on_the_sun(one) || hangs_on_the_sun(other);
      const bool meet = one.from.minutes < other.to.minutes && other.from.minutes < one.to.minutes;
      if (untold || one.open_end || other.open_end || meet) return true;
    }
  }
  return false;
}

std::string when_of(const Rule& rule) {
  if (is_always(rule)) return "at any time";
  const std::string days = days_in_words(rule);
  if (rule.spans.empty()) return days;
  const std::string times = spans_in_words(rule.spans);
  if (times == "all day") return days;
  return (days.empty() ? "every day" : days) + ", " + times;
}

std::string off_words(const Rule& rule) {
  if (is_always(rule)) return "never";
  if (!speaks_of_every_day(rule)) return "not " + std::string(preposition(rule)) + when_of(rule);
  const std::string times = spans_in_words(rule.spans);
  return "not " + std::string(times.starts_with("from ") ? "" : "from ") + times;
}

std::string rule_words(const Rule& rule, std::string_view text) {
  const std::string said = rule.comment.length > 0 ? quoted(rule.comment.of(text)) : "";
  const std::string behind = said.empty() ? "" : " (" + said + ")";
  if (rule.state == State::off) return off_words(rule) + behind;
  if (rule.by_comment && is_always(rule)) return quoted(rule.comment.of(text));
  return (rule.state == State::unknown ? "perhaps " : "") + when_of(rule) + behind;
}

/// The minute until which spans may last; that of the next midnight and more is in the night.
int last_end(const Rule& rule) {
  int end = 0;
  for (const TimeSpan& span : rule.spans) {
    const bool told = !span.open_end && span.to.event == SunEvent::none;
    end = std::max(end, told ? span.to.minutes : 2 * day_minutes);
  }
  return end;
}

bool has_night(const Rule& rule) {
  return last_end(rule) > day_minutes;
}

/// A fallback that is off at some times takes nothing away.
bool says_nothing(const Rule& rule) {
  return rule.joint == Joint::falls_back && rule.state == State::off && !is_always(rule);
}

/// A text whose rules are told one after the other.
class Teller {
 public:
  Teller(const Rules& rules, std::string_view text)
      : rules_(rules.rules), text_(text), days_(rules) {
    for (const Rule& rule : rules_) takes_days_.push_back(takes_days(rules, rule));
    for (std::size_t k = 0; k < rules_.size(); ++k)
      replaced_by_.push_back(replaced_by(rules, days_, k));
  }

  std::string all() const {
    std::string all;
    for (std::size_t k = 0; k < rules_.size(); ++k) {
      if (is_replaced(k) || (!all.empty() && says_nothing(rules_[k]))) continue;
      const std::string words = rule_words(rules_[k], text_);
      all += all.empty() ? words : joint(k) + said_after(joint(k), k, words);
      all += brackets(k);
    }
    return all;
  }

 private:
  // Of longer texts each rule is said as it stands.
  static constexpr std::size_t most_rules = most_rules_compared;

  bool is_replaced(std::size_t k) const { return replaced_by_[k] != k; }

  /// Some rule said before the k-th, of which is(i) is true.
  template <class Is>
  bool any_before(std::size_t k, Is is) const {
    for (std::size_t i = 0; i < k; ++i) {
      if (!is_replaced(i) && is(i)) return true;
    }
    return false;
  }

  std::string joint(std::size_t k) const {
    const Rule& rule = rules_[k];
    if (rule.joint == Joint::falls_back) return "; otherwise ";
    const bool long_text = rules_.size() > most_rules;
    const bool takes = !long_text && any_before(k, [&](std::size_t i) {
      return rules_[i].state != State::off && days_.share(i, k);
    });
    if (takes_days_[k] || rule.state == State::off) return takes ? "; but " : "; ";
    return takes ? "; and also " : "; ";
  }

  /// "on bank holidays, …" behind "but"; elsewhere days stand by themselves.
  std::string said_after(std::string_view joint, std::size_t k, const std::string& words) const {
    const bool with_preposition = joint == "; but " && rules_[k].state == State::in_force;
    return with_preposition && names_days(rules_[k]) ? std::string(preposition(rules_[k])) + words
                                                     : words;
  }

  /// Nothing takes the small hours of a day from what began in the night before it by rule i.
  bool keeps_night(std::size_t i, std::size_t day) const {
    for (std::size_t k = i + 1; k < rules_.size(); ++k) {
      if (takes_days_[k] && days_.on(k, day)) return false;
    }
    return days_.before(i, day);
  }

  /// The k-th takes a night of rule i in its middle: from midnight on, or up to midnight.
  bool cuts_night(std::size_t k, std::size_t i) const {
    if (rules_[i].state == State::off || !has_night(rules_[i])) return false;
    // A day that is in force from midnight to midnight cuts off no end of a night.
    const bool all_day = rules_[k].state == State::in_force && rules_[k].spans.empty();
    for (std::size_t day = 0; day < days_.count(); ++day) {
      const bool end_of_night =
          !all_day && days_.before(i, day) && days_.on(k, day) && !days_.before(k, day);
      const bool start_of_night = days_.before(k, day) && keeps_night(i, day);
      if (end_of_night || start_of_night) return true;
    }
    return false;
  }

  /// "Saturday", of the small hours that rule i keeps though the k-th replaces it; empty when it keeps
  /// none. What a rule that was off takes away the k-th gives back where it has a night of its own.
  std::string nights_kept(std::size_t i, std::size_t k) const {
    std::uint8_t weekdays = 0;
    if (!has_night(rules_[i])) return "";
    const bool given_back =
        rules_[i].state == State::off && last_end(rules_[i]) <= last_end(rules_[k]);
    for (std::size_t day = 0; day < days_.count(); ++day) {
      if (!keeps_night(i, day) || (given_back && days_.before(k, day))) continue;
      weekdays = static_cast<std::uint8_t>(weekdays | 1U << days_.weekday(day));
    }
    if (weekdays == 0) return "";
    return days_.is_week() ? weekdays_in_words(weekdays) : "the day after";
  }

  /// The words of rule i, which the k-th replaces: its times alone where the days are the same.
  std::string replaced_rule(std::size_t i, std::size_t k) const {
    const Rule& rule = rules_[i];
    const bool times_alone = days_.within(k, i) && rule.state == State::in_force &&
                             !rule.spans.empty() && rule.comment.length == 0;
    const std::string words = times_alone ? spans_in_words(rule.spans) : rule_words(rule, text_);
    return "\u201c" + words + "\u201d";
  }

  /// What the k-th rule makes count for nothing; each with the small hours it keeps.
  std::string replaced_words(std::size_t k) const {
    std::vector<std::string> whole;
    std::string but_for_nights;
    for (std::size_t i = 0; i < k; ++i) {
      const bool same = rules_[i].spans == rules_[k].spans && rules_[i].state == rules_[k].state;
      if (replaced_by_[i] != k || (same && days_.within(k, i))) continue;
      const std::string kept = nights_kept(i, k);
      if (kept.empty()) {
        whole.push_back(replaced_rule(i, k));
      } else {
        but_for_nights +=
            "; " + replaced_rule(i, k) +
            " earlier in the text doesn't count, but for what of it lies after midnight "
            "on " +
            kept;
      }
    }
    if (whole.empty()) return but_for_nights.empty() ? "" : but_for_nights.substr(2);
    return listed(whole) + " earlier in the text " + (whole.size() > 1 ? "don't" : "doesn't") +
           " count" + but_for_nights;
  }

  /// "even on bank holidays", of days that a rule before takes away and this one gives back.
  std::string given_back(std::size_t k) const {
    std::vector<std::string> days;
    if (rules_[k].state == State::off || rules_.size() > most_rules) return "";
    if (!takes_days_[k] && rules_[k].joint == Joint::falls_back) return "";
    for (std::size_t i = 0; i < k; ++i) {
      if (is_replaced(i) || rules_[i].state != State::off || !days_.share(i, k)) continue;
      if (takes_days_[k] || rules_[k].joint == Joint::adds || times_meet(rules_[i], rules_[k]))
        days.push_back(std::string(preposition(rules_[i])) + when_of(rules_[i]));
    }
    return days.empty() ? "" : "even " + listed(days);
  }

  /// An off rule is said between the k-th and one whose days it takes: "not on Sunday; but on Monday"
  /// isn't heard as taking them.
  bool takes_from_afar(std::size_t k) const {
    if (k < 2 || rules_[k].state == State::off || rules_[k - 1].state != State::off) return false;
    return any_before(
        k - 1, [&](std::size_t i) { return rules_[i].state != State::off && days_.share(i, k); });
  }

  std::string brackets(std::size_t k) const {
    std::vector<std::string> parts;
    const auto cuts = [&](std::size_t i) { return cuts_night(k, i); };
    const bool off = rules_[k].state == State::off;
    if (rules_.size() <= most_rules && takes_days_[k] &&
        (any_before(k, cuts) || takes_from_afar(k))) {
      parts.emplace_back(off ? "from midnight to midnight"
                             : "nothing else from midnight to midnight");
    }
    for (const std::string& more : {given_back(k), replaced_words(k)}) {
      if (!more.empty()) parts.push_back(more);
    }
    std::string all;
    for (const std::string& part : parts) all += (all.empty() ? " (" : "; ") + part;
    return all.empty() ? "" : all + ")";
  }

  const std::vector<Rule>& rules_;
  std::string_view text_;
  RuleDays days_;
  std::vector<bool> takes_days_;
  std::vector<std::size_t> replaced_by_;
};

}  // namespace

std::string_view preposition(const Rule& rule) {
  if (!rule.days.empty()) {
    const DayItem& first = rule.days.back().front();
    const bool school = rule.days.size() == 1 && first.kind == DayItem::Kind::school_holiday;
    return school ? "in the " : "on ";
  }
  if (!rule.weeks.empty()) return "in ";
  if (!rule.dates.empty()) {
    const DateRange& dates = rule.dates.front();
    if (dates.open_end) return "";
    if (dates.from.day == 1 && dates.to.day == 0) return "in ";
    return dates.from == dates.to ? "on " : "from ";
  }
  const bool open_end = !rule.years.empty() && rule.years.front().to > 9999;
  return rule.years.empty() || open_end ? "" : "in ";
}

std::string rules_in_words(const Rules& rules, std::string_view text) {
  return Teller(rules, text).all();
}

}  // namespace loopwright::hours
