// Whether a piece of road lies in open country: little other road lies round it.
//
//   const OpenCountry country(roads);   country.holds(piece);
//
// Rules: private to mark.
#pragma once

#include <unordered_map>

#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

class OpenCountry {
 public:
  explicit OpenCountry(const road::Roads& roads);
  [[nodiscard]] bool holds(PieceId piece) const;

 private:
  const road::Roads* roads_;
  std::unordered_map<std::int64_t, double> metres_by_cell_;
};

}  // namespace loopwright::mark
