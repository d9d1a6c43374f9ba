// Up to thirty in words, which covers minutes past the hour and minutes of a shift.
#include "loopwright/base/plain_words.hpp"

#include <array>
#include <string_view>

namespace loopwright {

std::string number_word(int number) {
  constexpr std::array<std::string_view, 20> low{
      "no",       "one",     "two",     "three",     "four",     "five",    "six",
      "seven",    "eight",   "nine",    "ten",       "eleven",   "twelve",  "thirteen",
      "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"};
  if (number < 0 || number > 30) return std::to_string(number);
  if (number == 30) return "thirty";
  if (number < 20) return std::string(low[static_cast<std::size_t>(number)]);
  if (number == 20) return "twenty";
  return "twenty-" + std::string(low[static_cast<std::size_t>(number - 20)]);
}

std::string listed(const std::vector<std::string>& parts) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (i > 0) text += i + 1 == parts.size() ? " and " : ", ";
    text += parts[i];
  }
  return text;
}

}  // namespace loopwright
