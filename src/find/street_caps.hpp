// How often a quiet street may be driven in a lesson: the wish's cap, and what the ledger of other lessons
// leaves of the day and the month.
//
//   StreetCaps caps(roads, wish, ground_caps);   caps.most(piece);
//
// Rules: by piece of road. The ledger doesn't count within `ledger_free_m` of home and end: whoever lives there
// must get out; the door's own piece may be driven twice in any case, out and back. Main roads are free.
#pragma once

#include <array>

#include "find/caps.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

class StreetCaps {
 public:
  /// doors: the pieces of home and end.
  StreetCaps(const road::Roads& roads, const wish::Wish& wish, const Caps& caps,
             std::array<PieceId, 2> doors)
      : roads_(roads), wish_(wish), caps_(caps), doors_(doors) {}

  /// Rules: a quiet piece.
  [[nodiscard]] int most(PieceId piece) const;
  /// Shuts the pieces that may not be driven at all.
  void apply(reach::Costs& costs) const;

 private:
  [[nodiscard]] bool is_near_door(PieceId piece) const;
  const road::Roads& roads_;
  const wish::Wish& wish_;
  const Caps& caps_;
  std::array<PieceId, 2> doors_;
};

}  // namespace loopwright::find
