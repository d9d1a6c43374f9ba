// What an independent stretch means, for the search, the proof and the card alike (DEVELOPERS.md,
// Independent driving).
//
//   direction_text({.angle_deg = -90, .street = "Mill Road"});   // "turn left into Mill Road"
//
// Rules: numbers are ours unless a source stands beside them. Where directions are needed is for the
// search and the proof to find, each by code of its own.
#pragma once

#include <cstddef>
#include <string>

#include "loopwright/wish/wish.hpp"

namespace loopwright::wish {

/// A way lies ahead up to this change of heading (DEVELOPERS.md, movements).
inline constexpr double ahead_deg = 45;
/// It is the road ahead when every other road bends off at least so much more.
inline constexpr double plain_by_deg = 30;
/// From here on a road leads back the way one came; a one-way road of the name and number one comes by,
/// the other half of a divided road, already from the second.
inline constexpr double back_deg = 165, other_half_deg = 120;
/// A list of more is more than a learner remembers. Common practice, no source.
inline constexpr std::size_t most_directions = 3;
/// An independent stretch shorter by no more than this is as long as asked for: what a clock rounds.
inline constexpr double independent_rounding_s = 0.5;
/// The first and the last seconds of a lesson: no independent driving there if it can be had elsewhere.
inline constexpr double settle_s = 300;

/// One direction as it is told in advance.
struct Direction {
  bool roundabout = false, mini = false;
  int exit = 0;              ///< as the signs count; 0: not known
  bool back = false;         ///< the way one came
  bool road_ends = false;    ///< no road lies ahead there
  double angle_deg = 0;      ///< change of heading, positive to the right
  std::string street = {};   ///< entered, as mapped; empty: it has no name or number
  bool same_street = false;  ///< as the one that is left
  bool met_before = false;   ///< a road of that name is met since the last direction
};

/// In words; empty when a learner who is told so in advance couldn't find the place.
std::string direction_text(const Direction& direction);

/// Likely driving before a row of a loop, stops left out; of the row behind the last all of it.
double driven_before_s(const Loop& loop, std::size_t row);
/// What driving the stretch is likely to take.
double seconds_of(const Loop& loop, const IndependentStretch& stretch);

}  // namespace loopwright::wish
