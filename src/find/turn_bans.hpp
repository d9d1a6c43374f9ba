// Shuts moves from one stretch to the next in a search's costs, from the plain state and its copies.
#pragma once

#include "loopwright/reach/reach.hpp"

namespace loopwright::find {

class TurnBans {
 public:
  TurnBans(const road::Roads& roads, reach::Costs& costs);
  void shut(StretchId from, StretchId to);
  /// Every move on.
  void shut_all_from(StretchId from);
  /// Every move on but the one to `to`.
  void shut_all_but(StretchId from, StretchId to);

 private:
  template <class Wanted>
  void shut_if(StretchId from, Wanted wanted);
  const road::Roads& roads_;
  reach::Costs& costs_;
  reach::StretchCopies copies_;
};

}  // namespace loopwright::find
