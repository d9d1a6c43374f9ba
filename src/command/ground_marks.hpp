// What of a planned drive is to be looked at on the ground, by what was seen of it before.
//
//   plan.to_check = letters_for(items, seen, day);                    // when a lesson is planned
//   const auto marks = ground_marks(items, {plan.to_check, seen, day}); // when it is printed
#pragma once

#include <iosfwd>
#include <span>
#include <vector>

#include "loopwright/base/instant.hpp"
#include "loopwright/book/seen.hpp"
#include "loopwright/card/ground.hpp"

namespace loopwright::command {

/// A letter for each that wasn't seen, or not lately, or is told otherwise now.
std::vector<book::LetteredFact> letters_for(std::span<const card::GroundItem> items,
                                            const book::SeenFacts& seen, Date day);

/// What a lesson's sheet says of each: its letter as it was planned, and when it was seen.
struct GroundKnown {
  std::span<const book::LetteredFact> to_check;
  const book::SeenFacts& seen;
  Date day;  ///< of the lesson
};
std::vector<wish::GroundMark> ground_marks(std::span<const card::GroundItem> items,
                                           const GroundKnown& known);

/// A line for each that was seen once and is to be looked at again: it is too long ago, or told otherwise; nothing when
/// there is none.
void tell_look_again(std::ostream& out, std::span<const card::GroundItem> items,
                     const book::SeenFacts& seen, Date day);

}  // namespace loopwright::command
