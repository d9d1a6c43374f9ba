// 1. Rules are gone through in order. One after ';' that is in force or unknown on the day wipes
//    out what earlier rules said of it, small hours of the night before included; one that is off
//    only takes out its own times. One that names no days wipes out only when the rule before it
//    names none either: who writes "Mo-Sa 08:00-13:00; 15:00-18:00" means both, and so read both
//    outside readers. One after '||' counts only while nothing is in force or unknown.
// 2. A rule that speaks of the day gives its spans; one that speaks of the day before gives what of
//    them lies behind midnight.
// 3. Holidays that nobody knows are tried both ways, each day by itself. All the same: settled.
//    Else unknown, because of them.
//    With more than six such days (today, the day before, "PH -1 day" …) it is unknown at once.
// 4. On a bank holiday the answer is worked out again as if it were none; another answer then means
//    that the holiday made the difference.
// 5. Of few spans the next look is where one begins or ends. Of many the rest of the day is laid out
//    minute by minute, or the walk through a year of a text of hundreds of spans would take seconds.
// 6. Where a rule leaves nothing of an earlier one (replaced.hpp), the rules are laid once more as if it
//    added to that one; what isn't in force but would be then is marked.
// Source: OSM wiki Key:opening_hours/specification, rule separators ("; " replaces the days it
// touches); that "off" with times cuts only these: the specification's explanation of closed.
#include "hours/evaluate.hpp"

#include <algorithm>
#include <array>
#include <bit>
#include <optional>
#include <span>

#include "hours/day_match.hpp"
#include "hours/day_times.hpp"

namespace loopwright::hours {
namespace {

constexpr Answer nothing_said{Tri::no, Reason::stated, {}};

Answer said_by(const Rule& rule, bool open_end) {
  if (rule.state == State::unknown) {
    return {Tri::unknown, rule.by_comment ? Reason::comment : Reason::said_unknown, rule.text};
  }
  if (rule.state == State::off) return {Tri::no, Reason::stated, rule.text};
  if (open_end) return {Tri::unknown, Reason::open_end, rule.text};
  return {Tri::yes, Reason::stated, rule.text};
}

/// Minutes of a day in a row, on which rule is laid upon rule.
class Sheet {
 public:
  Sheet(const WallMinute& first, std::span<Answer> answers) : first_(first), answers_(answers) {
    wipe();
  }
  [[nodiscard]] std::int64_t day() const { return first_.day; }
  void wipe() { std::ranges::fill(answers_, nothing_said); }

  /// Lays the spans of a rule that begin on `day`, which is this day or the one before.
  void lay(const Rule& rule, std::int64_t day, const Setting& setting) {
    const int earlier = static_cast<int>(day - first_.day) * day_minutes;
    if (rule.spans.empty()) fill(rule, {earlier, earlier + day_minutes}, said_by(rule, false));
    Minutes dark{0, 0};  // what the last spans filled, all of them without a sun
    for (const TimeSpan& span : rule.spans) {
      const auto known = minutes_on(span, day, setting);
      const Minutes times = known ? *known : widest_minutes(span);
      // Hundreds of such spans fill the same two days, on each day of a year.
      if (!known && dark.from <= times.from && times.to <= dark.to) continue;
      dark = known ? Minutes{0, 0} : times;
      fill(rule, {times.from + earlier, times.to + earlier},
           known ? said_by(rule, span.open_end) : Answer{Tri::unknown, Reason::no_sun, rule.text});
    }
  }

 private:
  /// answer by value: were it one of the answers for all the compiler knows, filling is slower.
  void fill(const Rule& rule, const Minutes& times, Answer answer) {
    const int count = static_cast<int>(answers_.size());
    const int from = std::clamp(times.from - first_.minute, 0, count);
    const int to = std::clamp(times.to - first_.minute, from, count);
    const std::span part =
        answers_.subspan(static_cast<std::size_t>(from), static_cast<std::size_t>(to - from));
    const bool dark = answer.reason == Reason::no_sun;
    if (rule.joint != Joint::falls_back && !dark) return void(std::ranges::fill(part, answer));
    const auto is_free = [&](const Answer& before) {
      // What another of its spans names by the clock holds whenever the sun sets.
      if (before.rule == rule.text) return !dark;
      return rule.joint != Joint::falls_back || before.in_force == Tri::no;
    };
    std::ranges::replace_if(part, is_free, answer);
  }

