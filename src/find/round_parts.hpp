// The roads about a door that a wish lets the learner drive, cut into parts in which every road can be come to from every
// other: in one of them a learner may drive round and round, and between two of them can't.
//
//   RoundParts parts(ground, radius_m);   parts.bears_ms(parts.of(stretch))
//
// Why: where a beginner can practise is a question of what hangs together. A long road that leads out of it and not back is of
// no use, nor is an estate whose only mouth is too hard.
#pragma once

#include <cstdint>
#include <vector>

#include "find/hunt.hpp"

namespace loopwright::find {

class RoundParts {
 public:
  static constexpr std::uint32_t none = 0xffffffffU;

  /// Of the pieces that may lie within so many metres of the wish's home.
  RoundParts(const Ground& ground, double radius_m);

  /// None for a stretch that may not be driven, leads nowhere and back, or lies outside.
  [[nodiscard]] std::uint32_t of(StretchId stretch) const;
  /// Likely milliseconds that can be driven in a part: its quiet streets as often as the caps let them be, each direction of
  /// another road twice.
  [[nodiscard]] std::int64_t bears_ms(std::uint32_t part) const { return bears_ms_[part]; }

 private:
  std::vector<StretchId> stretches_;  ///< ascending
  std::vector<std::uint32_t> parts_;  ///< of each of these
  std::vector<std::int64_t> bears_ms_;
};

}  // namespace loopwright::find
