#include "command/facts.hpp"

#include "command/print.hpp"

namespace loopwright::command {

std::string in_brackets(std::string_view text) {
  return text.empty() ? "" : " (" + std::string(text) + ")";
}

std::string road_name(const road::Roads& roads, const road::Piece& piece) {
  const std::string_view name = roads.text(piece.name), ref = roads.text(piece.ref);
  if (name.empty() && ref.empty()) return "unnamed road";
  if (name.empty()) return std::string(ref);
  return std::string(name) + in_brackets(ref);
}

std::string practice_name(const road::Chance& chance) {
  std::string text(road::name(chance.kind));
  if (chance.movement != road::Movement::none) {
    text += ":" + std::string(road::name(chance.movement));
  }
  if (chance.exit_number > 0) text += ", exit " + std::to_string(chance.exit_number);
  return text;
}

std::string chance_text(const road::Roads& roads, const road::Chance& chance) {
  return practice_name(chance) + ", hardness " + std::to_string(chance.hardness) + ", " +
         std::string(road::name(chance.confidence)) + ": " + std::string(roads.text(chance.tag)) +
         " (" + object(chance.source) + ")";
}

std::string rule_text(const road::Roads& roads, const road::TurnRule& rule) {
  const auto path = roads.path_of(rule);
  const std::string_view condition = roads.text(rule.condition);
  return std::string(roads.text(rule.text)) + ": from " +
         road_name(roads, roads.piece(path.front())) +
         (rule.only != 0 ? " only into " : " not into ") +
         road_name(roads, roads.piece(path.back())) +
         (condition.empty() ? "" : ", at some hours: " + std::string(condition)) + " (relation/" +
         std::to_string(rule.relation) + ")";
}

Point point_of(const road::Roads& roads, const road::Chance& chance) {
  if (!road::is_stretch_like(chance.kind)) return roads.places[chance.place.index()].at;
  return roads.nodes[roads.from_node(chance.entry).index()].at;
}

std::string street_of(const road::Roads& roads, const road::Chance& chance) {
  const road::Place& place = roads.places[chance.place.index()];
  const bool by_place = !road::is_stretch_like(chance.kind) && !roads.text(place.name).empty();
  return by_place ? std::string(roads.text(place.name))
                  : road_name(roads, roads.piece(chance.entry));
}

}  // namespace loopwright::command
