// text = rule { (';' | ',') rule };  rule = off | ( "24/7" | days [spans] | spans ) [off]
// off = "off" | "closed"
// days = day ['-' day] { ',' day ['-' day] };  spans = time '-' time { ',' time '-' time }
//
// 1. Read one rule after the other; the first text that fits nowhere ends reading.
// 2. Apply each to the week. After ';' (and as the first) a rule that is in force empties its days,
//    small hours of the night before included, before it fills them; after ',' it only fills.
//    An "off" rule takes its spans out, or its days when it has none.
// A ',' after a span begins another span when a digit follows, else another rule.
// Source: OSM wiki Key:opening_hours/specification; behaviour compared with the reference
// implementation (npm opening_hours 3.15.0).
#include "hours/parse.hpp"

#include <algorithm>

#include "hours/week.hpp"

namespace loopwright::hours {
namespace {

constexpr std::array<std::string_view, 7> day_names = {"Mo", "Tu", "We", "Th", "Fr", "Sa", "Su"};
constexpr Span whole_day = {0, day_minutes};

enum class Joint { replaces, adds };

struct Rule {
  std::array<bool, 7> days = {};
  std::vector<Span> spans;
  bool off = false;
};

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

void apply(const Rule& rule, Joint joint, Week& week) {
  const std::vector<Span> spans = rule.spans.empty() ? std::vector{whole_day} : rule.spans;
  for (int day = 0; day < 7; ++day) {
    if (!rule.days[day]) continue;
    if (!rule.off && joint == Joint::replaces) cut(week, day, whole_day);
    if (!rule.off) continue;
    for (const Span span : spans) cut(week, day, span);
  }
  for (int day = 0; day < 7 && !rule.off; ++day) {
    if (rule.days[day]) week[day].insert(week[day].end(), spans.begin(), spans.end());
  }
}

/// Takes words of the grammar off the front of a text. A word that isn't there is left, with all
/// that follows; `stopped_at` is then where it should have been.
class Reader {
 public:
  explicit Reader(std::string_view text) : text_(text) {}

  [[nodiscard]] std::size_t stopped_at() const { return at_; }
  bool done() {
    skip_blanks();
    return at_ == text_.size();
  }
  bool take_joint(Joint& joint);
  bool take_rule(Rule& rule);

 private:
  [[nodiscard]] char next(std::size_t ahead = 0) const {
    return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0';
  }
  void skip_blanks() {
    while (next() == ' ') ++at_;
  }
  bool take(char c);
  bool take_word(std::string_view word);
  bool take_off();
  bool take_day(int& day);
  bool take_days(Rule& rule);
  bool take_time(int& minutes);
  bool take_span(Span& span);
  bool take_spans(Rule& rule);

  std::string_view text_;
  std::size_t at_ = 0;
};

bool Reader::take(char c) {
  skip_blanks();
  if (next() != c) return false;
  ++at_;
  return true;
}

/// A whole word: no letter or digit follows it.
bool Reader::take_word(std::string_view word) {
  skip_blanks();
  const char after = next(word.size());
  if (text_.substr(at_, word.size()) != word || is_letter(after) || is_digit(after)) return false;
  at_ += word.size();
  return true;
}

bool Reader::take_joint(Joint& joint) {
  joint = take(';') ? Joint::replaces : Joint::adds;
  return joint == Joint::replaces || take(',');
}

bool Reader::take_rule(Rule& rule) {
  rule.days.fill(true);
  rule.off = take_off();
  if (rule.off) return true;
  if (!take_word("24/7")) {
    skip_blanks();
    const bool names_days = is_letter(next());
    if (names_days && !take_days(rule)) return false;
    skip_blanks();
    if ((!names_days || is_digit(next())) && !take_spans(rule)) return false;
  }
  rule.off = take_off();
  return true;
}

bool Reader::take_off() {
  return take_word("off") || take_word("closed");
}

bool Reader::take_day(int& day) {
  for (day = 0; day < 7; ++day) {
    if (take_word(day_names[day])) return true;
  }
  return false;
}

bool Reader::take_days(Rule& rule) {
  rule.days.fill(false);
  do {
    int first = 0;
    if (!take_day(first)) return false;
    int last = first;
    if (take('-') && !take_day(last)) return false;
    for (int day = first;; day = (day + 1) % 7) {
      rule.days[day] = true;
      if (day == last) break;
    }
  } while (take(','));
  return true;
}

/// "7:00" or "07:00".
bool Reader::take_time(int& minutes) {
  skip_blanks();
  const std::size_t hour_digits = is_digit(next(1)) ? 2 : 1;
  if (!is_digit(next()) || next(hour_digits) != ':') return false;
  if (!is_digit(next(hour_digits + 1)) || !is_digit(next(hour_digits + 2))) return false;
  const auto number = [this](std::size_t ahead, std::size_t digits) {
    int value = 0;
    for (std::size_t i = 0; i < digits; ++i) value = value * 10 + (next(ahead + i) - '0');
    return value;
  };
  const int minute = number(hour_digits + 1, 2);
  minutes = number(0, hour_digits) * 60 + minute;
  if (minute > 59) return false;
  at_ += hour_digits + 3;
  return true;
}

/// An end up to the beginning is on the next day; "26:00" says the same by itself. A span from a
/// time to the same time may mean nothing or a whole day, so it can't be read.
bool Reader::take_span(Span& span) {
  const std::size_t start = at_;
  if (!take_time(span.from_minute) || !take('-') || !take_time(span.to_minute)) return false;
  if (span.to_minute < span.from_minute) span.to_minute += day_minutes;
  const bool fits = span.from_minute < day_minutes && span.to_minute <= 2 * day_minutes &&
                    span.from_minute != span.to_minute;
  if (!fits) at_ = start;
  return fits;
}

bool Reader::take_spans(Rule& rule) {
  while (true) {
    Span span;
    if (!take_span(span)) return false;
    rule.spans.push_back(span);
    const std::size_t before_comma = at_;
    if (!take(',')) return true;
    skip_blanks();
    if (!is_digit(next())) {
      at_ = before_comma;
      return true;
    }
  }
}

}  // namespace

Parsed parse(std::string_view text) {
  Reader reader(text);
  Week week;
  Joint joint = Joint::replaces;
  do {
    Rule rule;
    if (!reader.take_rule(rule)) return {std::nullopt, reader.stopped_at()};
    apply(rule, joint, week);
  } while (reader.take_joint(joint));
  if (!reader.done()) return {std::nullopt, reader.stopped_at()};
  tidy(week);
  return {std::move(week), text.size()};
}

}  // namespace loopwright::hours
