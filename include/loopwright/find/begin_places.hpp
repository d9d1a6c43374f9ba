// Places near a door, but not at it, at which a car can stand while learner and driver change seats.
//
//   for (const BeginPlace& place : places_to_begin(roads, ask, setting)) try_loop_from(place.at);
//
// Rules: a kerb that nothing mapped forbids for all of the stay, on a street that a learner may drive through, with a
// corner near it that has a name, so that it is found without a number of a house. The nearest to the door as the crow
// flies first.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "loopwright/base/point.hpp"
#include "loopwright/hours/setting.hpp"
#include "loopwright/lanes/stopping.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::find {

struct BeginAsk {
  Point door;
  double from_m = 0, to_m = 0;  ///< off the door
  double room_m = 0;            ///< of kerb, at least
  double corner_m = 0;          ///< to the corner, at most
  double apart_m = 0;           ///< from each other, at least
  std::size_t most = 1;
  lanes::Stay stay;
};

struct BeginPlace {
  Point at;
  double off_m = 0;                  ///< from the door, as the crow flies
  std::vector<StretchId> alongside;  ///< whose near kerbs are free there; one or two
  std::string street, corner;        ///< "Bell Yard", near the corner with "Ropewalk"
  std::string check;                 ///< what to look for
};

std::vector<BeginPlace> places_to_begin(const road::Roads& roads, const BeginAsk& ask,
                                        const hours::Setting& setting);

/// The same at a point that is named: the nearest such kerb within 150 m, however far from the door; none, or one.
std::vector<BeginPlace> place_to_begin_at(const road::Roads& roads, const BeginAsk& ask, Point at,
                                          const hours::Setting& setting);

/// True when a car that sets off along this stretch, or comes in along it, is beside a kerb of the place.
bool stands_beside(const BeginPlace& place, StretchId driven);

}  // namespace loopwright::find
