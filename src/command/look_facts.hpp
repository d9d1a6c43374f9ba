// What the map says of one road or one node, line by line, each fact with the tag behind it.
#pragma once

#include <iosfwd>
#include <string>

#include "loopwright/pace/pace.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::command {

/// The area, and the moment one looks at it (limits and bus lanes depend on it).
struct Here {
  road::Roads roads;
  pace::Pace pace;
  Instant start;
};

void print_road(std::ostream& out, const Here& here, PieceId piece);
void print_node(std::ostream& out, const Here& here, NodeId node);

/// "Osk Road (A7904)", "unnamed road"
std::string road_name(const road::Roads& roads, const road::Piece& piece);
/// "roundabout:right, exit 3, hardness 3, certain: junction=roundabout (way/5)"
std::string chance_text(const road::Roads& roads, const road::Chance& chance);
/// "restriction=no_right_turn (relation/7): Osk Road, then not Mill Street"
std::string rule_text(const road::Roads& roads, const road::TurnRule& rule);

}  // namespace loopwright::command
