// Method:
// 1. The hours room splits a condition at the word AND and says what each part is. A property of a
//    vehicle is decided by the car's figures, a kind of user never holds, "24/7" always.
// 2. One part that never holds makes the whole never hold; parts that always do fall away. What is
//    left (hours, a state of the road, a text nobody knows) decides at the time of passing.
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

using Figures = std::vector<std::pair<std::string, double>>;

/// Those of src/rules/car.txt, read once.
const Figures& figures_of_car() {
  static const Figures figures = [] {
    Figures read;
    for (const TableRow& row : read_table(rule_text("car")))
      read.emplace_back(row.at(0), number_cell(row, 1));
    return read;
  }();
  return figures;
}

/// A figure of the car; empty when it has no such property.
std::optional<double> of_car(std::string_view property) {
  const auto figure = std::ranges::find(figures_of_car(), property, &Figures::value_type::first);
  return figure == figures_of_car().end() ? std::nullopt : std::optional(figure->second);
}

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

hours::Tri holds_always(const hours::ConditionPart& part, const LearnersCar& car) {
  if (part.kind == hours::PartKind::hours)
    return part.text == "24/7" ? hours::Tri::yes : hours::Tri::unknown;
  return car.holds(part);
}

/// Brackets keep hours of several rules together.
std::string joined(const std::vector<std::string>& parts) {
  if (parts.size() == 1) return parts[0];
  std::string all;
  for (const std::string& part : parts) {
    if (!all.empty()) all += " AND ";
    all += part.find(';') == std::string::npos ? part : "(" + part + ")";
  }
  return all;
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

bool is_car_mode(std::string_view mode) {
  return mode == "motorcar" || mode == "motor_vehicle" || mode == "vehicle";
}

/// Types like restriction:hgv.
bool type_names_others(std::string_view type) {
  const std::size_t colon = type.find(':');
  if (colon == std::string_view::npos) return false;
  const std::string_view mode = type.substr(colon + 1);
  return !is_car_mode(mode) && mode != "conditional";
}

}  // namespace

hours::Tri LearnersCar::holds(const hours::ConditionPart& part) const {
  if (part.kind == hours::PartKind::user) return hours::Tri::no;
  if (part.kind != hours::PartKind::property || !part.limit) return hours::Tri::unknown;
  const std::optional<double> figure = of_car(part.property);
  if (!figure) return hours::Tri::unknown;
  const bool yes = compare(*figure, part.relation, *part.limit);
  return yes ? hours::Tri::yes : hours::Tri::no;
}

Binding binding_on_car(std::string_view condition) {
  const LearnersCar car;
  std::vector<std::string> left;
  for (const hours::ConditionPart& part : hours::parts_of_condition(condition)) {
    const hours::Tri holds = holds_always(part, car);
    if (holds == hours::Tri::no) return {When::never, {}};
    if (holds == hours::Tri::unknown) left.push_back(part.text);
  }
  if (left.empty()) return {When::always, {}};
  return {When::at_times, joined(left)};
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

bool restricts_others_only(const Tags& restriction) {
  return std::ranges::any_of(split(restriction.get("except"), ';'), is_car_mode) ||
         type_names_others(restriction.get("type"));
}

}  // namespace loopwright::mark
