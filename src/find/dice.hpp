// Chance that is the same everywhere: a seeded sequence (SplitMix64, Steele, Lea and Flood 2014).
// Why: the standard library's distributions differ between implementations; loops must not.
#pragma once

#include <cstddef>
#include <cstdint>

namespace loopwright::find {

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

 private:
  std::uint64_t state_;
};

}  // namespace loopwright::find
