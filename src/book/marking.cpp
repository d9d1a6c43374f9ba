// Method: src/rules/marking.txt is read once; enums are named by tables in their order.
#include "loopwright/book/marking.hpp"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>
#include <vector>

#include "loopwright/base/table.hpp"

namespace loopwright::book {
namespace {

using Names = std::span<const std::string_view>;

constexpr std::array<std::string_view, 3> grades{"driving", "serious", "dangerous"};
constexpr std::array<std::string_view, 3> interventions{"words", "wheel", "pedals"};
constexpr std::array<std::string_view, 4> helps{"talked", "guided", "prompted", "alone"};
constexpr std::array<std::string_view, 11> weather_codes{
    "bright-dry", "bright-wet", "raining", "showers", "fog",  "dull-dry",
    "dull-wet",   "snow",       "ice",     "wind",    "other"};
constexpr std::array<std::string_view, 3> traffic_codes{"light", "usual", "heavy"};
constexpr std::array<std::string_view, 3> light_codes{"day", "dusk", "dark"};

template <class Enum>
std::optional<Enum> parsed(Names names, std::string_view text) {
  const auto found = std::find(names.begin(), names.end(), text);
  if (found == names.end()) return std::nullopt;
  return static_cast<Enum>(found - names.begin());
}

struct PassRule {
  Date since;
  Faults most;
};

struct Marking {
  std::vector<Heading> headings;
  std::vector<PassRule> rules;  ///< by day
};

PassRule read_rule(const TableRow& row) {
  const auto since = row.size() == 5 ? read_date(row[1]) : std::nullopt;
  if (!since) throw std::logic_error("marking.txt: a row 'passed' is odd");
  const auto whole = [&](std::size_t cell) { return static_cast<int>(number_cell(row, cell)); };
  return {*since, {whole(2), whole(3), whole(4)}};
}

const Marking& marking() {
  static const Marking all = [] {
    Marking read;
    for (const TableRow& row : read_table(rule_text("marking"))) {
      if (row[0] == "heading") read.headings.push_back({row.at(1), row.at(2)});
      if (row[0] == "passed") read.rules.push_back(read_rule(row));
    }
    if (read.rules.empty()) throw std::logic_error("marking.txt: no row 'passed'");
    return read;
  }();
  return all;
}

}  // namespace

std::string_view name(Grade grade) {
  return grades.at(static_cast<std::size_t>(grade));
}
std::optional<Grade> parse_grade(std::string_view text) {
  return parsed<Grade>(grades, text);
}
std::string_view name(Intervention how) {
  return interventions.at(static_cast<std::size_t>(how));
}
std::optional<Intervention> parse_intervention(std::string_view text) {
  return parsed<Intervention>(interventions, text);
}
std::string_view name(Help help) {
  return helps.at(static_cast<std::size_t>(help));
}
std::optional<Help> parse_help(std::string_view text) {
  return parsed<Help>(helps, text);
}

std::span<const Heading> headings() {
  return marking().headings;
}

const Heading* find_heading(std::string_view code) {
  for (const Heading& heading : headings())
    if (heading.code == code) return &heading;
  return nullptr;
}

bool is_passed(const Faults& faults, Date day) {
  const PassRule* rule = &marking().rules.front();
  for (const PassRule& later : marking().rules)
    if (later.since <= day) rule = &later;
  return faults.driving <= rule->most.driving && faults.serious <= rule->most.serious &&
         faults.dangerous <= rule->most.dangerous;
}

Names weathers() {
  return weather_codes;
}
Names traffics() {
  return traffic_codes;
}
Names lights() {
  return light_codes;
}

}  // namespace loopwright::book
