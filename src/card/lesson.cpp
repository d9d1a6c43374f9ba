// Method: a part is told before the row that leads into its first stretch; the first before the first row.
#include "card/lesson.hpp"

#include <algorithm>

#include "card/sheet.hpp"
#include "card/speech.hpp"
#include "card/stops.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::card {
namespace {

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

double begins_at(const Subject& subject, std::size_t row) {
  return subject.loop.stretches[row == 0 ? 0 : subject.rows[row].stretch].arrive_s.likely;
}

/// The stretch that a row leads into.
std::size_t leads_into(const Subject& subject, std::size_t row) {
  return row == 0 ? 0 : subject.rows[row].stretch + 1;
}

}  // namespace

std::vector<Band> bands_before(const Subject& subject, std::size_t row) {
  std::vector<Band> bands;
  // The first part begins where the learner does.
  const std::size_t begin = wish::practice_of(subject.loop).first;
  const auto begins_here = [&](std::size_t stretch) {
    if (stretch <= begin) return row == 0;
    return row > 0 && leads_into(subject, row) >= stretch && leads_into(subject, row - 1) < stretch;
  };
  if (row == 0) bands = seats_before(subject);
  for (std::size_t p = 0; p < subject.loop.parts.size(); ++p)
    if (begins_here(subject.loop.parts[p].first))
      bands.push_back({begins_at(subject, row), part_words(subject, p)});
  return bands;
}

std::vector<wish::Met> all_met(const wish::Loop& loop) {
  std::vector<wish::Met> all = loop.met;
  for (const wish::LoopPart& part : loop.parts)
    all.insert(all.end(), part.met.begin(), part.met.end());
  return all;
}

}  // namespace loopwright::card
