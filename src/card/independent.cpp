// Method: a row belongs to the stretch when the end of its road lies in it; the block begins before the
// first of these rows and ends before the first behind them.
#include "card/independent.hpp"

#include <algorithm>

#include "card/drive_line.hpp"
#include "card/stops.hpp"
#include "loopwright/wish/independent.hpp"

namespace loopwright::card {
namespace {

/// The row before which a sheet speaks of what begins where this stretch does.
std::size_t row_before(const Subject& subject, std::size_t stretch) {
  const auto& rows = subject.rows;
  std::size_t k = std::min<std::size_t>(1, rows.size());  // the first row is only to set off
  while (k < rows.size() && rows[k].stretch < stretch) ++k;
  return k;
}

bool is_number(const Subject& subject, const wish::IndependentStretch& stretch) {
  const StretchId first = subject.loop.stretches[stretch.first].stretch;
  const std::string_view ref = subject.roads.text(subject.roads.piece(first).ref);
  return ref.starts_with(stretch.follow);
}

std::vector<std::string> way_words(const Subject& subject,
                                   const wish::IndependentStretch& stretch) {
  const say::Words& words = subject.words;
  std::vector<std::string> lines;
  if (!stretch.follow.empty()) {
    const std::string name = say::spoken_name(stretch.follow);
    lines.push_back(words.fill("card.independent_follow", {{"name", name}}));
    if (is_number(subject, stretch)) lines.emplace_back(words.at("card.independent_number"));
    return lines;
  }
  if (stretch.directions.empty()) lines.emplace_back(words.at("card.independent_ahead"));
  for (const std::string& direction : stretch.directions) {
    const bool first = &direction == &stretch.directions.front();
    const std::string_view key = first ? "card.independent_told" : "card.independent_more";
    lines.push_back(words.fill(key, {{"direction", say::spoken_name(direction)}}));
  }
  return lines;
}

Notice beginning(const Subject& subject, const wish::IndependentStretch& stretch) {
  const say::Words& words = subject.words;
  const auto minutes = static_cast<int>(wish::seconds_of(subject.loop, stretch) / 60);
  const int asked = subject.answer.wish.independent_minutes;
  Notice notice{
      NoticeKind::begins,
      words.fill("card.independent_begins", {{"minutes", std::to_string(minutes)},
                                             {"street", street_words(subject, stretch.first)}}),
      {}};
  if (minutes < asked)
    notice.lines.push_back(
        words.fill("card.independent_short", {{"asked", std::to_string(asked)}}));
  for (std::string& line : way_words(subject, stretch)) notice.lines.push_back(std::move(line));
  notice.lines.emplace_back(words.at("card.independent_rows"));
  for (std::string& line : notice.lines) line = say::capitalised(std::move(line));
  return notice;
}

Notice ending(const Subject& subject, const wish::IndependentStretch& stretch) {
  return {NoticeKind::ends,
          subject.words.fill("card.independent_ends",
                             {{"street", street_words(subject, stretch.last)}}),
          {}};
}

}  // namespace

std::vector<Notice> independent_before(const Subject& subject, std::size_t k) {
  std::vector<Notice> notices;
  for (const wish::IndependentStretch& stretch : subject.loop.independent) {
    if (row_before(subject, stretch.first) == k) notices.push_back(beginning(subject, stretch));
    if (row_before(subject, stretch.last) == k) notices.push_back(ending(subject, stretch));
  }
  return notices;
}

std::vector<file::GeoFeature> independent_features(const road::Roads& roads,
                                                   const wish::Loop& loop) {
  std::vector<file::GeoFeature> features;
  for (const wish::IndependentStretch& stretch : loop.independent) {
    file::GeoFeature feature;
    feature.line = line_along(roads, loop, std::max<std::size_t>(stretch.first, 1),
                              std::min(stretch.last + 1, loop.stretches.size() - 1));
    if (feature.line.size() < 2) continue;
    feature.values = {{"what", std::string("independent")}, {"follow", stretch.follow}};
    for (std::size_t n = 0; n < stretch.directions.size(); ++n)
      feature.values.emplace_back("direction" + std::to_string(n + 1), stretch.directions[n]);
    features.push_back(std::move(feature));
  }
  return features;
}

}  // namespace loopwright::card
