#include "mark/chance_texts.hpp"

#include <algorithm>
#include <stdexcept>

namespace loopwright::test {
namespace {

std::string letter_of(std::int64_t osm_id) {
  constexpr std::string_view letters =
      "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789";
  const auto at = std::ranges::find_if(letters, [osm_id](char c) { return osm_node(c) == osm_id; });
  return at == letters.end() ? "?" : std::string(1, *at);
}

std::string letter_of(const road::Roads& roads, NodeId node) {
  return letter_of(roads.nodes[node.index()].osm_id);
}

std::string object_text(const OsmObject& object) {
  if (object.type == ObjectType::node) return "n" + letter_of(object.id);
  return (object.type == ObjectType::way ? "w" : "r") + std::to_string(object.id);
}

std::string text_of(const road::Roads& roads, const road::Chance& chance) {
  std::string text = letter_of(roads, roads.from_node(chance.entry));
  for (const StretchId s : roads.path_of(chance)) text += letter_of(roads, roads.to_node(s));
  if (chance.movement != road::Movement::none) text.append(" ").append(name(chance.movement));
  if (chance.exit_number != 0) text += " " + std::to_string(chance.exit_number);
  return text;
}

Texts ordered(Texts texts) {
  std::ranges::sort(texts);
  return texts;
}

}  // namespace

Texts chances(const BuiltTown& town, road::Kind kind) {
  const road::Roads roads = town.roads();
  Texts texts;
  for (const road::Chance& chance : roads.chances) {
    if (chance.kind == kind) texts.push_back(text_of(roads, chance));
  }
  return ordered(std::move(texts));
}

Texts places(const BuiltTown& town, road::Kind kind) {
  Texts texts;
  for (const road::Place& place : town.built.tables.places) {
    if (place.kind == kind) texts.push_back(object_text(place.source));
  }
  return ordered(std::move(texts));
}

Texts run_facts(const BuiltTown& town, road::Kind kind) {
  const road::Roads roads = town.roads();
  Texts texts;
  for (const road::RunFact& fact : roads.run_facts) {
    if (fact.kind != kind) continue;
    texts.push_back(letter_of(roads, roads.from_node(fact.stretch)) +
                    letter_of(roads, roads.to_node(fact.stretch)) + " " +
                    std::string(name(fact.confidence)) + " " + std::string(roads.text(fact.tag)));
  }
  return ordered(std::move(texts));
}

Texts place_names(const BuiltTown& town, road::Kind kind) {
  const road::Roads roads = town.roads();
  Texts texts;
  for (const road::Place& place : roads.places) {
    if (place.kind == kind) texts.emplace_back(roads.text(place.name));
  }
  return ordered(std::move(texts));
}

Texts arms(const BuiltTown& town, road::Kind kind) {
  const road::Roads roads = town.roads();
  const auto place = std::ranges::find(roads.places, kind, &road::Place::kind);
  if (place == roads.places.end()) return {};
  Texts texts;
  for (const road::Arm& arm : roads.arms.subspan(place->arm_first, place->arms)) {
    std::string text = "in ";
    text += arm.in.known() ? letter_of(roads, roads.from_node(arm.in)) : "-";
    text += " out ";
    text += arm.out.known() ? letter_of(roads, roads.to_node(arm.out)) : "-";
    if (arm.is_public == 0) text += " (private)";
    texts.push_back(text);
  }
  return texts;
}

Texts reasons(const BuiltTown& town, road::Kind kind) {
  const road::Roads roads = town.roads();
  Texts texts;
  for (const road::Chance& chance : roads.chances) {
    if (chance.kind != kind) continue;
    texts.push_back(std::string(name(chance.confidence)) + " " +
                    std::string(roads.text(chance.tag)) + " " + object_text(chance.source));
  }
  texts = ordered(std::move(texts));
  texts.erase(std::unique(texts.begin(), texts.end()), texts.end());
  return texts;
}

Texts oddities(const BuiltTown& town) {
  Texts texts;
  for (const road::Oddity& odd : town.report.oddities()) {
    texts.push_back(object_text(odd.object) + " " + odd.what);
  }
  return ordered(std::move(texts));
}

std::string_view control(const BuiltTown& town, std::string_view three_letters) {
  const road::Roads roads = town.roads();
  const StretchId from = town.stretch(three_letters.substr(0, 2));
  const StretchId to = town.stretch(three_letters.substr(1, 2));
  for (const road::Turn& turn : roads.turns_from(StateId{from.index()})) {
    if (roads.stretch_of(turn.to) == to) return name(turn.control);
  }
  throw std::invalid_argument("no such turn: " + std::string(three_letters));
}

}  // namespace loopwright::test
