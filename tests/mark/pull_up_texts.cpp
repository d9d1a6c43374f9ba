#include "mark/pull_up_texts.hpp"

#include <array>
#include <cmath>

namespace loopwright::test {
namespace {

std::string text_of(const road::Roads& roads, const road::PullUp& place) {
  namespace flag = road::pull_up_flag;
  constexpr std::array<std::pair<std::uint16_t, std::string_view>, 7> words{
      {{flag::hours, "hours"},
       {flag::residents, "residents"},
       {flag::fee, "fee"},
       {flag::parked, "parked"},
       {flag::lane, "lane"},
       {flag::hill, "hill"},
       {flag::lay_by, "lay-by"}}};
  std::string text =
      std::to_string(std::lround(place.from_m)) + "-" + std::to_string(std::lround(place.to_m));
  for (const auto& [bit, word] : words)
    if ((place.flags & bit) != 0) text.append(" ").append(word);
  if (place.hours.index() != 0) text.append(" ").append(roads.text(place.hours));
  return text;
}

}  // namespace

Texts pull_ups(const BuiltTown& town, std::string_view two_letters) {
  const road::Roads roads = town.roads();
  Texts texts;
  for (const road::PullUp& place : roads.pull_ups_of(town.stretch(two_letters)))
    texts.push_back(text_of(roads, place));
  return texts;
}

}  // namespace loopwright::test
