// A note of both directions names a piece twice, one stretch behind the other: it counts once.
#include "noted_humps.hpp"

#include "humps.hpp"
#include "note_spots.hpp"

namespace loopwright::mark {

void NotedHumps::count(const road::Roads& roads, const road::Note& note) {
  PieceId last;
  for (const NotedPart& part : parts_of(roads, note)) {
    const PieceId piece = part.stretch.piece();
    if (piece == last) continue;
    last = piece;
    const auto series = static_cast<std::size_t>(roads.piece(part.stretch).length_m / hump_every_m);
    humps_[piece] += note.line.size() > 1 ? series + 1 : 1;
  }
}

void NotedHumps::lay(Overlay& over) const {
  for (const auto& [piece, humps] : humps_) {
    if (!humps_slow(humps, over.base().pieces[piece.index()].length_m)) continue;
    over.piece(piece).flags |= road::piece_flag::humps;
  }
}

}  // namespace loopwright::mark
