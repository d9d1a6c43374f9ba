// A picture as it is printed: dots that are dark or not.
#pragma once

#include <vector>

#include "loopwright/draw/picture.hpp"

namespace loopwright::test {

struct Dots {
  std::size_t width = 0, height = 0;
  std::vector<bool> dark;  ///< row by row

  [[nodiscard]] double share() const;  ///< of dark ones
};

Dots dark_dots(const draw::Picture& picture, double dots_per_inch);

/// Dots that are dark in one only, as a share of those that are dark in either. Rules: of one size.
double differing(const Dots& a, const Dots& b);

}  // namespace loopwright::test
