// Chance that is the same everywhere: a seeded sequence (SplitMix64, Steele, Lea and Flood 2014).
//
//   Dice dice(7);  dice.below(6);  // 0 to 5
//
// Rules: one seed gives one sequence, on every machine. Not for secrets.
// Why: the standard library's distributions differ between implementations; loops must not.
#pragma once

#include <cstddef>
#include <cstdint>

namespace loopwright {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  std::uint64_t next() {
    std::uint64_t z = (state_ += 0x9e3779b97f4a7c15ULL);
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9ULL;
    z = (z ^ (z >> 27)) * 0x94d049bb133111ebULL;
    return z ^ (z >> 31);
  }
  /// 0 to n - 1. Rules: n > 0.
  std::size_t below(std::size_t n) { return static_cast<std::size_t>(next() % n); }
  /// 0 to under 1000, for chances in thousandths.
  std::int64_t thousandths() { return static_cast<std::int64_t>(next() % 1000); }

  /// 0 up to, not including, 1, in steps of 2^-53.
  double share() { return static_cast<double>(next() >> 11U) * 0x1.0p-53; }

 private:
  std::uint64_t state_;
};

}  // namespace loopwright
