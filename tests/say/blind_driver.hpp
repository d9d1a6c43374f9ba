// A driver who knows nothing but what is said, and sees the roads: where arms lead, how big they
// are, what may not be entered, lights, rings and crossings. Drives a card's rows and tells where
// he ends up.
//
//   const Driven driven = drive_blind(roads, first_stretch, rows, loop.stretches.size());
//   driven.stretches == those of the loop, driven.lost empty
//
// Rules: he has his own idea of "ahead", "second on the left" and "third exit", written without
// looking at room say; where a person could take the words two ways he is lost, and says why.
// He hears a row at its place to speak, counted from where the last one was done.
#pragma once

#include <string>
#include <vector>

#include "loopwright/say/say.hpp"

namespace loopwright::test {

struct Driven {
  std::vector<StretchId> stretches;
  std::vector<std::size_t> done;  ///< for each row done: at the end of which of these stretches
  std::string lost;               ///< why he couldn't go on; empty when he could
};

Driven drive_blind(const road::Roads& roads, StretchId first, const std::vector<say::Row>& rows,
                   std::size_t most_stretches);

}  // namespace loopwright::test
