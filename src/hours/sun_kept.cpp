// A word is, from its highest bits on: the day and one, 16 bits; dawn, sunrise, sunset and dusk, each
// 12 bits. Days that don't fit (after the year 2149, and before 1970) aren't kept.
#include "hours/sun_kept.hpp"

namespace loopwright::hours {
namespace {

constexpr int time_bits = 12;
constexpr std::uint64_t no_time = (1U << time_bits) - 1;
constexpr std::int64_t days_that_fit = 65'535;

std::uint64_t bits_of(const std::optional<int>& minute) {
  return minute ? static_cast<std::uint64_t>(*minute) & no_time : no_time;
}

/// The k-th time of a word, dawn the first.
std::optional<int> time_of(std::uint64_t word, int k) {
  const std::uint64_t bits = word >> (time_bits * (3 - k)) & no_time;
  return bits == no_time ? std::nullopt : std::optional(static_cast<int>(bits));
}

bool fits(std::int64_t day) {
  return day >= 0 && day < days_that_fit;
}

}  // namespace

std::optional<std::optional<SunTimes>> SunKept::of(std::int64_t day) const {
  if (!fits(day)) return std::nullopt;
  const auto row = static_cast<std::size_t>(day) % most_days;
  const std::uint64_t word = words_[row].load(std::memory_order_relaxed);
  if (word >> (4 * time_bits) != static_cast<std::uint64_t>(day) + 1) return std::nullopt;
  const auto sunrise = time_of(word, 1), sunset = time_of(word, 2);
  if (!sunrise || !sunset) return std::optional<SunTimes>();
  return SunTimes{time_of(word, 0), *sunrise, *sunset, time_of(word, 3)};
}

void SunKept::keep(std::int64_t day, const std::optional<SunTimes>& times) {
  if (!fits(day)) return;
  std::array<std::optional<int>, 4> minutes;  // none of them: the sun doesn't rise or set
  if (times) minutes = {times->dawn, times->sunrise, times->sunset, times->dusk};
  std::uint64_t word = static_cast<std::uint64_t>(day) + 1;
  for (const auto& minute : minutes) word = word << time_bits | bits_of(minute);
  words_[static_cast<std::size_t>(day) % most_days].store(word, std::memory_order_relaxed);
}

}  // namespace loopwright::hours
