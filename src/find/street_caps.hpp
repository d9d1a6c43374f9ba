// How often a quiet street may be driven in a lesson: the wish's cap, and what the ledger of other lessons
// leaves of the day and the month.
//
//   StreetCaps caps(roads, wish, ground_caps);   caps.most(piece);
//
// Rules: by piece of road. The ledger doesn't count within `ledger_free_m` of home and end: whoever lives there
// must get out, and so there each may be driven twice in any case, out and back. Main roads are free.
#pragma once

#include "find/caps.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

class StreetCaps {
 public:
  StreetCaps(const road::Roads& roads, const wish::Wish& wish, const Caps& caps)
      : roads_(roads), wish_(wish), caps_(caps) {}

  /// Rules: a quiet piece.
  [[nodiscard]] int most(PieceId piece) const;
  /// Shuts the pieces that may not be driven at all.
  void apply(reach::Costs& costs) const;

 private:
  [[nodiscard]] bool is_near_door(PieceId piece) const;
  const road::Roads& roads_;
  const wish::Wish& wish_;
  const Caps& caps_;
};

}  // namespace loopwright::find
