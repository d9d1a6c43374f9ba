// Method: the pieces of the row's way, in the way's order, are searched for the one that lies
// between the two positions and whose nodes have the ids named; driven against the way, the row's
// "from" is the piece's last node.
#include "loopwright/wish/resolve.hpp"

#include <algorithm>
#include <span>
#include <string>

#include "loopwright/base/error.hpp"
#include "loopwright/road/by_id.hpp"

namespace loopwright::wish {
namespace {

bool names_piece(const road::Roads& roads, const LoopStretch& row, const road::Piece& piece) {
  const std::int64_t a = roads.nodes[piece.a.index()].osm_id;
  const std::int64_t b = roads.nodes[piece.b.index()].osm_id;
  if (row.against) {
    return piece.from_index == row.to_index && piece.to_index == row.from_index && a == row.to &&
           b == row.from;
  }
  return piece.from_index == row.from_index && piece.to_index == row.to_index && a == row.from &&
         b == row.to;
}

StretchId stretch_among(const road::Roads& roads, std::span<const road::Piece> pieces,
                        const LoopStretch& row) {
  const auto found = std::find_if(pieces.begin(), pieces.end(), [&](const road::Piece& piece) {
    return names_piece(roads, row, piece);
  });
  if (found == pieces.end()) return {};
  return StretchId{roads.id_of(*found), row.against};
}

void resolve_rows(const road::Roads& roads, std::span<LoopStretch> rows, const std::string& where) {
  for (std::size_t i = 0; i < rows.size(); ++i) {
    LoopStretch& row = rows[i];
    const StretchId before = i == 0 ? StretchId{} : rows[i - 1].stretch;
    row.stretch = stretch_among(roads, road::pieces_of_next_way(roads, before, row.way), row);
    if (row.stretch.known()) continue;
    throw InputError(where + ", stretch " + std::to_string(i) + ": the area has no road on way " +
                     std::to_string(row.way) + " from node " + std::to_string(row.from) +
                     " to node " + std::to_string(row.to) + "; plan the loop again with this area");
  }
}

}  // namespace

StretchId find_stretch(const road::Roads& roads, const LoopStretch& row) {
  return stretch_among(roads, roads.pieces_of_way(row.way), row);
}

void resolve(const road::Roads& roads, Loop& loop) {
  const std::string where = "loop " + std::to_string(loop.id);
  resolve_rows(roads, loop.stretches, where);
  for (WayHome& way : loop.ways_home)
    resolve_rows(roads, way.stretches,
                 where + ", way home from stretch " + std::to_string(way.from_stretch));
}

}  // namespace loopwright::wish
