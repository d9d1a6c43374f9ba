// How much road lies round a piece of road.
//
//   const RoadDensity streets(roads, 1, [&](PieceId piece) { return is_street(piece); });
//   streets.m_per_km2(piece);
//
// Rules: private to mark. The roads must outlive it.
#pragma once

#include <functional>
#include <unordered_map>

#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

class RoadDensity {
 public:
  using Counts = std::function<bool(PieceId)>;
  /// Looks at the cells of some 200 m up to `reach` away from that of the piece, of roads that count.
  RoadDensity(const road::Roads& roads, int reach, const Counts& counts);
  /// Metres of road to the square kilometre round the middle of a piece.
  [[nodiscard]] double m_per_km2(PieceId piece) const;

 private:
  const road::Roads* roads_;
  std::int64_t reach_;
  std::unordered_map<std::int64_t, double> metres_by_cell_;
};

}  // namespace loopwright::mark
