// Rows of an area by their OSM ids. Rows themselves are in the order of a curve through the map, so that what lies
// together stands together; the number of rows by id is kept in their last field.
//
//   list_by_id(tables);   // once, when nodes and pieces are there; then
//   roads.find_node(1042), roads.pieces_of_way(7)
//
// Rules: Node::row_by_id of row i is the row of the i-th node by id; Piece::row_by_id of row i the first piece of
// the i-th way by id, none beyond the last way. The pieces of a way stand together, in its order.
// Why in the rows: it costs no room, and ids are asked for where a file names a road, not in a search.
#pragma once

#include "loopwright/road/roads.hpp"

namespace loopwright::road {

/// Writes the numbers. Rules: no OSM id has two nodes, and the pieces of a way stand together.
void list_by_id(Tables& tables);

/// All pieces of the way that a piece is of, in its order, without a search for its id.
std::span<const Piece> whole_way(std::span<const Piece> pieces, PieceId piece);

/// As Roads::pieces_of_way, for a way that a drive takes after a stretch (none at its start): it is looked for at
/// that stretch's end first, where it nearly always is, and where few pages of the area need be read.
std::span<const Piece> pieces_of_next_way(const Roads& roads, StretchId before, std::int64_t way);

}  // namespace loopwright::road
