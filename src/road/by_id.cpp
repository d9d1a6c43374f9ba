// Method: ids beside rows, sorted; looked up by halving, through the rows that the numbers lead to.
#include "loopwright/road/by_id.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace loopwright::road {
namespace {

using IdAndRow = std::pair<std::int64_t, std::uint32_t>;

template <class Row>
void number(std::vector<Row>& rows, std::vector<IdAndRow> by_id) {
  std::ranges::sort(by_id);
  for (Row& row : rows) row.row_by_id = PieceId::none_value;
  for (std::size_t i = 0; i < by_id.size(); ++i) rows[i].row_by_id = by_id[i].second;
}

/// The row with an id, by the numbers in the rows; none when there is none.
template <class Row>
std::uint32_t row_with(std::span<const Row> rows, std::int64_t id, std::int64_t Row::*id_of) {
  std::size_t from = 0, to = rows.size();
  while (from < to) {
    const std::size_t middle = from + (to - from) / 2;
    const std::uint32_t row = rows[middle].row_by_id;
    if (row < rows.size() && rows[row].*id_of < id) {
      from = middle + 1;
    } else {
      to = middle;
    }
  }
  if (from == rows.size()) return PieceId::none_value;
  const std::uint32_t row = rows[from].row_by_id;
  return row < rows.size() && rows[row].*id_of == id ? row : PieceId::none_value;
}

}  // namespace

void list_by_id(Tables& tables) {
  std::vector<IdAndRow> nodes, ways;
  nodes.reserve(tables.nodes.size());
  for (std::size_t n = 0; n < tables.nodes.size(); ++n)
    nodes.emplace_back(tables.nodes[n].osm_id, static_cast<std::uint32_t>(n));
  for (std::size_t p = 0; p < tables.pieces.size(); ++p)
    if (p == 0 || tables.pieces[p].way != tables.pieces[p - 1].way)
      ways.emplace_back(tables.pieces[p].way, static_cast<std::uint32_t>(p));
  number(tables.nodes, std::move(nodes));
  number(tables.pieces, std::move(ways));
}

std::span<const Piece> whole_way(std::span<const Piece> pieces, PieceId piece) {
  const std::int64_t way = pieces[piece.index()].way;
  std::size_t first = piece.index(), end = first + 1;
  while (first > 0 && pieces[first - 1].way == way) --first;
  while (end < pieces.size() && pieces[end].way == way) ++end;
  return pieces.subspan(first, end - first);
}

std::span<const Piece> pieces_of_next_way(const Roads& roads, StretchId before, std::int64_t way) {
  if (before.known())
    for (const StretchId next : roads.leaving(roads.to_node(before)))
      if (roads.piece(next).way == way) return whole_way(roads.pieces, next.piece());
  return roads.pieces_of_way(way);
}

std::span<const Piece> Roads::pieces_of_way(std::int64_t way) const {
  const std::uint32_t first = row_with(pieces, way, &Piece::way);
  return first == PieceId::none_value ? std::span<const Piece>()
                                      : whole_way(pieces, PieceId{first});
}

NodeId Roads::find_node(std::int64_t osm_id) const {
  NodeId found;
  found.value = row_with(nodes, osm_id, &Node::osm_id);
  return found;
}

}  // namespace loopwright::road
