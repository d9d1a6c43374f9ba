// Method: of a tag that is left out nothing is said, but for barriers, which one must know of.
#include "loopwright/say/crossing_words.hpp"

#include <array>

namespace loopwright::say {
namespace {

/// Value of a key in "a=b c=d"; empty when it isn't there.
std::string_view value_of(std::string_view tags, std::string_view key) {
  for (std::size_t at = 0; at < tags.size();) {
    const std::size_t end = std::min(tags.find(' ', at), tags.size());
    const std::string_view tag = tags.substr(at, end - at);
    if (tag.starts_with(key) && tag.substr(key.size()).starts_with('='))
      return tag.substr(key.size() + 1);
    at = end + 1;
  }
  return {};
}

}  // namespace

std::string crossing_words(const Words& words, std::string_view tags) {
  const std::string barrier = "crossing.barrier." + std::string(value_of(tags, "crossing:barrier"));
  std::string said(words.at(words.has(barrier) ? barrier : "crossing.barrier.unknown"));
  constexpr std::array<std::array<std::string_view, 2>, 4> others{
      {{"crossing:light", "crossing.light."},
       {"crossing:bell", "crossing.bell."},
       {"supervised", "crossing.supervised."},
       {"crossing:on_demand", "crossing.on_demand."}}};
  for (const auto& [key, words_key] : others) {
    const std::string full = std::string(words_key) + std::string(value_of(tags, key));
    if (words.has(full)) said.append(", ").append(words.at(full));
  }
  return said;
}

}  // namespace loopwright::say
