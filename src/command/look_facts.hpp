// What the map says of a road, a node or all roundabouts, line by line, with the tags behind it.
#pragma once

#include <iosfwd>

#include "loopwright/hours/setting.hpp"
#include "loopwright/pace/pace.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::command {

/// The area, and the moment one looks at it (limits and bus lanes depend on it).
struct Here {
  road::Roads roads;
  pace::Pace pace;
  Instant start;
  hours::Setting setting;
};

void print_road(std::ostream& out, const Here& here, PieceId piece);
void print_node(std::ostream& out, const Here& here, NodeId node);
void print_kerb_ban(std::ostream& out, const Here& here, StretchId stretch);
void print_pull_ups(std::ostream& out, const Here& here, StretchId stretch);

/// Every roundabout and mini-roundabout: its arms, and the exits from each as the signs count.
void print_rings(std::ostream& out, const road::Roads& roads);

}  // namespace loopwright::command
