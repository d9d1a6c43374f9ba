// Method: each crossing by the row that warns of it, its kind from the tags that the pass carries.
#include "card/crossings.hpp"

#include "card/speech.hpp"
#include "loopwright/say/crossing_words.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::card {
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
        {0, words.fill("pack.crossing", {{"row", std::to_string(row)},
                                         {"what", say::crossing_words(words, pass.tag)}})});
  }
  if (section.lines.empty()) return section;
  constexpr double seconds_per_minute = 60;
  const std::string wait = write_minutes(words, wish::shut_crossing_minutes * seconds_per_minute);
  section.lines.push_back({0, words.fill("pack.crossing_wait", {{"minutes", wait}})});
  return section;
}

}  // namespace loopwright::card
