// Method:
// 1. A row's way is looked for where the row before ends, else by its id; the piece by the two
//    positions in the way, and then its direction, its nodes and its name are compared.
// 2. Only the first and the last row may be driven in part, within the length of the piece.
// 3. Each row ends at the node at which the next begins.
#include <algorithm>

#include "loopwright/road/by_id.hpp"
#include "proof/checks.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

using road::Piece;
using wish::LoopStretch;

/// The piece between the two positions that a row names; null when there is none.
const Piece* piece_of(std::span<const Piece> pieces, const LoopStretch& row) {
  const auto [low, high] = std::minmax(row.from_index, row.to_index);
  for (const Piece& piece : pieces)
    if (piece.from_index == low && piece.to_index == high) return &piece;
  return nullptr;
}

std::string node_text(std::int64_t id) {
  return "node " + std::to_string(id);
}

std::string_view direction_text(bool against) {
  return against ? "against" : "along";
}

/// The row names a stretch of the area; none, with the false claim told, otherwise.
StretchId stretch_of(const Drive& drive, std::size_t i, Claims& claims) {
  const road::Roads& roads = drive.roads;
  const LoopStretch& row = drive.loop.stretches[i];
  const auto say = [&](const std::string& what) { return at_stretch(drive, i) + ": " + what; };
  const StretchId before = drive.stretches.empty() ? StretchId{} : drive.stretches.back();
  const auto pieces = road::pieces_of_next_way(roads, before, row.way);
  if (!claims.hold(!pieces.empty(), [&] { return say("the area has no such road"); })) return {};
  const Piece* piece = piece_of(pieces, row);
  if (!claims.hold(piece != nullptr, [&] {
        return say("the way has no road from position " + std::to_string(row.from_index) + " to " +
                   std::to_string(row.to_index) + " without a junction between");
      }))
    return {};
  const bool against = row.from_index > row.to_index;
  if (!claims.agree(at_stretch(drive, i), direction_text(row.against), direction_text(against)))
    return {};
  const StretchId stretch(PieceId{static_cast<std::size_t>(piece - roads.pieces.data())}, against);
  for (const bool from : {true, false}) {
    const NodeId node = from ? roads.from_node(stretch) : roads.to_node(stretch);
    const std::string position =
        ", position " + std::to_string(from ? row.from_index : row.to_index);
    if (!claims.agree(at_stretch(drive, i) + position, node_text(from ? row.from : row.to),
                      node_text(roads.nodes[node.index()].osm_id)))
      return {};
  }
  return stretch;
}

bool street_name_holds(const Drive& drive, std::size_t i, Claims& claims) {
  const Piece& piece = drive.roads.piece(drive.stretches[i]);
  const std::string_view name = drive.roads.text(piece.name);
  const std::string_view street = name.empty() ? drive.roads.text(piece.ref) : name;
  return claims.agree(at_stretch(drive, i), drive.loop.stretches[i].street, street);
}

}  // namespace

std::string at_loop(const Drive& drive) {
  return "loop " + std::to_string(drive.loop.id) + drive.of;
}

std::string at_stretch(const Drive& drive, std::size_t i) {
  const std::size_t row = i < drive.before ? i : i - drive.before;
  return at_loop(drive) + ", stretch " + std::to_string(row) + " (way " +
         std::to_string(drive.loop.stretches[i].way) + ")";
}

bool names_hold(Drive& drive, Claims& claims) {
  const auto& rows = drive.loop.stretches;
  if (!claims.hold(!rows.empty(), [&] { return at_loop(drive) + ": it has no stretches"; }))
    return false;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const StretchId stretch = stretch_of(drive, i, claims);
    if (!stretch.known()) return false;
    drive.stretches.push_back(stretch);
    if (!street_name_holds(drive, i, claims)) return false;
  }
  return true;
}

bool parts_hold(Drive& drive, Claims& claims) {
  const auto& rows = drive.loop.stretches;
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double length_m = drive.roads.piece(drive.stretches[i]).length_m;
    Part part{0, length_m};
    if (rows[i].partial_m) {
      const double from_m = (*rows[i].partial_m)[0], to_m = (*rows[i].partial_m)[1];
      // The file's digits may put a corner a hair beyond the end of its road.
      part = {std::min(from_m, length_m), std::min(to_m, length_m)};
      if (!claims.hold(from_m >= 0 && from_m <= to_m && to_m <= length_m + length_tolerance_m, [&] {
            return at_stretch(drive, i) + ": it has no part from " + tenths(from_m) + " to " +
                   tenths(to_m) + " m; it is " + tenths(length_m) + " m long";
          }))
        return false;
    }
    // The drive goes on at both ends of what lies between, so nothing may be skipped there.
    const bool skips_start = i > 0 && part.from_m > 0;
    const bool skips_end = i + 1 < rows.size() && part.to_m < length_m - length_tolerance_m;
    if (!claims.hold(!skips_start && !skips_end, [&] {
          return at_stretch(drive, i) + ": only " + tenths(part.from_m) + " to " +
                 tenths(part.to_m) + " m of " + tenths(length_m) +
                 " m are driven, in the middle of the drive";
        }))
      return false;
    drive.parts.push_back(part);
  }
  return true;
}

bool connection_holds(const Drive& drive, Claims& claims) {
  const auto& rows = drive.loop.stretches;
  for (std::size_t i = 0; i + 1 < rows.size(); ++i) {
    const NodeId end = drive.roads.to_node(drive.stretches[i]);
    const NodeId begin = drive.roads.from_node(drive.stretches[i + 1]);
    if (!claims.hold(end == begin, [&] {
          return at_stretch(drive, i + 1) + ": it begins at node " +
                 std::to_string(rows[i + 1].from) + ", but the stretch before ends at node " +
                 std::to_string(rows[i].to);
        }))
      return false;
  }
  return true;
}

}  // namespace loopwright::proof
