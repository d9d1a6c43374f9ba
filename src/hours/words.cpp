// 1. Hours as in spoken_rules.cpp; a state of the road "when it is wet", a property "when the weight is
//    over 7.5", a user "for residents"; what nobody knows is quoted.
// 2. All parts of a condition must hold: the first is said, then "and only …" for each further one; when
//    the first is several rules it stands in brackets, or the rest would be heard with its last rule
//    alone.
// 3. Of clauses: "but not …" for those that take away.
#include <array>

#include "hours/parse.hpp"
#include "hours/quoted.hpp"
#include "hours/spoken_rules.hpp"
#include "loopwright/base/printable.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/timetable.hpp"

namespace loopwright::hours {
namespace {

/// The unit of a number that names none. Source: OSM wiki, Key:maxweight, Key:maxaxleload (tonnes),
/// Key:maxheight, Key:maxwidth, Key:maxlength (metres).
std::string_view usual_unit(std::string_view property, std::string_view value) {
  if (value.empty() || value.find_first_not_of("0123456789.") != value.npos) return "";
  if (property.find("weight") != property.npos || property.find("load") != property.npos)
    return " tonnes";
  constexpr std::array<std::string_view, 3> sizes{"height", "width", "length"};
  for (const std::string_view size : sizes) {
    if (property.find(size) != property.npos) return " metres";
  }
  return "";
}

/// "the weight is over 7.5 t"
std::string property_words(const ConditionPart& part) {
  std::string name = printable(part.property);
  for (char& c : name) {
    if (c == '_' || c == ':') c = ' ';
  }
  const std::size_t from = part.text.find(part.relation) + part.relation.size();
  std::string value = printable(trim(std::string_view(part.text).substr(from)));
  value += usual_unit(part.property, value);
  constexpr std::array<std::array<std::string_view, 2>, 4> relations{
      {{"<", "under"}, {">", "over"}, {"<=", "at most"}, {">=", "at least"}}};
  for (const auto& [sign, said] : relations) {
    if (part.relation == sign) return "the " + name + " is " + std::string(said) + " " + value;
  }
  if (part.relation == "=") return "the " + name + " is " + value;
  return quoted(part.text);
}

/// Whom a word of users means, as a learner's instructor says it.
std::string user_words(std::string_view word) {
  constexpr std::array<std::array<std::string_view, 2>, 15> known{{
      {"destination", "whoever has business there"},
      {"delivery", "deliveries"},
      {"loading", "loading"},
      {"private", "those with leave"},
      {"permit", "permit holders"},
      {"permit_holders", "permit holders"},
      {"resident", "residents"},
      {"disabled", "disabled people"},
      {"emergency", "emergency vehicles"},
      {"agricultural", "farm vehicles"},
      {"forestry", "forestry vehicles"},
      {"bus", "buses"},
      {"psv", "buses and taxis"},
      {"hgv", "lorries"},
      {"lgv", "vans and light lorries"},
  }};
  for (const auto& [tag, said] : known) {
    if (word == tag) return std::string(said);
  }
  return printable(word);
}

std::string state_words(std::string_view state) {
  if (state == "flashing") return "lights flash";
  if (state == "winter" || state == "summer") return "it is " + std::string(state);
  if (state == "snow" || state == "ice" || state == "fog") {
    return "there is " + std::string(state);
  }
  if (state == "darkness") return "it is dark";
  return state == "wet" || state == "dry" ? "it is " + std::string(state)
                                          : "the signs say so (" + quoted(state) + ")";
}

std::string hours_words(const Hours& hours) {
  return hours.readable() ? hours.words() : quoted(hours.text()) + ", which can't be read";
}

std::string part_words(const ConditionPart& part) {
  switch (part.kind) {
    case PartKind::hours:
      return hours_words(part.hours);
    case PartKind::road_state:
      return "when " + state_words(lower(part.text));
    case PartKind::property:
      return "when " + property_words(part);
    case PartKind::user:
      return "for " + user_words(lower(part.text));
    case PartKind::other:
      break;
  }
  return part.text.empty() ? "on a condition that is missing" : quoted(part.text);
}

/// Several rules, which a word before or behind them wouldn't be heard with.
bool is_long(std::string_view words) {
  return words.find("; ") != std::string_view::npos;
}

/// "on bank holidays", "in August" of a part that is one rule of hours; others as they are.
std::string with_preposition(const ConditionPart& part, const std::string& words) {
  if (part.kind != PartKind::hours || words == "at any time" || words == "never") return words;
  const Parsed parsed = parse(part.hours.text());
  if (!parsed.rules || parsed.rules->rules.size() != 1) return words;
  const Rule& rule = parsed.rules->rules.front();
  return rule.state == State::in_force ? std::string(preposition(rule)) + words : words;
}

/// "and only when it is wet"; several rules in brackets.
std::string narrowed(const ConditionPart& part, const std::string& words) {
  return "and only " +
         (is_long(words) ? "at these times: (" + words + ")" : with_preposition(part, words));
}

/// "on bank holidays" behind "but not"; several rules in brackets.
std::string taken_away(const Condition& condition) {
  const std::string words = condition.words();
  return is_long(words) ? "(" + words + ")" : with_preposition(condition.parts().front(), words);
}

}  // namespace

std::string Hours::words() const {
  return rules_ ? rules_in_words(*rules_, text_) : printable(text_);
}

std::string Condition::words() const {
  std::vector<std::string> parts;
  for (const ConditionPart& part : parts_) parts.push_back(part_words(part));
  if (parts.size() > 1 && is_long(parts.front())) parts.front() = "(" + parts.front() + ")";
  std::string all = parts.front();
  for (std::size_t k = 1; k < parts.size(); ++k) all += ", " + narrowed(parts_[k], parts[k]);
  return all;
}

std::string Timetable::words() const {
  std::string text;
  for (const Conditional::Row& row : clauses_.rows()) {
    if (row.value != "yes") {
      text += text.empty() ? "" : "; but not " + taken_away(row.condition);
      continue;
    }
    const std::string when = row.condition.words();
    if (text.empty()) {
      text = when;
    } else {
      text += "; and also " + (is_long(when) ? "(" + when + ")" : when);
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
