// A node: its signs, the roads that leave it, the places it belongs to and the turn rules over it.
#include <algorithm>
#include <array>
#include <ostream>

#include "command/facts.hpp"
#include "command/look_facts.hpp"
#include "command/print.hpp"

namespace loopwright::command {
namespace {

std::string signs_of(const road::Node& node) {
  constexpr std::array<std::pair<std::uint32_t, std::string_view>, 9> words{{
      {road::node_flag::wall, "a barrier no car passes"},
      {road::node_flag::signals, "traffic signals"},
      {road::node_flag::signal_crossing, "crossing with signals"},
      {road::node_flag::zebra, "zebra"},
      {road::node_flag::level_crossing, "level crossing"},
      {road::node_flag::mini_roundabout, "mini-roundabout"},
      {road::node_flag::give_way, "give way"},
      {road::node_flag::stop, "stop"},
      {road::node_flag::dead_end, "dead end"},
  }};
  std::string text;
  for (const auto& [flag, word] : words) {
    if ((node.flags & flag) != 0) text += (text.empty() ? "" : ", ") + std::string(word);
  }
  return text.empty() ? "no sign mapped" : text;
}

void print_places(std::ostream& out, const road::Roads& roads, NodeId node) {
  for (std::size_t row = 0; row < roads.places.size(); ++row) {
    const PlaceId id{row};
    if (std::ranges::count(roads.nodes_of(id), node) == 0) continue;
    const road::Place& place = roads.places[row];
    out << "  part of: " << road::name(place.kind) << " (" << object(place.source) << ")";
    if (place.arms > 0) out << ", " << place.arms << " arms";
    if (place.diameter_m > 0) out << ", " << fixed(place.diameter_m, 0) << " m across";
    out << '\n';
    for (const road::Chance& chance : roads.chances) {
      if (chance.place != id) continue;
      out << "    from " << road_name(roads, roads.piece(chance.entry)) << ": "
          << chance_text(roads, chance) << '\n';
    }
  }
}

}  // namespace

void print_node(std::ostream& out, const Here& here, NodeId node_id) {
  const road::Roads& roads = here.roads;
  const road::Node& node = roads.nodes[node_id.index()];
  out << "node/" << node.osm_id << " at " << degrees(node.at) << ": " << signs_of(node) << '\n';
  for (const StretchId stretch : roads.leaving(node_id)) {
    const road::Piece& piece = roads.piece(stretch);
    out << "  road: " << road_name(roads, piece) << ", way/" << piece.way
        << (roads.drivable(stretch) ? "" : ", not to be entered from here") << '\n';
  }
  print_places(out, roads, node_id);
  for (const road::TurnRule& rule : roads.turn_rules) {
    const auto path = roads.path_of(rule);
    const bool over_it = std::any_of(path.begin(), path.end() - 1, [&](StretchId stretch) {
      return roads.to_node(stretch) == node_id;
    });
    if (over_it) out << "  " << rule_text(roads, rule) << '\n';
  }
}

}  // namespace loopwright::command
