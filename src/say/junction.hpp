// A junction as the driver meets it: the way taken, and every other road there.
#pragma once

#include <string_view>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::say {

/// How a driver sees an arm: a road one could take; a road one may not enter (one-way against us);
/// a private or service road, which is counted as a road or not.
enum class Seen : std::uint8_t { road, no_entry, not_counted };

struct Arm {
  StretchId leaving;
  double angle_deg = 0;  ///< change of heading into it, positive to the right
  Seen seen = Seen::road;
};

struct Junction {
  StretchId entry, exit;
  double angle_deg = 0;  ///< change of heading of the way taken
  road::Control control = road::Control::none;
  std::vector<Arm> others;  ///< the way back left out
};

/// The junction between two stretches that follow each other.
Junction junction_between(const road::Roads& roads, StretchId entry, StretchId exit);
/// The junction of a place with nodes and inside pieces of its own (signals over two carriageways).
Junction junction_of_place(const road::Roads& roads, StretchId entry, StretchId exit,
                           PlaceId place);

/// A slip road or other link, by its class.
bool is_link(const road::Roads& roads, StretchId stretch);

bool is_service(const road::Roads& roads, StretchId stretch);

/// A service road that isn't private, nor a driveway: not counted among roads, but seen as a small one.
bool is_small_road(const road::Roads& roads, StretchId stretch);

/// Traffic may go this way, whether or not a lesson may.
bool may_enter(const road::Roads& roads, StretchId leaving);

/// Left, ahead or right by the change of heading: ahead is up to 45 degrees.
road::Movement movement_of(double angle_deg);

/// Roads (one could take them) that lie in the same sense as the way taken: both left, say.
std::vector<Arm> rivals_of(const Junction& junction);

/// A give way or stop line on the way taken.
bool gives_way(const Junction& junction);

/// True when a driver told nothing takes this way: it lies ahead, no other road nearly does, and
/// the road driven doesn't bend away from it.
bool goes_without_saying(const road::Roads& roads, const Junction& junction);

/// Some road leaves it nearly as the way taken does: who waits for a place where the road divides may take this for it.
bool looks_like_dividing(const Junction& junction);

/// A road of a bigger class than the way taken meets it.
bool meets_bigger(const road::Roads& roads, const Junction& junction);

/// True when the road driven goes on to a side, and the way taken is a smaller one.
bool bends_away(const road::Roads& roads, const Junction& junction);

/// True when the road driven, by its class, is the one taken and no other road is of that class.
bool follows_main_road(const road::Roads& roads, const Junction& junction);

}  // namespace loopwright::say
