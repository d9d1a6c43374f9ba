// A rule with hours in words: for each clause its value, then when it holds; then what else holds.
#include "loopwright/lanes/passage.hpp"

#include <array>
#include <utility>

#include "loopwright/base/printable.hpp"

namespace loopwright::lanes {
namespace {

constexpr std::string_view switched_signs = "as the signs say";  // of room mark, limit_hours.cpp

std::string value_words(road::Timed about, const std::string& value) {
  if (about == road::Timed::limit) return limit_words(value);
  return value == "yes" ? "drivable" : "shut";
}

/// The demands of turn restrictions, as signs are spoken of. Source: OSM wiki Relation:restriction;
/// TSRGD 2016 schedule 3 for the signs.
constexpr std::array<std::pair<std::string_view, std::string_view>, 10> turns{
    {{"no_left_turn", "no left turn"},
     {"no_right_turn", "no right turn"},
     {"no_straight_on", "no driving ahead"},
     {"no_u_turn", "no U-turn"},
     {"no_entry", "no entry"},
     {"no_exit", "no exit"},
     {"only_left_turn", "left turn only"},
     {"only_right_turn", "right turn only"},
     {"only_straight_on", "ahead only"},
     {"only_u_turn", "U-turn only"}}};

/// Of a tag that names several demands of the kind, nothing tells which one the rule is.
std::string_view turn_words(std::string_view tag, bool only) {
  const std::string_view unsaid = only ? "one way only" : "no such turn";
  std::string_view said;
  for (const auto& [demand, words] : turns) {
    if (demand.starts_with("only_") != only || tag.find(demand) == std::string_view::npos) continue;
    if (!said.empty()) return unsaid;
    said = words;
  }
  return said.empty() ? unsaid : said;
}

}  // namespace

std::string limit_words(std::string_view value) {
  if (value.empty()) return "the usual limit";
  const bool number = value.find_first_not_of("0123456789.") == value.npos;
  if (number) return std::string(value) + " km/h";
  if (value == "none") return "no limit";
  const bool national = value.find(":nsl") != value.npos || value.find(":national") != value.npos;
  return national ? "the national limit" : std::string(value);
}

std::string words_of(const road::Roads& roads, const road::TimedRule& rule) {
  const auto read = hours::read_conditional(roads.text(rule.base), roads.text(rule.text));
  std::string said;
  for (const hours::Conditional::Row& row : read.rows()) {
    said += said.empty() ? "" : "; ";
    said += row.value == switched_signs
                ? "as the signs show, which are switched"
                : value_words(rule.about, row.value) + " " + row.condition.words();
  }
  // Of a street that is else drivable, its shut hours say all.
  const bool plain = rule.about != road::Timed::limit && read.base() == "yes";
  if (plain || read.base().empty()) return said;
  return said + ", else " + value_words(rule.about, read.base());
}

std::string words_of(const road::Roads& roads, const road::TurnRule& rule) {
  const std::string turn(turn_words(roads.text(rule.text), rule.only != 0));
  const std::string_view when = roads.text(rule.condition);
  if (when.empty()) return turn;
  const hours::Timetable times(when);
  if (times.readable()) return turn + " " + times.words();
  return turn + " at hours that can't be read (" + printable(when) + ")";
}

std::string street_words(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  const std::string_view name = roads.text(piece.name);
  if (!name.empty()) return std::string(name);
  const std::string_view ref = roads.text(piece.ref);
  return ref.empty() ? "way " + std::to_string(piece.way) : std::string(ref);
}

}  // namespace loopwright::lanes
