// A rule with hours in words: for each clause its value, then when it holds; then what else holds.
#include "loopwright/lanes/passage.hpp"

namespace loopwright::lanes {
namespace {

std::string value_words(road::Timed about, const std::string& value) {
  if (about == road::Timed::limit) return value;
  return value == "yes" ? "drivable" : "shut";
}

}  // namespace

std::string words_of(const road::Roads& roads, const road::TimedRule& rule) {
  const auto read = hours::read_conditional(roads.text(rule.base), roads.text(rule.text));
  std::string said;
  for (const hours::Conditional::Row& row : read.rows()) {
    said += said.empty() ? "" : "; ";
    said += value_words(rule.about, row.value) + " " + row.condition.words();
  }
  // Of a street that is else drivable, its shut hours say all.
  const bool plain = rule.about != road::Timed::limit && read.base() == "yes";
  if (plain || read.base().empty()) return said;
  return said + ", else " + value_words(rule.about, read.base());
}

std::string words_of(const road::Roads& roads, const road::TurnRule& rule) {
  const std::string text(roads.text(rule.text));
  const std::string_view when = roads.text(rule.condition);
  return when.empty() ? text : text + " " + hours::Timetable(when).words();
}

std::string street_words(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  const std::string_view name = roads.text(piece.name);
  if (!name.empty()) return std::string(name);
  const std::string_view ref = roads.text(piece.ref);
  return ref.empty() ? "way " + std::to_string(piece.way) : std::string(ref);
}

}  // namespace loopwright::lanes