  WallMinute first_;
  std::span<Answer> answers_;
};

bool may_pass_midnight(const Rule& rule) {
  return std::ranges::any_of(rule.spans, [](const TimeSpan& span) {
    return span.open_end || span.to.event != SunEvent::none || span.from.event != SunEvent::none ||
           span.to.minutes > day_minutes;
  });
}

/// How a rule is taken that leaves nothing of an earlier one: by the letter, or as added to that one.
enum class Reading : std::uint8_t { letter, both };

void lay_all(const Rules& rules, Assumption& assumption, Sheet sheet,
             Reading reading = Reading::letter) {
  const std::int64_t today = sheet.day(), before = today - 1;
  for (const Rule& rule : rules.rules) {
    const bool adds = reading == Reading::both && rule.replaces_whole;
    if (adds && rule.state == State::off) continue;
    if (speaks_of(rule, today, assumption)) {
      if (!adds && replaces(rules, rule)) sheet.wipe();
      sheet.lay(rule, today, assumption.setting());
    }
    if (may_pass_midnight(rule) && speaks_of(rule, before, assumption)) {
      sheet.lay(rule, before, assumption.setting());
    }
  }
}

/// The answers over all ways in which unknown holidays may fall, where they are one.
class OverAll {
 public:
  OverAll(const Rules& rules, const WallMinute& first, const Setting& setting,
          Reading reading = Reading::letter)
      : rules_(rules), first_(first), setting_(setting), reading_(reading) {}

  /// scratch is as long as answers, and lost.
  void settle(std::span<Answer> answers, std::span<Answer> scratch) {
    lay(0, answers);
    // Every subset of the days asked for; when further days come up, all over again.
    for (std::uint32_t bits = asked_; bits != 0; bits = (bits - 1) & asked_) {
      const std::uint32_t before = asked_;
      if (std::popcount(before) > most_unknown_days) return give_up(answers);
      lay(bits, scratch);
      merge(answers, scratch);
      if (asked_ != before) bits = asked_ + 1;
    }
  }

 private:
  static constexpr int most_unknown_days = 6;

  void lay(std::uint32_t bits, std::span<Answer> answers) {
    Assumption assumption(setting_, first_.day, bits);
    lay_all(rules_, assumption, {first_, answers}, reading_);
    asked_ |= assumption.asked();
    bank_ = bank_ || assumption.asked_for_bank();
  }
  [[nodiscard]] Reason reason() const { return bank_ ? Reason::no_holidays : Reason::no_terms; }

  void merge(std::span<Answer> answers, std::span<const Answer> others) const {
    for (std::size_t row = 0; row < answers.size(); ++row) {
      Answer& answer = answers[row];
      const Answer& other = others[row];
      const bool merged = answer.in_force == Tri::unknown && answer.reason == reason();
      if (merged || answer.in_force == other.in_force) continue;
      answer = {Tri::unknown, reason(), other.rule.length > 0 ? other.rule : answer.rule};
    }
  }
  /// More unknown days than are worth trying: then nothing is known.
  void give_up(std::span<Answer> answers) const {
    for (Answer& answer : answers) answer = {Tri::unknown, reason(), answer.rule};
  }

