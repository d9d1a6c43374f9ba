// Places of the same form as one where a pass went wrong: the same kind and movement, and as alike as the map tells.
//
//   const Alike alike = alike_places(roads, wish, {.firsts = {chance}, .within_minutes = 25}, setting);
//
// Rules: what can't be told of either place (lanes that aren't mapped) is a difference unless it is so of both. Only
// what can be driven to, through and home from counts, as for `near`. Throws UsageError when home is off the roads.
#pragma once

#include <optional>
#include <set>
#include <vector>

#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// What one meets on a pass, beside its kind and movement.
struct PassForm {
  int arms = 0;         ///< roads that meet there; 0: not counted
  int ring_lanes = 0;   ///< most lanes on the ring; 0: not mapped, or no ring
  int entry_lanes = 0;  ///< on the way in; 0: not mapped
  int angle_deg = 0;    ///< from the way in to the way out, -180 to 180, positive to the right
  /// Kinds of junction met where the way out ends, when that is within 150 m (ours); empty: none so soon.
  std::set<road::Kind> next;
};
PassForm form_of(const road::Roads& roads, const road::Chance& chance);

enum class Differs : std::uint8_t { arms, lanes, angle, next };
/// In what two passes of a kind and movement differ. An angle does by more than 30 degrees (ours).
std::set<Differs> differences(const PassForm& a, const PassForm& b);

struct AlikePlace {
  ChanceId chance;
  double there_minutes = 0;  ///< likely, from home to where it begins
  PassForm form;
  std::set<Differs> differs;
};

struct AlikeAsk {
  std::vector<ChanceId>
      firsts;  ///< ways of passing the first place: the nearest from a street to a street, else the nearest
  double within_minutes = 0;
  std::size_t most = 3;
};

/// The others are passed from a street to a street, never by a service road.
struct Alike {
  std::optional<AlikePlace> first;  ///< none: none of firsts can be driven to and home from
  std::vector<AlikePlace>
      others;  ///< the most alike, the easiest first, then the most alike, then the nearest
};
Alike alike_places(const road::Roads& roads, const wish::Wish& wish, const AlikeAsk& ask,
                   const hours::Setting& setting);

}  // namespace loopwright::find
