#include "manual/completions.hpp"

#include <algorithm>

namespace loopwright::manual {

std::vector<command::Description> with_options(std::span<const command::Description> verbs) {
  std::vector<command::Description> all;
  for (const command::Description& verb : verbs)
    if (verb.deeds.empty()) {
      all.push_back(verb);
    } else {
      all.insert(all.end(), verb.deeds.begin(), verb.deeds.end());
    }
  return all;
}

std::string joined(std::span<const std::string> words) {
  std::string text;
  for (const std::string& word : words) text.append(text.empty() ? "" : " ").append(word);
  return text;
}

std::string in_one_line(std::string text) {
  std::ranges::replace(text, '\n', ' ');
  return text;
}

}  // namespace loopwright::manual
