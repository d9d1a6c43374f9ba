// The setting in which an area's hours are read: its nation's bank holidays, its clock, the sun at a
// place in it, and the school terms of the instructor.
//
//   const hours::Setting setting = setting_of(roads.info(), wish.home, terms);
#pragma once

#include "loopwright/hours/setting.hpp"
#include "loopwright/road/roads.hpp"

namespace loopwright::road {

inline hours::Setting setting_of(const AreaInfo& info, std::optional<Point> place,
                                 hours::SchoolTerms terms = {}) {
  return {info.region.code, info.zone, place, std::move(terms)};
}

}  // namespace loopwright::road
