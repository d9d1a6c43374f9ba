// What part of an extract is read: all inside an outline, and what is to be known of its surroundings.
//
//   options.outline = std::make_shared<Outline>(std::vector{Ring{{a, b, c}}});   // build.hpp
//
// Rules: a point is in a ring when a line from it to the east crosses that an odd number of times, and inside the outline
// when it is in more areas than holes: areas that overlap are taken together. Inside the outline a lesson may drive. Whatever is seen from there (seen_beyond_m at least)
// is read too and never driven, so that each junction inside has all its arms and each road what lies beside it. What
// is farther off is left out. Pure.
// Why: cut at the outline itself, a crossroads would pass for a junction of three arms, and a bend for a dead end.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "loopwright/base/ring.hpp"

namespace loopwright::read {

/// The rule of room mark that looks farthest follows four roads of 400 m, and asks for the streets some 300 m round
/// each (limits_among_streets.cpp).
inline constexpr double seen_beyond_m = 2000;

class Outline {
 public:
  /// Throws InputError when it has no area, or a ring reaches half round the earth (the 180th meridian isn't crossed).
  explicit Outline(const std::vector<Ring>& rings);
  [[nodiscard]] bool contains(Point at) const;
  /// True of all that is inside, or not farther outside than seen_beyond_m, and of some that is a little farther.
  [[nodiscard]] bool sees(Point at) const;

 private:
  struct Edge {
    Point a, b;
    std::uint32_t ring = 0;
  };
  [[nodiscard]] std::int64_t row_of(std::int32_t lat_e7) const;
  [[nodiscard]] std::uint64_t cell_of(Point at) const;
  [[nodiscard]] std::size_t band_of(std::int32_t lat_e7) const;
  void lay_out_bands(const std::vector<Edge>& edges);
  void see_along(const Edge& edge);
  void see_around(Point at);

  std::int32_t south_e7_ = 0, north_e7_ = 0;
  std::int32_t cell_lon_e7_ = 0;      ///< as wide as a row is high, or wider
  std::int64_t band_e7_ = 1;          ///< height of a band of latitudes
  std::vector<std::uint32_t> first_;  ///< of each band, from the south, into edges_; and the end
  std::vector<Edge> edges_;           ///< of each band those that touch it, ring by ring
  std::vector<bool> hole_;            ///< by ring
  std::vector<std::uint64_t> cells_;  ///< those near an edge; ascending
};

}  // namespace loopwright::read
