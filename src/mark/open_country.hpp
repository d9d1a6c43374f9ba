// Whether a piece of road lies in open country: little other road lies round it.
//
//   const OpenCountry country(roads);   country.holds(piece);
//
// Rules: private to mark. The roads must outlive it.
#pragma once

#include "road_density.hpp"

namespace loopwright::mark {

class OpenCountry {
 public:
  explicit OpenCountry(const road::Roads& roads);
  [[nodiscard]] bool holds(PieceId piece) const;

 private:
  RoadDensity all_roads_;
};

}  // namespace loopwright::mark
