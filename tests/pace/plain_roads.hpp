// Roads with nothing but what times depend on: pieces without nodes or shape, driven along.
//
//   PlainRoads town;  const StretchId main_road = town.add({.road_class = RoadClass::primary});
//   Pace pace(town.roads(), {.level = 5}, saturday);
#pragma once

#include "loopwright/pace/pace.hpp"

namespace loopwright::test {

/// Saturday 28 November 2026, 15:00, off peak.
inline constexpr Instant saturday{1795878000, 0};
/// Friday 27 November 2026, 08:00, in the morning peak.
inline constexpr Instant friday_morning{1795766400, 0};

inline constexpr double mph = 0.44704;  // exact: 1609.344 m / 3600 s
inline constexpr double mile_m = 1609.344;

inline road::LimitFact signed_limit(int miles_per_hour) {
  road::LimitFact fact;
  fact.rule = road::LimitRule::signed_value;
  fact.unit = SpeedUnit::mph;
  fact.value = static_cast<std::uint16_t>(miles_per_hour);
  return fact;
}

struct PlainRoad {
  road::RoadClass road_class = road::RoadClass::residential;
  double length_m = 1000;
  road::LimitFact limit = signed_limit(30);
  std::uint32_t flags = 0;
  float usable_width_m = 0;
  std::uint8_t lanes = 0;
  std::uint64_t runs = 0;
};

class PlainRoads {
 public:
  StretchId add(const PlainRoad& plain) {
    road::Piece piece;
    piece.road_class = plain.road_class;
    piece.length_m = plain.length_m;
    piece.flags = plain.flags;
    piece.usable_width_m = plain.usable_width_m;
    piece.lanes = plain.lanes;
    tables_.pieces.push_back(piece);
    road::Stretch stretch;
    stretch.limit = plain.limit;
    stretch.runs = plain.runs;
    tables_.stretches.insert(tables_.stretches.end(), 2, stretch);
    return {PieceId{tables_.pieces.size() - 1}, false};
  }
  [[nodiscard]] road::Roads roads(std::string_view region = "GB-ENG") const {
    road::AreaInfo info;
    info.region = find_region(region).value();
    info.map_timestamp = "2026-11-01T00:00:00Z";
    return road::view_of(tables_, info);
  }

 private:
  road::Tables tables_;
};

}  // namespace loopwright::test
