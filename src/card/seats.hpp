// What a sheet says of the roads that the instructor drives, and of the kerbs at which the seats are changed.
#pragma once

#include <string>
#include <vector>

#include "card/sections.hpp"

namespace loopwright::card {

/// What stands across the sheet, and when it comes.
struct Band {
  double seconds = 0;  ///< since the start of the whole drive, likely
  std::string text;
};

/// "You drive to Mill Road, 6 min, by …", "CHANGE OVER in Mill Road about 15:06: …"; none when the learner sets off
/// from the door.
std::vector<Band> seats_before(const Subject& subject);
/// "CHANGE OVER in Mill Road about 15:46: …", "You drive back from Mill Road, 3 min, by …"; none when the learner drives
/// home.
std::vector<Band> seats_behind(const Subject& subject);

/// The kerbs of a learner's drive, as door_kerbs() has them; at which of them the seats are changed is set.
std::vector<lanes::DoorKerb> kerbs_of(const lanes::TimedDrive& own);

}  // namespace loopwright::card
