// Method:
// 1. Rows of limits.txt for the region are kept; rules it doesn't name come from the general rows
//    (region *) in the region's unit.
// 2. A fact with a number of its own (a sign, a zone) is that number; any other is the newest row
//    of its rule that is in force on the day.
// 3. The confidence is the fact's, lowered to "check" when
//    a. the number is a general one, not this region's law, or
//    b. the law changed on or before the day, and either the rule itself was inferred from lamps or
//       class (authorities keep the old figure by signed order: gov.wales, exceptions guidance of
//       July 2024), or the map is older than the change or of unknown date, or
//    c. a signed number equals what the law said before such a change that the map hasn't seen.
#include "loopwright/road/limit.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>

#include "loopwright/base/table.hpp"

namespace loopwright::road {
namespace {

/// In the order of LimitRule. Rules that carry their number have no row of their own.
constexpr std::array<std::string_view, 13> rule_names{
    "unknown",       "signed-value", "no-limit",    "restricted", "national-single",
    "national-dual", "motorway",     "zone-twenty", "zone-other", "urban",
    "rural",         "rural-minor",  "walk"};

constexpr Date always{1, 1, 1};

LimitRule read_rule(std::string_view text) {
  const auto found = std::find(rule_names.begin(), rule_names.end(), text);
  if (found == rule_names.end()) {
    throw std::logic_error("limits: no rule called '" + std::string(text) + "'");
  }
  return static_cast<LimitRule>(found - rule_names.begin());
}

Date read_since(std::string_view text) {
  return text == "-" ? always : read_date(text).value();
}

bool carries_number(LimitRule rule) {
  return rule == LimitRule::signed_value || rule == LimitRule::zone_twenty ||
         rule == LimitRule::zone_other;
}

}  // namespace

std::string_view name(LimitConfidence confidence) {
  constexpr std::array<std::string_view, 4> names{"certain", "inferred", "check", "noted"};
  return names.at(static_cast<std::size_t>(confidence));
}

std::optional<LimitConfidence> parse_limit_confidence(std::string_view text) {
  for (const auto confidence : {LimitConfidence::certain, LimitConfidence::inferred,
                                LimitConfidence::check, LimitConfidence::noted}) {
    if (text == name(confidence)) return confidence;
  }
  return std::nullopt;
}

double LimitOnDay::metres_per_second() const {
  constexpr double kmh = 1000.0 / 3600;
  constexpr double mph = 1609.344 / 3600;
  if (value == 0) return 130 * kmh;
  return value * (unit == SpeedUnit::mph ? mph : kmh);
}

LimitLaw::LimitLaw(const Region& region, std::optional<Date> map_date) : map_date_(map_date) {
  for (const TableRow& cells : read_table(rule_text("limits"))) {
    Row row;
    row.rule = read_rule(cells.at(1));
    row.since = read_since(cells.at(2));
    row.value = static_cast<int>(number_cell(cells, 3));
    row.unit = parse_speed_unit(cells.at(4)).value();
    if (cells[0] == region.code) rows_.push_back(row);
    if (cells[0] == "*" && row.unit == region.unit) general_.push_back(row);
  }
}

LimitLaw::Found LimitLaw::find(LimitRule rule, Date day) const {
  Found found;
  for (const auto* rows : {&rows_, &general_}) {
    for (const Row& row : *rows) {
      const bool holds = row.rule == rule && row.since <= day;
      if (holds && (found.row == nullptr || found.row->since <= row.since)) found.row = &row;
    }
    if (found.row != nullptr) return found;
    found.general = true;
  }
  throw std::logic_error("limits: no row for the rule '" +
                         std::string(rule_names.at(static_cast<std::size_t>(rule))) + "'");
}

bool LimitLaw::map_misses(Date change, Date day) const {
  return change != always && change <= day && (!map_date_ || *map_date_ < change);
}

bool LimitLaw::was_default_before_change(const LimitFact& fact, Date day) const {
  return std::any_of(rows_.begin(), rows_.end(), [&](const Row& later) {
    if (!map_misses(later.since, day)) return false;
    return std::any_of(rows_.begin(), rows_.end(), [&](const Row& earlier) {
      return earlier.rule == later.rule && earlier.since < later.since &&
             earlier.value == fact.value && earlier.unit == fact.unit;
    });
  });
}

LimitOnDay LimitLaw::on(const LimitFact& fact, Date day) const {
  if (carries_number(fact.rule)) {
    const bool doubt = fact.rule == LimitRule::signed_value &&
                       fact.confidence != LimitConfidence::noted &&
                       was_default_before_change(fact, day);
    return {fact.value, fact.unit, doubt ? LimitConfidence::check : fact.confidence};
  }
  const Found found = find(fact.rule, day);
  const bool says_nothing_of_law = fact.rule == LimitRule::no_limit || fact.rule == LimitRule::walk;
  const bool changed = found.row->since != always;
  const bool doubt = (found.general && !says_nothing_of_law) ||
                     (changed && fact.confidence == LimitConfidence::inferred) ||
                     map_misses(found.row->since, day);
  return {found.row->value, found.row->unit, doubt ? LimitConfidence::check : fact.confidence};
}

}  // namespace loopwright::road
