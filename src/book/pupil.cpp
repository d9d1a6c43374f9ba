#include "loopwright/book/pupil.hpp"

#include <algorithm>

namespace loopwright::book {
namespace {

constexpr std::array<std::string_view, all_ticks.size()> tick_names{"licence-seen", "eyesight-read",
                                                                    "theory-passed"};

}  // namespace

std::string_view name(Tick tick) {
  return tick_names.at(static_cast<std::size_t>(tick));
}

std::optional<Tick> parse_tick(std::string_view text) {
  for (const Tick tick : all_ticks)
    if (name(tick) == text) return tick;
  return std::nullopt;
}

bool is_code(std::string_view text) {
  const bool plain = std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-';
  });
  return plain && !text.empty() && text.front() != '-' && text.size() <= longest_code;
}

}  // namespace loopwright::book
