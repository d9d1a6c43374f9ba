// Drives for practice at home: short ones from a kerb near the door on which nothing is new to the pupil.
//
//   HomeDrives found = find_home_drives(ground, ask);   if (!found.answer.loops.empty()) …
//
// Rules: every pass of a loop is among what the pupil does alone, no limit is faster than those met, and the car is
// turned round nowhere; all of it is looked at again when a loop is found, whatever the search was asked for.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "command/ground.hpp"
#include "loopwright/book/at_home.hpp"
#include "loopwright/book/met.hpp"
#include "loopwright/find/begin_places.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::command {

struct HomeAsk {
  Point door;
  std::optional<Point> at;  ///< where it begins; none: to be looked for
  Instant start;
  int minutes = 20;
  int level = 3;                         ///< for times
  double pace = wish::usual_pace;        ///< the same
  std::vector<book::Practice> alone;     ///< not empty
  std::vector<wish::StreetUse> streets;  ///< the ledger's
  book::Met met;
};

struct HomeDrives {
  find::BeginPlace place;
  wish::Answer answer;  ///< its loops, at most so many as at_home.txt says; none: nothing was found
  bool any_place = false;  ///< there was a place to begin at
};

/// Looks from the nearest places first, for as many minutes as asked, then for fewer. area: the file, for the answer.
HomeDrives find_home_drives(Ground& ground, const HomeAsk& ask, const std::string& area);

/// What of a loop the pupil doesn't do alone, each once.
std::vector<book::Practice> new_on(const wish::Loop& loop,
                                   const std::vector<book::Practice>& alone);

}  // namespace loopwright::command
