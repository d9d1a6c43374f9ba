// Method: drives over each quiet piece are counted. What other lessons drove stands in the wish, by way; it
// doesn't count near home and end, since whoever lives there must get out; and so there each may be driven
// twice in any case, out and back.
#include <algorithm>
#include <map>

#include "loopwright/base/point.hpp"
#include "proof/checks.hpp"

namespace loopwright::proof {
namespace {

/// How often this piece may be driven, and why not more.
struct Most {
  int times = 0;
  std::string_view why;
};

bool is_near_a_door(const Drive& drive, PieceId piece, const Caps& caps) {
  const auto near = [&](Point door) {
    return nearest_on_line(drive.roads.shape_of(piece), door).off_m <= caps.ledger_free_m;
  };
  return near(drive.wish.home) || near(drive.wish.end.value_or(drive.wish.home));
}

Most most_of(const Drive& drive, PieceId piece, const Caps& caps) {
  constexpr int out_and_back = 2;
  if (is_near_a_door(drive, piece, caps)) return {std::max(caps.quiet_passes, out_and_back), ""};
  const std::int64_t way = drive.roads.pieces[piece.index()].way;
  for (const wish::StreetUse& use : drive.wish.street_use) {
    if (use.way != way) continue;
    const int left = std::min(caps.day_passes - use.today, caps.month_passes - use.month);
    if (left < caps.quiet_passes) return {std::max(left, 0), ", all that the ledger leaves"};
  }
  return {caps.quiet_passes, ""};
}

}  // namespace

bool quiet_streets_hold(const Drive& drive, const Caps& caps, Claims& claims) {
  if (!drive.wish.through.empty()) return true;
  std::map<PieceId, int> times;
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    if (!is_driven_by_learner(drive, i)) continue;
    const road::Piece& piece = drive.roads.piece(drive.stretches[i]);
    if ((piece.flags & road::piece_flag::quiet) == 0) continue;
    const int driven = ++times[drive.stretches[i].piece()];
    const Most most = most_of(drive, drive.stretches[i].piece(), caps);
    if (!claims.hold(driven <= most.times, [&] {
          return at_stretch(drive, i) + ": this quiet street is driven " + std::to_string(driven) +
                 (driven == 1 ? " time, more than " : " times, more than ") +
                 std::to_string(most.times) + std::string(most.why);
        }))
      return false;
  }
  return true;
}

}  // namespace loopwright::proof
