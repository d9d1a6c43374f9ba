// Method:
// 1. A condition is split at the word AND. Each part is one of: a comparison of a vehicle's
//    property (decided by the car's figures), a kind of user or vehicle (a lesson is none of them),
//    a state of road or weather (may hold: nobody knows now), "24/7" (holds), or hours.
// 2. One part that never holds makes the whole never hold. Otherwise a state of the road, or a
//    text we don't know, leaves only "at times"; hours leave "at times" with their text.
// 3. Limits on size are lengths in metres (or feet and inches) and weights in tonnes. A text that
//    can't be read keeps no car out, but is reported.
// The car's figures: src/rules/car.txt. Sources: OSM wiki, pages Key:maxheight, Key:maxwidth; of
// the grammar: OSM wiki, page Conditional restrictions.
#include "loopwright/mark/ordinary_car.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>
#include <vector>

#include "loopwright/base/table.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

using When = Binding::When;

/// A figure of src/rules/car.txt; empty when the car has no such property.
std::optional<double> of_car(std::string_view property) {
  for (const TableRow& row : read_table(rule_text("car"))) {
    if (row.at(0) == property) return number_cell(row, 1);
  }
  return std::nullopt;
}

constexpr std::array<std::string_view, 29> others{
    "destination", "delivery",     "customers", "private",  "permit",  "permit_holders",
    "residents",   "resident",     "employees", "staff",    "loading", "disabled",
    "emergency",   "agricultural", "forestry",  "military", "bus",     "psv",
    "taxi",        "hgv",          "goods",     "lgv",      "trailer", "caravan",
    "motorcycle",  "moped",        "coach",     "hazmat",   "bicycle"};

/// The number at the start of a text, whatever unit follows.
std::optional<double> leading_number(std::string_view text) {
  text = trim(text);
  const std::size_t end = text.find_first_not_of("0123456789.");
  return read_number(text.substr(0, end));
}

bool compare(double value, std::string_view relation, double with) {
  if (relation == "<") return value < with;
  if (relation == ">") return value > with;
  if (relation == "<=") return value <= with;
  if (relation == ">=") return value >= with;
  return value == with;
}

/// Holds or not when the part compares a property of the car; empty for any other text.
std::optional<bool> compared(std::string_view part) {
  const std::size_t at = part.find_first_of("<>=");
  if (at == std::string_view::npos) return std::nullopt;
  const std::size_t after = part.find_first_not_of("<>=", at);
  const std::string property = lower(trim(part.substr(0, at)));
  const auto value = of_car(property);
  if (!value || after == std::string_view::npos) return std::nullopt;
  const auto limit = leading_number(part.substr(after));
  if (!limit) return std::nullopt;
  return compare(*value, part.substr(at, after - at), *limit);
}

std::string_view without_brackets(std::string_view part) {
  part = trim(part);
  const bool bracketed = part.starts_with('(') && part.ends_with(')');
  return bracketed ? trim(part.substr(1, part.size() - 2)) : part;
}

std::vector<std::string_view> parts_of(std::string_view condition) {
  constexpr std::string_view word = " AND ";
  std::vector<std::string_view> parts;
  std::size_t from = 0;
  for (std::size_t at; (at = condition.find(word, from)) != std::string_view::npos;) {
    parts.push_back(without_brackets(condition.substr(from, at - from)));
    from = at + word.size();
  }
  parts.push_back(without_brackets(condition.substr(from)));
  return parts;
}

/// Hours begin with a day, month or date, a time, a holiday or the sun; anything with a digit or a
/// name of those is left to the hours room, which says itself when it can't read it.
bool looks_like_hours(std::string_view part) {
  constexpr std::array<std::string_view, 25> starts{
      "Mo",  "Tu",  "We",  "Th",      "Fr",     "Sa",   "Su",  "PH",  "SH",
      "Jan", "Feb", "Mar", "Apr",     "May",    "Jun",  "Jul", "Aug", "Sep",
      "Oct", "Nov", "Dec", "sunrise", "sunset", "dawn", "dusk"};
  if (!part.empty() && part[0] >= '0' && part[0] <= '9') return true;
  return std::ranges::any_of(starts, [&](std::string_view s) { return part.starts_with(s); });
}

Binding binding_of_part(std::string_view part) {
  if (part == "24/7") return {When::always, {}};
  if (const auto holds = compared(part)) return {*holds ? When::always : When::never, {}};
  if (one_of(lower(part), others)) return {When::never, {}};
  return {When::at_times, looks_like_hours(part) ? std::string(part) : std::string()};
}

Binding both(const Binding& a, const Binding& b) {
  if (a.when == When::never || b.when == When::never) return {When::never, {}};
  if (a.when == When::always) return b;
  if (b.when == When::always) return a;
  return {When::at_times, {}};
}

/// Tonnes of "7.5", "3 t", "1500 kg"; empty for other units and words.
std::optional<double> read_tonnes(std::string_view text) {
  const std::size_t unit_at = text.find_first_not_of("0123456789. ");
  const auto number = leading_number(text);
  if (!number || unit_at == std::string_view::npos) return number;
  if (trim(text.substr(unit_at)) == "t") return number;
  if (trim(text.substr(unit_at)) == "kg") return *number / 1000;
  return std::nullopt;
}

/// A key that limits the size of vehicles, and what of the car it is held against.
struct SizeKey {
  std::string_view key, property;
};

constexpr std::array<SizeKey, 6> size_keys{{{"maxwidth", "width"},
                                            {"maxwidth:physical", "gap"},
                                            {"maxheight", "height"},
                                            {"maxheight:physical", "height"},
                                            {"maxlength", "length"},
                                            {"maxweight", "weight"}}};

std::optional<double> read_size(const SizeKey& size, std::string_view text) {
  return size.property == "weight" ? read_tonnes(text) : read_width(text);
}

/// Words that say there is no number, or only the law's own (over 4 m high): no trouble for a car.
bool says_no_number(std::string_view text) {
  constexpr std::array<std::string_view, 7> words{"default", "below_default",  "none",    "no_sign",
                                                  "no",      "no_indications", "unsigned"};
  return one_of(text, words);
}

}  // namespace

Binding binding_on_car(std::string_view condition) {
  Binding all{When::always, {}};
  for (const std::string_view part : parts_of(condition)) all = both(all, binding_of_part(part));
  return all;
}

std::string size_tag_against_car(const Tags& tags) {
  for (const SizeKey& size : size_keys) {
    if (!tags.has(size.key)) continue;
    const auto limit = read_size(size, tags.get(size.key));
    if (limit && *limit < of_car(size.property).value()) return tag_text(tags, size.key);
  }
  return {};
}

std::string unread_size_tag(const Tags& tags) {
  for (const SizeKey& size : size_keys) {
    const std::string_view text = tags.get(size.key);
    if (text.empty() || says_no_number(text) || read_size(size, text)) continue;
    return tag_text(tags, size.key);
  }
  return {};
}

}  // namespace loopwright::mark
