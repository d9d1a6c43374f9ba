// Method: the tags that the pass carries (railway=level_crossing crossing:barrier=half …) are put into words;
// of one that is left out nothing is said, but for barriers, which one must know of.
#include "card/crossings.hpp"

#include <array>

#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::card {
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

std::string kind_words(const say::Words& words, std::string_view tags) {
  std::vector<std::string> parts;
  const std::string barrier = "crossing.barrier." + std::string(value_of(tags, "crossing:barrier"));
  parts.emplace_back(words.at(words.has(barrier) ? barrier : "crossing.barrier.unknown"));
  constexpr std::array<std::array<std::string_view, 2>, 4> others{
      {{"crossing:light", "crossing.light."},
       {"crossing:bell", "crossing.bell."},
       {"supervised", "crossing.supervised."},
       {"crossing:on_demand", "crossing.on_demand."}}};
  for (const auto& [key, words_key] : others) {
    const std::string full = std::string(words_key) + std::string(value_of(tags, key));
    if (words.has(full)) parts.emplace_back(words.at(full));
  }
  return joined(parts, ", ");
}

}  // namespace

Section crossings_of(const Subject& subject) {
  const say::Words& words = subject.words;
  Section section{std::string(words.at("pack.crossings")), {}};
  for (const wish::Pass& pass : subject.loop.passes) {
    if (pass.kind != road::Kind::level_crossing) continue;
    std::size_t row = row_of_stretch(subject, pass.first);
    for (std::size_t k = 0; k < subject.rows.size(); ++k)
      if (subject.rows[k].kind == say::RowKind::warn && subject.rows[k].stretch == pass.first)
        row = k + 1;
    section.lines.push_back(
        {0, words.fill("pack.crossing",
                       {{"row", std::to_string(row)}, {"what", kind_words(words, pass.tag)}})});
  }
  if (section.lines.empty()) return section;
  constexpr double seconds_per_minute = 60;
  const std::string wait = write_minutes(words, wish::shut_crossing_minutes * seconds_per_minute);
  section.lines.push_back({0, words.fill("pack.crossing_wait", {{"minutes", wait}})});
  return section;
}

}  // namespace loopwright::card
