// Which of some pieces of road hang together.
//
// Rules: private to mark. Pieces are joined where they share a node.
#pragma once

#include <functional>
#include <span>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

using PieceGroup = std::vector<PieceId>;

/// Groups in order of their first piece, pieces ascending. Rules: `pieces` ascending, each once.
std::vector<PieceGroup> connected_groups(const road::Roads& roads, std::span<const PieceId> pieces);

/// Whether two of the pieces hang together at a node they share, which both stretches leave.
using HangTogether = std::function<bool(StretchId, StretchId)>;

/// The same of pieces that also hang together as told.
std::vector<PieceGroup> connected_groups(const road::Roads& roads, std::span<const PieceId> pieces,
                                         const HangTogether& hang_together);

/// Metres of road in a group, each piece once.
double length_of_group(const road::Roads& roads, std::span<const PieceId> group);

}  // namespace loopwright::mark
