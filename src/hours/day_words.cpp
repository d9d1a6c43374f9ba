// A word is one of the names when it is the short form, or a longer piece of the name's beginning:
// "mo", "mon", "monday"; "jan", "january"; "sept", "tues", "thurs" are pieces too.
#include "hours/day_words.hpp"

#include <array>
#include <span>

namespace loopwright::hours {
namespace {

constexpr std::array<std::string_view, 7> weekdays{"monday", "tuesday",  "wednesday", "thursday",
                                                   "friday", "saturday", "sunday"};
constexpr std::array<std::string_view, 12> months{"january",   "february", "march",    "april",
                                                  "may",       "june",     "july",     "august",
                                                  "september", "october",  "november", "december"};

std::optional<int> find(std::span<const std::string_view> names, std::string_view word,
                        std::size_t least) {
  if (word.size() < least) return std::nullopt;
  for (std::size_t k = 0; k < names.size(); ++k) {
    if (names[k].starts_with(word)) return static_cast<int>(k);
  }
  return std::nullopt;
}

}  // namespace

std::optional<int> weekday_of(const Token& token) {
  return token.kind == Token::Kind::word ? find(weekdays, token.text, 2) : std::nullopt;
}

std::optional<int> month_of(const Token& token) {
  const auto row = token.kind == Token::Kind::word ? find(months, token.text, 3) : std::nullopt;
  return row ? std::optional(*row + 1) : std::nullopt;
}

}  // namespace loopwright::hours
