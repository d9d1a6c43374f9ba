// Method:
//   1. One sweep from home, one back from the end.
//   2. At each state reached, its chances that count are driven through turn by turn; a chance some
//      turn of which the wish forbids is left out.
//   3. A junction begins at the end of its entry, anything else with its first stretch.
#include "find/reached_chances.hpp"

#include <algorithm>
#include <optional>

#include "find/bans.hpp"
#include "find/joined.hpp"
#include "find/stops.hpp"

namespace loopwright::find {

namespace {

/// Where a chance's path leads from a state, and how long that takes from the end of the entry.
struct Through {
  StateId last;
  std::int64_t ms = 0;
};

std::optional<Through> drive_along(const Ground& ground, StateId entry,
                                   std::span<const StretchId> way) {
  Through at{entry, 0};
  for (const StretchId next : way.subspan(1)) {
    const std::int32_t along = ground.costs.stretch_ms[next.index()];
    const std::uint32_t begin = ground.roads.turn_first[at.last.index()];
    const std::uint32_t end = ground.roads.turn_first[at.last.index() + 1];
    std::uint32_t row = begin;
    while (row < end && ground.roads.stretch_of(ground.roads.turns[row].to) != next) ++row;
    const bool banned =
        row < end && !ground.costs.turn_banned.empty() && ground.costs.turn_banned[row] != 0;
    if (row == end || banned || along < 0) return std::nullopt;
    const road::Turn& turn = ground.roads.turns[row];
    at.ms += along + ground.costs.control_ms[static_cast<std::size_t>(turn.control)];
    at.last = turn.to;
  }
  return at;
}

/// The chance's own way, or the quickest on which it leads into what it is joined to.
std::optional<Through> drive_through(const Ground& ground, StateId entry,
                                     const road::Chance& chance, const wish::Want& want) {
  if (!want.into) return drive_along(ground, entry, ground.roads.path_of(chance));
  std::optional<Through> best;
  for (const auto& way : joined_ways(ground.roads, chance, *want.into)) {
    const auto through = drive_along(ground, entry, way);
    if (through && (!best || through->ms < best->ms)) best = through;
  }
  return best;
}

}  // namespace

wish::Verdict lane_verdict_at(const Ground& ground, const ReachedChance& reached) {
  const road::Chance& chance = ground.roads.chances[reached.chance.index()];
  std::optional<wish::Verdict> all;
  std::int64_t ms = reached.there_ms;
  for (const StretchId stretch : ground.roads.path_of(chance)) {
    const Instant from = ground.wish.start.plus_seconds(ms / 1000);
    ms += ground.costs.stretch_ms[stretch.index()];
    const Instant to = ground.wish.start.plus_seconds((ms + 999) / 1000);
    const wish::Verdict here = ground.lane_verdicts.on(stretch, {from, to});
    if (all && *all != here) return wish::Verdict::check_the_plate;
    all = here;
  }
  return all.value_or(wish::Verdict::check_the_plate);
}

std::vector<ReachedChance> reached_chances(const Ground& ground, const wish::Want& want,
                                           std::int64_t limit_ms) {
  const road::Roads& roads = ground.roads;
  const reach::Backwards backwards(roads);
  reach::Sweep out(roads), back(roads, &backwards);
  out.run(ground.starts, ground.costs, limit_ms);
  back.run_back(ground.goals, ground.costs, longest_ms);
  std::vector<ReachedChance> found;
  for (const std::uint32_t row : out.settled()) {
    const StateId entry{row};
    const StretchId stretch = roads.stretch_of(entry);
    for (const road::Chance& chance : roads.chances_from(stretch)) {
      if (!wish::counts_for(chance.kind, chance.movement, want)) continue;
      // A manoeuvre shuts no road, so that one too hard is still seen here.
      if (is_unwanted(ground.wish, ground.caps, chance.kind, chance.hardness)) continue;
      const auto through = drive_through(ground, entry, chance, want);
      if (!through || !back.reached(through->last)) continue;
      const std::int64_t last_along =
          ground.costs.stretch_ms[roads.stretch_of(through->last).index()];
      const std::int64_t home_from = std::max<std::int64_t>(0, back.ms(through->last) - last_along);
      const std::int64_t entry_along = ground.costs.stretch_ms[stretch.index()];
      const bool at_its_end = road::form_of(chance.kind) == road::KindForm::junction;
      const std::int64_t begins = out.ms(entry) - (at_its_end ? 0 : entry_along);
      found.push_back({ChanceId{static_cast<std::size_t>(&chance - roads.chances.data())},
                       std::max<std::int64_t>(0, begins), home_from,
                       out.ms(entry) + through->ms + home_from + stop_ms(chance.kind)});
    }
  }
  std::sort(found.begin(), found.end(), [](const ReachedChance& a, const ReachedChance& b) {
    return std::pair(a.there_ms, a.chance) < std::pair(b.there_ms, b.chance);
  });
  return found;
}

}  // namespace loopwright::find
