// Which lines lie near a place, so that ten thousand of them needn't all be looked at.
//
//   LineGrid grid;  grid.put(0, county.lines[0].points);
//   for (const std::size_t line : grid.near(place, 30)) …
//
// Rules: names each line that comes within the reach, and may name others near by: measure. A line
// that got points elsewhere is put again; what was put stays.
// Why: squares of 100 m in a hash map, not a tree: streets cover a county evenly, lines change while
// they are joined, and a square that names too many lines does no harm.
#pragma once

#include <cstddef>
#include <span>
#include <unordered_map>
#include <vector>

#include "county/spot.hpp"

namespace loopwright::county {

class LineGrid {
 public:
  /// Enters a line's segments. `line` is any number that the caller knows it by.
  void put(std::size_t line, std::span<const Spot> points);
  /// Numbers of the lines that may come within the reach of a place; ascending, each once.
  [[nodiscard]] std::vector<std::size_t> near(Spot place, double reach_m) const;
  /// The same for a line: those that may come within the reach of any of its segments.
  [[nodiscard]] std::vector<std::size_t> near(std::span<const Spot> points, double reach_m) const;

 private:
  std::unordered_map<Spot, std::vector<std::size_t>, SpotHash> squares_;  // by number of the square
};

}  // namespace loopwright::county
