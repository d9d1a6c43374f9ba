// What is said on a drive over a drawn town.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "loopwright/say/say.hpp"
#include "support/honest_loop.hpp"

namespace loopwright::test {

/// A drawn town with so many metres to a character.
inline BuiltTown town_of(std::string_view drawing, double metres,
                         std::string_view region = "GB-ENG") {
  return built_town(draw_town(drawing, metres), region);
}

/// Rows of a drive over the nodes of the letters (honest_loop.hpp).
inline std::vector<say::Row> rows_of(const BuiltTown& town, std::string_view letters,
                                     std::initializer_list<std::string_view> wants = {}) {
  const wish::Answer answer = honest_answer(town, letters, wants);
  return say::say_loop(town.roads(), answer.loops[0]);
}

/// The same, only what is spoken.
inline std::vector<std::string> said(const BuiltTown& town, std::string_view letters,
                                     std::initializer_list<std::string_view> wants = {}) {
  std::vector<std::string> texts;
  for (const say::Row& row : rows_of(town, letters, wants)) texts.push_back(row.say);
  return texts;
}

/// What is spoken between setting off and pulling up.
inline std::vector<std::string> said_between(const BuiltTown& town, std::string_view letters,
                                             std::initializer_list<std::string_view> wants = {}) {
  std::vector<std::string> texts = said(town, letters, wants);
  texts.erase(texts.begin());
  texts.pop_back();
  return texts;
}

using Texts = std::vector<std::string>;

}  // namespace loopwright::test
