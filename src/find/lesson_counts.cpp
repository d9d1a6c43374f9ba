// Method: parts are gone through in order, and their wants in theirs; what a want counted of a place in an
// earlier part counts against its cap in the next.
#include "find/lesson_counts.hpp"

#include <algorithm>

#include "loopwright/find/practised.hpp"
#include "loopwright/wish/asked.hpp"

namespace loopwright::find {

LessonCounts::LessonCounts(const Ground& ground, std::span<const PlacePass> passes,
                           const wish::Loop& loop)
    : ground_(ground),
      passes_(passes),
      loop_(loop),
      practice_(wish::practice_of(loop)),
      taken_(passes.size(), 0) {
  if (ground.wish.parts.empty()) count_part(practice_, ground.wish.wants);
  for (std::size_t p = 0; p < ground.wish.parts.size(); ++p)
    count_part(wish::rows_of(loop.parts[p]), ground.wish.parts[p].wants);
  add_welcome();
}

LessonCounts::Used& LessonCounts::used(const wish::Want& want, bool practised) {
  const WantKey key{want.kind, want.movement, want.verdict ? static_cast<int>(*want.verdict) : -1,
                    want.into ? static_cast<int>(*want.into) : -1};
  return used_[{key, practised}];
}

bool LessonCounts::counts(std::size_t pass, wish::RowSpan rows, const wish::Want& want) const {
  const wish::Pass& one = loop_.passes[pass];
  return wish::lies_in(one, practice_) && wish::begins_in(one, rows) &&
         wish::counts_for(pass, loop_.passes, want);
}

std::vector<std::size_t> LessonCounts::counting(const wish::Want& want, wish::RowSpan rows) {
  const std::int64_t spacing_ms =
      std::int64_t{1000} * wish::spacing_s(ground_.wish, want).value_or(0);
  Used& before = used(want, false);
  std::vector<std::size_t> found;
  std::int64_t next_ms = 0;
  for (std::size_t i = 0; i < passes_.size(); ++i) {
    if (passes_[i].begins_ms < next_ms || !counts(i, rows, want)) continue;
    if (++before.of_place[passes_[i].place] > ground_.caps.passes_of(passes_[i].pass.kind))
      continue;
    found.push_back(i);
    if (spacing_ms > 0) next_ms = passes_[i].begins_ms + spacing_ms;
  }
  return found;
}

std::vector<std::size_t> LessonCounts::practised(const wish::Want& want, wish::RowSpan rows) {
  const auto& repeat_worth = ground_.caps.repeat_worth;
  std::vector<Practicable> all;
  for (std::size_t i = 0; i < passes_.size(); ++i)
    if (counts(i, rows, want))
      all.push_back({i, passes_[i].place, passes_[i].pass.movement, passes_[i].begins_ms});
  Used& before = used(want, true);
  std::vector<std::size_t> found;
  for (const std::size_t i : choose_practised(all, {spacing_ms_of(ground_.wish, want, ground_.caps),
                                                    repeat_worth, ground_.wish.place_passes})
                                 .passes) {
    std::size_t& times = before.practised[{passes_[i].place, passes_[i].pass.movement}];
    int& of_place = before.of_place[passes_[i].place];
    const bool worn_out = ground_.wish.place_passes && of_place >= *ground_.wish.place_passes;
    if (worn_out || times >= repeat_worth.size()) continue;
    worth_ += repeat_worth[times++];
    ++of_place;
    found.push_back(i);
  }
  return found;
}

void LessonCounts::count_part(wish::RowSpan rows, std::span<const wish::Want> wants) {
  std::vector<wish::Met>& met = met_.emplace_back();
  for (const wish::Want& want : wants) {
    const std::vector<std::size_t> found = counting(want, rows);
    met.push_back({want, static_cast<int>(found.size())});
    if (want.count) {
      const std::size_t most = std::min(found.size(), static_cast<std::size_t>(*want.count));
      for (std::size_t k = 0; k < most; ++k) taken_[found[k]] = 1;
      continue;
    }
    met.back().practised = practised(want, rows);
    for (std::size_t i = 0; i < passes_.size(); ++i)
      if (counts(i, rows, want)) taken_[i] = 1;
  }
}

void LessonCounts::add_welcome() {
  std::map<PlaceId, int> of_place;
  for (std::size_t i = 0; i < passes_.size(); ++i) {
    const wish::Pass& pass = loop_.passes[i];
    const bool welcome = std::ranges::any_of(
        ground_.wish.welcome, [&](road::Kind kind) { return road::meets(pass.kind, kind); });
    if (!welcome || taken_[i] != 0 || pass.movement == road::Movement::round ||
        !wish::lies_in(pass, practice_))
      continue;
    if (++of_place[passes_[i].place] <= ground_.caps.passes_of(pass.kind))
      worth_ += ground_.caps.welcome_worth;
  }
}

}  // namespace loopwright::find
