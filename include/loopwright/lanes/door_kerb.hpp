// The kerbs at which a drive begins and ends, where the map forbids to wait there, at all times or by the
// hour; told for the minutes one is there.
//
//   for (const DoorKerb& kerb : door_kerbs({roads, loop, setting})) print(kerb_words(kerb));
//
// Rules: the loop is resolved. Who begins is there when its first stretch is reached,
// mostly at the start; who ends, from the low to the high time of
// the end. `forbidden` when the ban holds all through that time, `usable` when it never does in it, else
// `check`. A kerb without a mapped ban is not told of: nothing is known of its lines.
// Why it bars no drive: to set down a pupil and go is no waiting; but a talk at the end is.
// Source: Highway Code rule 238 (waiting and parking), rule 240 (stopping).
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "loopwright/lanes/met.hpp"
#include "loopwright/lanes/stopping.hpp"

namespace loopwright::lanes {

enum class DoorEnd : std::uint8_t { begin, end };

struct DoorKerb {
  DoorEnd which = DoorEnd::end;
  StretchId stretch;   ///< whose near kerb it is
  std::string street;  ///< "Chandler Street", "unnamed road"
  Instant likely;      ///< when one is likely there, on the clock of the area
  MayStop verdict = MayStop::check;
  bool no_stopping = false;  ///< nobody may even stop
  std::string ban;    ///< "no parking Monday to Saturday, half past eight till half past six"
  std::string state;  ///< "in force at 15:57", "check the plate (no school term dates …)"
  std::string map_text;
  OsmObject source;
  bool seats_change =
      false;  ///< a learner takes the wheel there, or gives it back; for the caller to set
};

/// "no parking at any time", "no stopping Monday to Friday, seven till ten".
std::string ban_words(const road::Roads& roads, const road::KerbBan& ban);

/// A ban at a kerb, for a time on the clock of the area; `likely` lies in it.
struct BanJudgement {
  MayStop verdict = MayStop::check;
  std::string state;
};
BanJudgement judge_ban(const road::Roads& roads, const road::KerbBan& ban, const Stay& stay,
                       const Instant& likely, const hours::Setting& setting);

/// Where it begins, then where it ends; each only when its kerb has a ban.
std::vector<DoorKerb> door_kerbs(const TimedDrive& drive);

/// "no parking Monday to Friday, eight till six; in force at 15:57: only set down here, talk elsewhere"
std::string kerb_words(const DoorKerb& kerb);

}  // namespace loopwright::lanes
