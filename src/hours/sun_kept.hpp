// The sun of some hundred days of one place, once it was worked out.
//
//   if (!kept.of(day)) kept.keep(day, times);
//
// Rules: private to hours. A day pushes out that of so many days before or after it. May be asked and
// told from several threads at once: copies of a setting share it.
// Why: asked about days all over a year, a text with sunset in it was 50 times slower than one without.
#pragma once

#include <array>
#include <atomic>
#include <cstdint>
#include <optional>

#include "loopwright/hours/setting.hpp"

namespace loopwright::hours {

class SunKept {
 public:
  /// The times of a day since the epoch, which may be that there are none; empty: not kept.
  [[nodiscard]] std::optional<std::optional<SunTimes>> of(std::int64_t day) const;
  void keep(std::int64_t day, const std::optional<SunTimes>& times);

 private:
  static constexpr std::size_t most_days = 1024;
  /// A day and its four times in one word, so that none is ever read half written; 0: nothing.
  std::array<std::atomic<std::uint64_t>, most_days> words_{};
};

}  // namespace loopwright::hours
