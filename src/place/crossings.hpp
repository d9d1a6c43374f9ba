// Where two streets cross.
#pragma once

#include <optional>
#include <vector>

#include "place/streets.hpp"

namespace loopwright::place {

struct Crossing {
  Point at;
  double apart_m = 0;  ///< 0 when they share a point; else how near they come
};

/// Where two streets meet, points within 150 m of each other taken as one (both halves of a dual
/// carriageway, a staggered junction). When they share no point: where they come nearest, if that
/// is within 60 m (a roundabout between them).
std::vector<Crossing> crossings_of(const road::Roads& roads, const Street& one,
                                   const Street& other);

}  // namespace loopwright::place
