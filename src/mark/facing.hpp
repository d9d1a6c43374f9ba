// Which of the drivers who pass a sign or a light it is meant for.
#pragma once

#include <string>
#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

enum class Sign : std::uint8_t { light, give_way, stop, advanced_stop };

/// True when the sign at the end of a stretch faces whoever arrives by it. By its direction tag;
/// without one a light at a junction faces all, and a sign beside the road faces the nearer
/// junction. Rules: the node at the stretch's end has the sign.
bool faces(const Draft& draft, const road::Roads& roads, StretchId arriving, Sign sign);

/// The tag that makes a node a light: "highway=traffic_signals", "crossing_ref=puffin" …
std::string light_tag(const Tags& tags);

/// Nodes met on the way to a junction with one of the flags, where nothing joins in between:
/// nearest to the junction first, each with the stretch that arrives at it.
struct Met {
  NodeId node;
  StretchId arriving;
};
std::vector<Met> met_before(const road::Roads& roads, StretchId away_from_junction, double limit_m,
                            std::uint32_t flags);

}  // namespace loopwright::mark
