// What of a drive is to be looked at on the ground: the plates and signs of what has hours, limits that the map isn't sure
// of, and what it only lets us infer.
//
//   const std::vector<GroundItem> items = to_check(lesson);   // a letter each, on the sheet
//
// Rules: the loop is resolved; what has hours on all of the drive, all else only where the learner drives. In this
// order: what has hours, in driving order; limits, by
// street; what is inferred, by row. The same drive gives the same list.
// Why facts and not words: what was seen of a place counts for every other drive past it.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "loopwright/card/card.hpp"
#include "loopwright/wish/map_fact.hpp"

namespace loopwright::card {

struct GroundItem {
  std::string words;  ///< "Osk Road, bus lane on the left: in force Monday to Saturday, …"
  std::vector<std::size_t> rows;  ///< numbers, ascending, from 1; none: the instructor drives there
  std::vector<wish::MapFact> facts;  ///< each once; none: there is nothing to read
  /// How much it matters that it is looked at: 3 what has hours, and a limit in doubt; 2 where what is practised hangs on
  /// it; 1 all else, which the map lets one infer.
  int weight = 1;
};
std::vector<GroundItem> to_check(const Lesson& lesson);

}  // namespace loopwright::card