  const Rules& rules_;
  const WallMinute& first_;
  const Setting& setting_;
  Reading reading_;
  std::uint32_t asked_ = 0;
  bool bank_ = false;
};

/// Marks the answers that are "no" since a rule is replaced by one that leaves nothing of it.
/// Rules: more and scratch are as long as answers, and lost.
void mark_replaced(const Rules& rules, const WallMinute& first, const Setting& setting,
                   std::span<Answer> answers, std::span<Answer> more, std::span<Answer> scratch) {
  if (!rules.any_replaced) return;
  OverAll(rules, first, setting, Reading::both).settle(more, scratch);
  for (std::size_t row = 0; row < answers.size(); ++row) {
    answers[row].replaced = answers[row].in_force == Tri::no && more[row].in_force != Tri::no;
  }
}

/// What the rules say of a minute, on some assumption.
Tri said_on(const Rules& rules, const WallMinute& at, Assumption assumption) {
  std::array<Answer, 1> answers;
  lay_all(rules, assumption, {at, answers});
  return answers.front().in_force;
}

/// Calls f(day) for every bank holiday that a rule may look at when asked about a day or, of what began
/// the night before, the day before; until f returns true.
template <class F>
bool any_bank_holiday(const Rules& rules, std::int64_t day, const Setting& setting, F&& f) {
  return std::ranges::any_of(rules.holiday_moves, [&](int move) {
    for (const std::int64_t named : {day - move, day - move - 1}) {
      if (setting.bank_holiday(date_from_days(named)) == Tri::yes && f(named)) return true;
    }
    return false;
  });
}

/// Marks an answer that would be another one were there no bank holidays, with the one that alone makes
/// the difference, else the first.
void mark_holiday(const Rules& rules, const WallMinute& at, const Setting& setting,
                  Answer& answer) {
  std::optional<std::int64_t> first, alone;
  any_bank_holiday(rules, at.day, setting, [&](std::int64_t holiday) {
    first = holiday;
    return true;
  });
  if (!first) return;
  Assumption plain(setting, at.day, 0);
  plain.without_bank_holidays();
  if (said_on(rules, at, plain) == answer.in_force) return;
  any_bank_holiday(rules, at.day, setting, [&](std::int64_t holiday) {
    Assumption one_less(setting, at.day, 0);
    one_less.without_bank_holiday(holiday);
    if (said_on(rules, at, one_less) != answer.in_force) alone = holiday;
    return alone.has_value();
  });
  answer.reason = Reason::holiday;
  answer.holiday_days = static_cast<std::int16_t>(alone.value_or(*first) - at.day);
}

bool is_every_weekday(const DayGroup& group) {
  std::uint8_t bits = 0;
  for (const DayItem& item : group) {
    if (item.kind == DayItem::Kind::weekdays)
      bits = static_cast<std::uint8_t>(bits | item.weekdays);
  }
  constexpr std::uint8_t all = 0x7f;
  return bits == all;
}

bool hangs_on_the_sun(const TimeSpan& span) {
  return span.from.event != SunEvent::none || span.to.event != SunEvent::none;
}

/// The first minute after `at` at which a span begins or ends; the end of the day at the latest.
int next_boundary(const Rules& rules, const WallMinute& at, const Setting& setting) {
  int next = day_minutes;
  const auto consider = [&](int minute) {
    if (minute > at.minute) next = std::min(next, minute);
  };
  for (const Rule& rule : rules.rules) {
    for (const TimeSpan& span : rule.spans) {
      for (const int earlier : {0, day_minutes}) {
        const std::int64_t day = at.day - earlier / day_minutes;
        const Minutes times = minutes_on(span, day, setting).value_or(widest_minutes(span));
        consider(times.from - earlier), consider(times.to - earlier);
      }
    }
  }
  return next;
}

/// The first minute after `at` with another answer; the end of the day at the latest.
int next_other(const Rules& rules, const WallMinute& at, const Setting& setting) {
  std::array<Answer, day_minutes> answers, more, scratch;
  const auto left = static_cast<std::size_t>(day_minutes - at.minute);
  const std::span<Answer> rest = std::span(answers).first(left);
  const std::span<Answer> second = std::span(scratch).first(left);
  OverAll(rules, at, setting).settle(rest, second);
  mark_replaced(rules, at, setting, rest, std::span(more).first(left), second);
  const auto other = std::ranges::find_if(rest, [&](const Answer& answer) {
    return answer.in_force != rest.front().in_force || answer.reason != rest.front().reason ||
           answer.replaced != rest.front().replaced;
  });
  return at.minute + static_cast<int>(other - rest.begin());
}

}  // namespace

bool replaces(const Rules& rules, const Rule& rule) {
  if (rule.joint != Joint::replaces || rule.state == State::off) return false;
  if (names_days(rule)) return true;
  const bool is_first = &rule == rules.rules.data();
  return !is_first && rule.state == State::in_force && !names_days(*(&rule - 1));
}

Answer answer_at(const Rules& rules, const WallMinute& at, const Setting& setting) {
  std::array<Answer, 1> answers, more, scratch;
  OverAll(rules, at, setting).settle(answers, scratch);
  mark_replaced(rules, at, setting, answers, more, scratch);
  Answer& answer = answers.front();
  if (answer.in_force != Tri::unknown) mark_holiday(rules, at, setting, answer);
  return answer;
}

bool speaks_of_every_day(const Rule& rule) {
  return rule.years.empty() && rule.dates.empty() && rule.weeks.empty() &&
         std::ranges::all_of(rule.days, is_every_weekday);
}

bool is_constant(const Rules& rules) {
  for (const Rule& rule : rules.rules) {
    if (!speaks_of_every_day(rule) || std::ranges::any_of(rule.spans, hangs_on_the_sun))
      return false;
  }
  std::array<Answer, day_minutes> day, more, scratch;
  const Setting nowhere;
  Assumption assumption(nowhere, 0, 0);
  lay_all(rules, assumption, {{0, 0}, day});
  mark_replaced(rules, {0, 0}, nowhere, day, more, scratch);
  return std::ranges::all_of(day, [&](const Answer& answer) {
    return answer.in_force == day.front().in_force && answer.replaced == day.front().replaced;
  });
}

WallMinute next_look(const Rules& rules, const WallMinute& at, const Setting& setting) {
  std::size_t spans = 0;
  for (const Rule& rule : rules.rules) spans += rule.spans.size();
  constexpr std::size_t few = 12;  // for so many, going through them again and again is quicker
  const int next =
      spans <= few ? next_boundary(rules, at, setting) : next_other(rules, at, setting);
  return next == day_minutes ? WallMinute{at.day + 1, 0} : WallMinute{at.day, next};
}

}  // namespace loopwright::hours
