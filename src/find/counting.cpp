// Method: passes are gone through once for each want, in driving order; whichever may count does.
#include "find/counting.hpp"

#include <algorithm>
#include <map>

#include "find/stops.hpp"
#include "loopwright/wish/asked.hpp"
#include "loopwright/wish/turn_round.hpp"

namespace loopwright::find {

namespace {

/// The pass counts for the want, wherever and whenever it is.
bool is_meant(std::span<const PlacePass> passes, std::size_t number, const wish::Want& want) {
  const wish::Pass& pass = passes[number].pass;
  if (!wish::counts_for(pass, want)) return false;
  if (!want.into) return true;
  for (std::size_t other = 0; other < passes.size(); ++other)
    if (other != number && road::meets(passes[other].pass.kind, *want.into) &&
        wish::leads_into(pass, passes[other].pass))
      return true;
  return false;
}

std::int64_t asked_spacing_ms(const Ground& ground, const wish::Want& want) {
  return std::int64_t{1000} * wish::spacing_s(ground.wish, want).value_or(0);
}

bool is_welcome(const wish::Wish& wish, const wish::Pass& pass) {
  return pass.movement != road::Movement::round &&
         std::ranges::any_of(wish.welcome,
                             [&](road::Kind kind) { return road::meets(pass.kind, kind); });
}

/// By pass: some want counts it already.
std::vector<std::uint8_t> wanted(const Ground& ground, std::span<const PlacePass> passes) {
  std::vector<std::uint8_t> is_wanted(passes.size(), 0);
  for (const wish::Want& want : ground.wish.wants) {
    if (!want.count) {
      for (std::size_t i = 0; i < passes.size(); ++i)
        if (is_meant(passes, i, want)) is_wanted[i] = 1;
      continue;
    }
    std::vector<std::size_t> rows = counting(ground, passes, want);
    rows.resize(std::min(rows.size(), static_cast<std::size_t>(*want.count)));
    for (const std::size_t i : rows) is_wanted[i] = 1;
  }
  return is_wanted;
}

std::int64_t welcome_worth(const Ground& ground, std::span<const PlacePass> passes) {
  if (!wish::welcomes_practice(ground.wish)) return 0;
  const std::vector<std::uint8_t> is_wanted = wanted(ground, passes);
  std::map<PlaceId, int> of_place;
  std::int64_t worth = 0;
  for (std::size_t i = 0; i < passes.size(); ++i) {
    const PlacePass& found = passes[i];
    if (is_wanted[i] != 0 || !is_welcome(ground.wish, found.pass)) continue;
    if (++of_place[found.place] <= ground.caps.passes_of(found.pass.kind))
      worth += ground.caps.welcome_worth;
  }
  return worth;
}

}  // namespace

void time_passes(const Ground& ground, const Drive& drive, std::span<PlacePass> passes) {
  const std::vector<std::int64_t> begins = begin_times(ground, drive);
  for (PlacePass& found : passes) found.begins_ms = begins[found.pass.first];
}

bool is_spaced(const wish::Wish& wish) {
  return !wish.spacings.empty();
}

std::vector<std::size_t> counting(const Ground& ground, std::span<const PlacePass> passes,
                                  const wish::Want& want) {
  const std::int64_t spacing_ms = asked_spacing_ms(ground, want);
  std::map<PlaceId, int> of_place;
  std::vector<std::size_t> rows;
  std::int64_t next_ms = 0;
  for (std::size_t i = 0; i < passes.size(); ++i) {
    const PlacePass& found = passes[i];
    if (found.begins_ms < next_ms || !is_meant(passes, i, want)) continue;
    if (++of_place[found.place] > ground.caps.passes_of(found.pass.kind)) continue;
    rows.push_back(i);
    if (spacing_ms > 0) next_ms = found.begins_ms + spacing_ms;
  }
  return rows;
}

std::int64_t worth_of(const Ground& ground, std::span<const PlacePass> passes) {
  std::int64_t worth = welcome_worth(ground, passes);
  for (const wish::Want& want : ground.wish.wants)
    if (!want.count) worth += practised(ground, passes, want).worth;
  return worth;
}

Practised practised(const Ground& ground, std::span<const PlacePass> passes,
                    const wish::Want& want) {
  std::vector<Practicable> all;
  for (std::size_t i = 0; i < passes.size(); ++i)
    if (is_meant(passes, i, want))
      all.push_back({i, passes[i].place, passes[i].pass.movement, passes[i].begins_ms});
  return choose_practised(all, {spacing_ms_of(ground.wish, want, ground.caps),
                                ground.caps.repeat_worth, ground.wish.place_passes});
}

bool counts_worth(const wish::Wish& wish) {
  return wish::welcomes_practice(wish) ||
         std::ranges::any_of(wish.wants, [](const wish::Want& want) { return !want.count; });
}

}  // namespace loopwright::find
