// 1. Stretches are counted by the node they leave, then dealt out in ascending order.
// 2. A node is a dead end when exactly one end of a piece open to anyone lies there. Private
//    roads beyond don't count: for a learner the road ends at them. A road for access only does
//    count: it goes on, and nobody turns round at its mouth.
#include "adjacency.hpp"

#include <algorithm>

namespace loopwright::read {
namespace {

NodeId leaves(const road::Tables& tables, StretchId stretch) {
  const road::Piece& piece = tables.pieces[stretch.piece().index()];
  return stretch.against() ? piece.b : piece.a;
}

}  // namespace

void list_leaving(road::Tables& tables) {
  tables.node_first.assign(tables.nodes.size() + 1, 0);
  for (std::size_t s = 0; s < tables.stretches.size(); ++s) {
    ++tables.node_first[leaves(tables, StretchId{s}).index() + 1];
  }
  for (std::size_t n = 0; n < tables.nodes.size(); ++n) {
    tables.node_first[n + 1] += tables.node_first[n];
  }
  tables.node_out.resize(tables.stretches.size());
  std::vector<std::uint32_t> next(tables.node_first.begin(), tables.node_first.end() - 1);
  for (std::size_t s = 0; s < tables.stretches.size(); ++s) {
    tables.node_out[next[leaves(tables, StretchId{s}).index()]++] = StretchId{s};
  }
}

void find_dead_ends(mark::Draft& draft, const std::vector<bool>& cut) {
  const road::Roads roads = draft.roads();
  for (std::size_t n = 0; n < roads.nodes.size(); ++n) {
    road::Node& node = draft.tables.nodes[n];
    const auto leaving = roads.leaving(NodeId{n});
    const auto open = std::ranges::count_if(leaving, [&](StretchId s) {
      return (roads.piece(s).flags & road::piece_flag::no_access) == 0;
    });
    const bool wall = (node.flags & road::node_flag::wall) != 0;
    if (wall && open > 2) {
      draft.report.odd({node.osm_id, ObjectType::node}, "barrier stands on a junction",
                       "no road is driven across it");
    }
    if (wall || (open == 1 && !cut[n])) node.flags |= road::node_flag::dead_end;
  }
}

}  // namespace loopwright::read
