// 1. A condition is cut at the word AND, outside quotes and brackets; brackets that hold a whole
//    part come off.
// 2. A part with a comparison sign is of the vehicle; a known word of users or of the road is that;
//    what can be read as hours, or looks as if it should be (a digit, a day, a month, a holiday, the
//    sun), is hours; the rest hangs on something we don't know.
// 3. One part that doesn't hold settles it; else one that nobody can tell leaves it unknown.
// Source: OSM wiki Conditional restrictions: times, vehicle properties, road states, users, AND.
#include "loopwright/hours/condition.hpp"

#include <algorithm>
#include <array>

#include "hours/brackets.hpp"
#include "hours/day_words.hpp"
#include "hours/tokens.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::hours {
namespace {

constexpr std::array<std::string_view, 31> users{"destination", "delivery",  "deliveries",
                                                 "customers",   "private",   "permit",
                                                 "residents",   "resident",  "permit_holders",
                                                 "employees",   "staff",     "loading",
                                                 "disabled",    "emergency", "agricultural",
                                                 "forestry",    "military",  "bus",
                                                 "psv",         "taxi",      "hgv",
                                                 "goods",       "lgv",       "trailer",
                                                 "caravan",     "motorhome", "motorcycle",
                                                 "moped",       "coach",     "hazmat",
                                                 "bicycle"};

constexpr std::array<std::string_view, 10> road_states{
    "flashing", "wet", "snow", "ice", "winter", "summer", "dry", "fog", "darkness", "variable"};

template <std::size_t Count>
bool is_one_of(std::string_view word, const std::array<std::string_view, Count>& words) {
  return std::ranges::find(words, word) != words.end();
}

bool is_road_state(std::string_view part) {
  const std::string word = lower(part);
  return is_one_of(word, road_states) || word.starts_with("maxspeed:variable") ||
         word.starts_with("variable ");
}

bool looks_like_hours(std::string_view part) {
  if (!part.empty() && ((part[0] >= '0' && part[0] <= '9') || part[0] == '(')) return true;
  const std::vector<Token> tokens = tokens_of(part);
  const Token& first = tokens.front();
  constexpr std::array<std::string_view, 8> words{"ph",     "sh",   "week", "sunrise",
                                                  "sunset", "dawn", "dusk", "easter"};
  return weekday_of(first) || month_of(first) ||
         (first.kind == Token::Kind::word && is_one_of(first.text, words));
}

/// Sets name, relation and number of a comparison; false when the part is none.
bool read_property(ConditionPart& part) {
  const std::string_view text = part.text;
  const std::size_t at = text.find_first_of("<>=");
  if (at == std::string_view::npos || text.find('"') < at) return false;
  const std::size_t after = std::min(text.find_first_not_of("<>=", at), text.size());
  part.property = lower(trim(text.substr(0, at)));
  part.relation = text.substr(at, after - at);
  const std::string_view value = trim(text.substr(after));
  part.limit = read_number(value.substr(0, value.find_first_not_of("0123456789.")));
  return true;
}

ConditionPart part_of(std::string_view text) {
  ConditionPart part;
  part.text = without_brackets(trim(text));
  if (read_property(part)) {
    part.kind = PartKind::property;
  } else if (is_user_word(lower(part.text))) {
    part.kind = PartKind::user;
  } else if (is_road_state(part.text)) {
    part.kind = PartKind::road_state;
  } else if (part.hours = read_hours(part.text);
             part.hours.readable() || looks_like_hours(part.text)) {
    part.kind = PartKind::hours;
  }
  return part;
}

Reason reason_of(PartKind kind) {
  if (kind == PartKind::property) return Reason::property;
  if (kind == PartKind::user) return Reason::user;
  return kind == PartKind::road_state ? Reason::road_state : Reason::unreadable;
}

}  // namespace

bool is_user_word(std::string_view word) {
  return is_one_of(word, users);
}

std::vector<ConditionPart> parts_of_condition(std::string_view condition) {
  constexpr std::string_view word = " AND ";
  std::vector<ConditionPart> parts;
  if (condition.size() > longest_text) {
    parts.emplace_back().text = condition;  // of a kind that nobody can tell
    return parts;
  }
  Depth depth;
  std::size_t from = 0;
  for (std::size_t at = 0; at < condition.size(); ++at) {
    if (!depth.outside(condition[at]) || !condition.substr(at).starts_with(word)) continue;
    parts.push_back(part_of(condition.substr(from, at - from)));
    from = at + word.size();
  }
  parts.push_back(part_of(condition.substr(std::min(from, condition.size()))));
  return parts;
}

Tri Circumstances::holds(const ConditionPart&) const {
  return Tri::unknown;
}

Condition::Condition(std::string_view text)
    : text_(without_brackets(trim(text))), parts_(parts_of_condition(text_)) {}

Answer Condition::at(const CivilTime& at, const Setting& setting,
                     const Circumstances& about) const {
  Answer all{Tri::yes, Reason::stated, {}};
  for (const ConditionPart& part : parts_) {
    Answer answer;
    if (part.kind == PartKind::hours) {
      answer = part.hours.at(at, setting);
      if (answer.replaced) answer = {Tri::unknown, Reason::replaced, answer.rule};
    } else {
      answer.in_force = about.holds(part);
      if (answer.in_force == Tri::unknown) answer.reason = reason_of(part.kind);
    }
    if (parts_.size() > 1 || part.kind != PartKind::hours) answer.rule = {};
    if (answer.in_force == Tri::no) return answer;
    const bool tells_more = answer.reason == Reason::holiday || all.rule.length == 0;
    if (answer.in_force == Tri::unknown || (all.in_force == Tri::yes && tells_more)) all = answer;
  }
  return all;
}

bool Condition::never_changes() const {
  return std::ranges::all_of(parts_, [](const ConditionPart& part) {
    return part.kind != PartKind::hours || part.hours.never_changes();
  });
}

CivilTime Condition::next_look(const CivilTime& at, const Setting& setting) const {
  CivilTime next{date_from_days(days_since_epoch(at.date) + 1), 0, 0, 0};
  for (const ConditionPart& part : parts_) {
    if (part.kind == PartKind::hours) next = std::min(next, part.hours.next_look(at, setting));
  }
  return next;
}

}  // namespace loopwright::hours
