// Houses that have a number, found again beside roads.
//
//   for (const HouseBeside& house : houses.beside(line, {25, "Lantern Row"})) …
//
// Rules: private to mark. A house of another street's address isn't counted for a named street.
#pragma once

#include <span>
#include <string_view>
#include <vector>

#include "loopwright/mark/raw_map.hpp"

namespace loopwright::mark {

struct HouseBeside {
  double along_m = 0;
  bool left = false;  ///< of the line, as it runs
};

class Houses {
 public:
  explicit Houses(const RawMap& raw);

  struct Near {
    double within_m = 0;
    std::string_view street;  ///< empty: of any street
    double at_least = 0;      ///< where there are fewer, none need be told
  };
  /// By side, then along the line. Several numbers of one house count once.
  [[nodiscard]] std::vector<HouseBeside> beside(std::span<const Point> line, Near near) const;

 private:
  struct House {
    std::int64_t cell = 0;
    const RawFeature* feature = nullptr;
  };
  std::vector<House> houses_;  // by cell
};

}  // namespace loopwright::mark
