// Somebody's own grounds with roads inside: schools, hospitals, car parks, petrol stations.
//
//   const Grounds grounds(raw);
//   grounds.holding(way);   // "inside amenity=school", or "" for a way that lies in none
//
// Rules: reads the features of the raw map, which must outlive it; const, shared by threads.
// Why: drives inside are mapped highway=service like any back lane, mostly without an access tag, and seem to be
// a short cut. No instructor takes a lesson through a school's yard or past the pumps.
#pragma once

#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::mark {

class Grounds {
 public:
  explicit Grounds(const RawMap& raw);
  /// What to say of a service road half of which, or 30 m, lies inside such grounds; empty for one that doesn't, and
  /// for every other class of road: a street through a campus is a street.
  [[nodiscard]] std::string holding(const RawWay& way) const;

 private:
  [[nodiscard]] std::vector<Point> line_of(const RawWay& way) const;

  const RawMap& raw_;
  std::unordered_map<std::uint64_t, std::vector<const RawFeature*>> at_;  // by grid cell
};

}  // namespace loopwright::mark
