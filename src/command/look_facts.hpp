// What the map says of one road or one node, line by line, each fact with the tag behind it.
#pragma once

#include <iosfwd>

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

}  // namespace loopwright::command
