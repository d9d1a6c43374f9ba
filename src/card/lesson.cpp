// Method: a part is told before the row that leads into its first stretch. The learner drives the turn off the
// stretch of the place where the seats were changed, and the one into that where they are again.
#include "card/lesson.hpp"

#include <algorithm>

#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::card {
namespace {

std::string driven_words(const Subject& subject, std::string_view key, std::size_t stretch,
                         double seconds) {
  return subject.words.fill(key, {{"street", street_words(subject, stretch)},
                                  {"minutes", write_minutes(subject.words, seconds)}});
}

std::string goals_of(const Subject& subject, const std::vector<wish::Met>& all) {
  std::vector<std::string> goals;
  for (const wish::Met& met : all)
    goals.push_back(subject.words.fill("card.got", {{"want", write_asked(subject.words, met.want)},
                                                    {"n", std::to_string(met.got)}}));
  return joined(goals, ", ");
}

std::string part_words(const Subject& subject, std::size_t p) {
  const say::Words& words = subject.words;
  const wish::Part& part = subject.answer.wish.parts[p];
  const wish::LoopPart& driven = subject.loop.parts[p];
  std::vector<std::string> said{
      write_minutes(words, wish::driven_s(subject.loop, wish::rows_of(driven)))};
  if (part.roads != wish::RoadsAllowed::any)
    said.emplace_back(words.at("card.roads_" + std::string(wish::name(part.roads))));
  if (part.hardest)
    said.push_back(words.fill("card.part_hardest", {{"n", std::to_string(*part.hardest)}}));
  const std::string goals = goals_of(subject, driven.met);
  return words.fill(goals.empty() ? "card.part" : "card.part_goal",
                    {{"n", std::to_string(p + 1)}, {"what", joined(said, ", ")}, {"goal", goals}});
}

/// The stretch that a row leads into.
std::size_t leads_into(const Subject& subject, std::size_t row) {
  return row == 0 ? 0 : subject.rows[row].stretch + 1;
}

}  // namespace

bool is_instructors(const wish::Loop& loop, const say::Row& row) {
  if (!loop.practice) return false;
  const auto [first, last] = *loop.practice;
  return row.stretch + 1 < first || row.stretch > last;
}

std::vector<std::string> lines_before(const Subject& subject, std::size_t row) {
  std::vector<std::string> lines;
  const wish::RowSpan practice = wish::practice_of(subject.loop);
  const auto begins_here = [&](std::size_t stretch) {
    return leads_into(subject, row) >= stretch &&
           (row == 0 ? stretch == 0 : leads_into(subject, row - 1) < stretch);
  };
  if (practice.first > 0 && row == 0)
    lines.push_back(driven_words(subject, "card.drive_out", practice.first - 1,
                                 wish::begins_s(subject.loop, practice.first)));
  for (std::size_t p = 0; p < subject.loop.parts.size(); ++p)
    if (begins_here(subject.loop.parts[p].first)) lines.push_back(part_words(subject, p));
  return lines;
}

std::string line_behind(const Subject& subject) {
  const std::size_t behind = wish::practice_of(subject.loop).last + 1;
  if (behind >= subject.loop.stretches.size()) return {};
  return driven_words(subject, "card.drive_back", behind,
                      wish::begins_s(subject.loop, subject.loop.stretches.size()) -
                          wish::begins_s(subject.loop, behind));
}

std::vector<wish::Met> all_met(const wish::Loop& loop) {
  std::vector<wish::Met> all = loop.met;
  for (const wish::LoopPart& part : loop.parts)
    all.insert(all.end(), part.met.begin(), part.met.end());
  return all;
}

}  // namespace loopwright::card
