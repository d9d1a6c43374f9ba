// text = rule { (';' | ',' | '||') rule };  rule = { selector } [ state ] [ comment ]
//
// 1. A rule is read selector by selector until a joint or the end; ':' between selectors is only
//    for the eye. Words in quotes before any selector name the rule; at its end they say why, and
//    alone they make it unknown.
// 2. "24/7" is a rule of its own; after it a state may follow.
// 3. ',' behind a whole rule adds another (a selector that goes on over ',' has taken it before); what
//    is added to a fallback is one too.
// 4. A ';' at the end, or two together, are passed over, as all readers do.
// Source: OSM wiki Key:opening_hours/specification: rule separators, modifiers, selectors.
#include "hours/parse.hpp"

#include <algorithm>
#include <array>

#include "hours/read_days.hpp"
#include "hours/read_times.hpp"
#include "hours/replaced.hpp"

namespace loopwright::hours {
namespace {

constexpr std::string_view wanted_rule = "days, times, 24/7, open, off or unknown";

bool at_always(const TokenReader& reader) {
  return reader.is_number() && reader.peek().number == 24 && reader.is("/", 1) &&
         reader.is_number(2) && reader.peek(2).number == 7;
}

std::optional<State> state_of(const Token& token) {
  if (token.is("off") || token.is("closed")) return State::off;
  if (token.is("open")) return State::in_force;
  if (token.is("unknown")) return State::unknown;
  return std::nullopt;
}

/// What of a rule has been read so far.
struct RuleParts {
  bool selector = false, time = false, state = false, named = false;
  [[nodiscard]] bool any() const { return selector || time || state; }
};

/// Where ':' may stand for the eye alone.
bool take_colon(TokenReader& reader, const RuleParts& parts) {
  return parts.selector && !parts.time && reader.take(":");
}

bool take_selector(TokenReader& reader, Rule& rule, RuleParts& parts) {
  parts.selector = true;
  if (at_date(reader)) return read_dates(reader, rule.dates);
  if (at_year(reader)) return read_years(reader, rule.years);
  if (at_week(reader)) return read_weeks(reader, rule.weeks);
  return read_day_group(reader, rule.days);
}

bool at_selector(const TokenReader& reader) {
  return at_date(reader) || at_year(reader) || at_week(reader) || at_day(reader);
}

/// A quoted text: in front of everything and followed by ':' the name of the days that are meant, else
/// the rule's own words. Nobody can tell which days have that name.
void take_comment(TokenReader& reader, Rule& rule, RuleParts& parts) {
  const Token& token = reader.peek();
  const Slice inside{static_cast<std::uint32_t>(token.from + 1),
                     static_cast<std::uint32_t>(token.text.size())};
  const bool is_name = !parts.any() && reader.is(":", 1);
  reader.skip(is_name ? 2 : 1);
  rule.comment = inside;
  if (parts.state) return;
  rule.state = State::unknown;
  rule.by_comment = true;
  parts.named = is_name, parts.state = !is_name;
}

bool at_joint(const TokenReader& reader) {
  return reader.done() || reader.is(";") || reader.is(",") || reader.is("||");
}

/// One part of a rule. False at a joint, and when it can't be read.
bool take_part(TokenReader& reader, Rule& rule, RuleParts& parts) {
  if (at_joint(reader)) return false;
  if (take_colon(reader, parts)) return true;
  if (reader.peek().kind == Token::Kind::comment) {
    take_comment(reader, rule, parts);
    return true;
  }
  if (parts.state) return reader.stop("; or , before a further rule");
  if (const auto state = state_of(reader.peek())) {
    if (!parts.named) rule.state = *state;
    parts.state = true;
    reader.skip();
    return true;
  }
  if (at_always(reader)) {
    reader.skip(3);
    parts.time = true;
    return true;
  }
  if (at_selector(reader)) return take_selector(reader, rule, parts);
  if (!at_time(reader)) return reader.stop(parts.any() ? "a time, ; or ," : wanted_rule);
  if (parts.time) return reader.stop("a comma between two times, as in 07:00-10:00,16:00-19:00");
  parts.time = true;
  return read_times(reader, rule.spans);
}

bool read_rule(TokenReader& reader, Rule& rule) {
  const std::size_t from = reader.peek().from;
  RuleParts parts;
  while (take_part(reader, rule, parts)) {
  }
  if (reader.trouble()) return false;
  if (!parts.any()) return reader.stop(wanted_rule);
  rule.text = {static_cast<std::uint32_t>(from),
               static_cast<std::uint32_t>(reader.taken_to() - from)};
  return true;
}

std::optional<Joint> take_joint(TokenReader& reader) {
  if (reader.take("||")) return Joint::falls_back;
  if (reader.take(",")) return Joint::adds;
  if (!reader.take(";")) return std::nullopt;
  while (reader.take(";")) {
  }
  return Joint::replaces;
}

void note_holidays(const Rule& rule, std::vector<int>& moves) {
  for (const DayGroup& group : rule.days) {
    for (const DayItem& item : group) {
      const bool is_new = std::ranges::find(moves, item.moved_days) == moves.end();
      if (item.kind == DayItem::Kind::bank_holiday && is_new) moves.push_back(item.moved_days);
    }
  }
}

}  // namespace

Parsed parse(std::string_view text) {
  TokenReader reader(tokens_of(text));
  Rules rules;
  std::optional<Joint> joint = Joint::replaces;
  do {
    if (*joint == Joint::replaces && reader.done() && !rules.rules.empty()) break;
    Rule rule;
    const bool in_fallback = !rules.rules.empty() && rules.rules.back().joint == Joint::falls_back;
    rule.joint = in_fallback && *joint == Joint::adds ? Joint::falls_back : *joint;
    if (!read_rule(reader, rule)) return {std::nullopt, reader.trouble()};
    note_holidays(rule, rules.holiday_moves);
    rules.rules.push_back(std::move(rule));
  } while ((joint = take_joint(reader)));
  mark_whole_replacements(rules);
  return {std::move(rules), std::nullopt};
}

}  // namespace loopwright::hours
