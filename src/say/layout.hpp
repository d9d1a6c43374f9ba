// What kind of choice a junction without lights or ring puts to a driver.
#pragma once

#include "say/junction.hpp"

namespace loopwright::say {

enum class Shape : std::uint8_t {
  turns_off,    ///< another road lies plainly ahead, we leave it to a side
  slip_road,    ///< the same by a slip road
  small_road,   ///< ours goes on, a small one leaves it
  small_ahead,  ///< ours ends, a small one goes on ahead
  divides,      ///< another road or two lie about as near ahead
  goes_ahead,   ///< ours lies ahead, others nearly so
  leaves_bend,  ///< ours lies ahead, the bigger road driven bends away
  meets_main,   ///< ours lies ahead, over or along a bigger road to which we give way
  joins,        ///< our road ends in one that goes on in about the same direction
  bends,        ///< only a private road could be taken for ours, which bends
  main_bends,   ///< the road driven bends, a smaller one leaves it there
  at_shut,      ///< a road that may not be entered lies ahead
  ends,         ///< no road lies ahead
};

struct Layout {
  Shape shape = Shape::ends;
  road::Movement side = road::Movement::none;  ///< left or right; ahead: the middle of three that divide
  const Arm* ahead = nullptr;  ///< the other road that lies nearest ahead, if any; in the junction
};

/// Rules: the junction outlives the answer.
Layout layout_of(const road::Roads& roads, const Junction& junction);

/// Roads to the same side of the one ahead as the way taken.
std::vector<Arm> roads_beside(const Junction& junction, const Layout& layout);

/// One road ahead, one left, one right: what everyone calls crossroads.
bool is_plain_cross(const Junction& junction);

}  // namespace loopwright::say
