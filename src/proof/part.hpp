// Parts of a line of road, and how much of it several of them cover together.
#pragma once

#include <algorithm>
#include <vector>

namespace loopwright::proof {

/// From one metre to another, from where the road begins (or is entered).
struct Part {
  double from_m = 0, to_m = 0;
  [[nodiscard]] double metres() const { return to_m - from_m; }
};

/// Metres that lie in at least one of the parts.
inline double covered_m(std::vector<Part> parts) {
  std::sort(parts.begin(), parts.end(),
            [](const Part& a, const Part& b) { return a.from_m < b.from_m; });
  double sum = 0, end_m = 0;
  for (const Part& part : parts) {
    sum += std::max(0.0, part.to_m - std::max(part.from_m, end_m));
    end_m = std::max(end_m, part.to_m);
  }
  return sum;
}

}  // namespace loopwright::proof
