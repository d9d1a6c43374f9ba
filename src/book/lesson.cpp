#include "loopwright/book/lesson.hpp"

#include <array>
#include <cstddef>

namespace loopwright::book {
namespace {

constexpr std::array<std::string_view, 3> states{"planned", "driven", "not driven"};

}  // namespace

std::string_view name(LessonState state) {
  return states.at(static_cast<std::size_t>(state));
}

std::optional<LessonState> parse_lesson_state(std::string_view text) {
  for (std::size_t k = 0; k < states.size(); ++k)
    if (states.at(k) == text) return static_cast<LessonState>(k);
  return std::nullopt;
}

std::string words_of(const Practice& practice) {
  std::string words(road::name(practice.kind));
  if (practice.movement != road::Movement::none)
    words.append(" ").append(road::name(practice.movement));
  return words;
}

}  // namespace loopwright::book
