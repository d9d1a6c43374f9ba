// What a pupil has met on the road, by the record.
//
//   const Met met = met_by(lessons);   if (!has_met(met, {Kind::roundabout, Movement::right})) …
//
// Rules: pure; only lessons that were driven count, and of their passes only those that were. A special form counts
// for the general one (road::meets), not the other way. What a record doesn't say isn't met: the instructor knows
// better, and so it is told of how many lessons it is silent.
#pragma once

#include <map>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <utility>

#include "loopwright/base/region.hpp"
#include "loopwright/book/lesson.hpp"

namespace loopwright::book {

struct Met {
  std::set<Practice> practices;
  std::map<std::string, double, std::less<>> roads;    ///< likely minutes by sort (road/sort.hpp)
  std::map<std::pair<SpeedUnit, int>, double> limits;  ///< likely minutes; 0: no limit
  std::set<std::string, std::less<>> lights;           ///< codes of marking.hpp
  int lessons = 0;                                     ///< driven
  int without_roads = 0, without_limits = 0, without_light = 0;  ///< of them, which don't say it
};
Met met_by(std::span<const Lesson> lessons);

/// Of a kind that has movements, by this one.
bool has_met(const Met& met, const Practice& practice);
/// A sort of road (road/sort.hpp): driven for half a minute in all, or by a pass that is had on no other sort.
bool has_met_road(const Met& met, std::string_view sort);
/// A speed limit: driven for half a minute in all, or by a pass of a 20 zone or 20 limit. value 0: no limit.
bool has_met_limit(const Met& met, int value, SpeedUnit unit);
/// A code of book::lights().
bool has_met_light(const Met& met, std::string_view light);

}  // namespace loopwright::book
