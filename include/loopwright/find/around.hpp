// What there is around a door to be met at all: each form of junction and road, each limit, each sort of road, with the
// nearest place or two of it.
//
//   const Around there = around(roads, wish, 25, setting);   there.forms[0].places[0].there_minutes;
//
// Rules: only what can be driven to, through and home from, without what the wish avoids; what the
// clock may shut in that time isn't driven. Manoeuvres are none of it. Deterministic. Throws UsageError when home is off
// the roads.
#pragma once

#include <string_view>
#include <vector>

#include "loopwright/hours/setting.hpp"
#include "loopwright/road/limit.hpp"
#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

struct MeetingPlace {
  StretchId at;              ///< the chance's entry, or the road itself
  ChanceId chance;           ///< none: a road
  double there_minutes = 0;  ///< likely, to where it begins
  /// 1 to 5; of a road the hardest of what is mapped along that piece of it, 1 when nothing is.
  int hardness = 1;
};
/// One or two: the easiest (of several the nearest), then the nearest of the others.
using MeetingPlaces = std::vector<MeetingPlace>;

struct FormAround {
  road::Kind kind = road::Kind::roundabout;
  road::Movement movement = road::Movement::none;
  MeetingPlaces places;
};
/// At all hours; limits by the hour are not looked at.
struct LimitAround {
  /// On the day of the wish. Sure: it is at each of the places; else it is so nowhere around.
  road::LimitOnDay limit;
  MeetingPlaces places;
};
struct SortAround {
  std::string_view sort;  ///< road/sort.hpp
  MeetingPlaces places;
};

/// Each list: the easiest first, then the nearest. A road counts where a way has 100 m of it that are driven that way.
struct Around {
  std::vector<FormAround> forms;
  std::vector<LimitAround> limits;
  std::vector<SortAround> sorts;
};

Around around(const road::Roads& roads, const wish::Wish& wish, double within_minutes,
              const hours::Setting& setting);

}  // namespace loopwright::find
