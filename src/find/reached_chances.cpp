// Method:
//   1. One sweep from home, and one back from the end until all that was found is reached; or both over the drives
//      of some length alone. What the sweep back hasn't met in the time asked for may have no way home at all: a
//      sweep on from there, over the little road that it leads to, tells. Only when it leads farther the sweep back
//      goes on as long as a lesson may last.
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
    const std::int32_t along = ground.costs.along_ms(next);
    const std::uint32_t begin = ground.roads.turn_first[at.last.index()];
    const std::uint32_t end = ground.roads.turn_first[at.last.index() + 1];
    std::uint32_t row = begin;
    while (row < end && ground.roads.stretch_of(ground.roads.turns[row].to) != next) ++row;
    const bool banned = row < end && ground.costs.is_banned(row);
    if (row == end || banned || along < 0) return std::nullopt;
    const road::Turn& turn = ground.roads.turns[row];
    at.ms += along + ground.costs.wait_ms(turn.control);
    at.last = turn.to;
  }
  return at;
}

/// The chance's own way, or the quickest on which it leads into what it is joined to.
std::optional<Through> drive_through(const Ground& ground, StateId entry,
                                     const road::Chance& chance, std::optional<road::Kind> into) {
  if (!into) return drive_along(ground, entry, ground.roads.path_of(chance));
  std::optional<Through> best;
  for (const auto& way : joined_ways(ground.roads, chance, *into)) {
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
    ms += ground.costs.along_ms(stretch);
    const Instant to = ground.wish.start.plus_seconds((ms + 999) / 1000);
    const wish::Verdict here = ground.lane_verdicts.on(stretch, {from, to});
    if (all && *all != here) return wish::Verdict::check_the_plate;
    all = here;
  }
  return all.value_or(wish::Verdict::check_the_plate);
}

namespace {

/// A chance whose way is open, from the entry to its last state.
struct Opening {
  ChanceId chance;
  StateId entry;
  Through through;
};

/// Of those chances that count.
template <class Counts>
std::vector<Opening> openings_of(const Ground& ground, const reach::Sweep& out,
                                 std::optional<road::Kind> into, Counts counts) {
  const road::Roads& roads = ground.roads;
  std::vector<Opening> found;
  for (const std::uint32_t row : out.settled()) {
    const StateId entry{row};
    for (const road::Chance& chance : roads.chances_from(roads.stretch_of(entry))) {
      if (!counts(chance)) continue;
      // A manoeuvre shuts no road, so that one too hard is still seen here.
      if (is_unwanted(ground.wish, ground.caps, chance)) continue;
      if (const auto through = drive_through(ground, entry, chance, into))
        found.push_back(
            {ChanceId{static_cast<std::size_t>(&chance - roads.chances.data())}, entry, *through});
    }
  }
  return found;
}

std::vector<Opening> openings(const Ground& ground, const reach::Sweep& out,
                              const wish::Want& want) {
  return openings_of(ground, out, want.into, [&want](const road::Chance& chance) {
    return wish::counts_for(chance.kind, chance.movement, want);
  });
}

/// Rules: both sweeps reached it.
ReachedChance timed(const Ground& ground, const reach::Sweep& out, const reach::Sweep& back,
                    const Opening& opening) {
  const road::Roads& roads = ground.roads;
  const road::Kind kind = roads.chances[opening.chance.index()].kind;
  const auto along = [&](StateId s) { return ground.costs.along_ms(roads.stretch_of(s)); };
  const StateId last = opening.through.last;
  const std::int64_t home_from = std::max<std::int64_t>(0, back.ms(last) - along(last));
  const bool at_its_end = road::form_of(kind) == road::KindForm::junction;
  const std::int64_t begins = out.ms(opening.entry) - (at_its_end ? 0 : along(opening.entry));
  return {opening.chance, std::max<std::int64_t>(0, begins), home_from,
          out.ms(opening.entry) + opening.through.ms + home_from + stop_ms(kind)};
}

std::vector<ReachedChance> reached(const Ground& ground, const reach::Sweep& out,
                                   const reach::Sweep& back, const std::vector<Opening>& open) {
  std::vector<ReachedChance> found;
  for (const Opening& opening : open)
    if (back.reached(opening.through.last)) found.push_back(timed(ground, out, back, opening));
  std::sort(found.begin(), found.end(), [](const ReachedChance& a, const ReachedChance& b) {
    return std::pair(a.there_ms, a.chance) < std::pair(b.there_ms, b.chance);
  });
  return found;
}

/// Last states of openings, ascending, each once.
std::vector<StateId> lasts_of(const std::vector<Opening>& open) {
  std::vector<StateId> lasts;
  for (const Opening& opening : open) lasts.push_back(opening.through.last);
  std::sort(lasts.begin(), lasts.end());
  lasts.erase(std::unique(lasts.begin(), lasts.end()), lasts.end());
  return lasts;
}

/// True when a drive on from here comes to where `back` has been, or may come there: it leads on for minutes. False: all
/// the road that it leads to was looked at, and there is no way home.
bool may_lead_home(const Ground& ground, const reach::Sweep& back, reach::Sweep& on, StateId from) {
  constexpr std::int64_t few_ms = 5 * 60'000;
  const road::Roads& roads = ground.roads;
  const reach::Seed seed{from, 0};
  on.run({&seed, 1}, ground.costs, few_ms);
  const auto is_goal = [&](StateId state) {
    return std::ranges::find(ground.goals, state, &reach::Seed::state) != ground.goals.end();
  };
  return std::ranges::any_of(on.settled(), [&](std::uint32_t row) {
    if (back.reached(StateId{row}) || is_goal(StateId{row})) return true;
    for (std::uint32_t turn = roads.turn_first[row]; turn < roads.turn_first[row + 1]; ++turn) {
      const StateId next = roads.turns[turn].to;
      const bool open =
          !ground.costs.is_banned(turn) && ground.costs.may_drive(roads.stretch_of(next));
      if (open && !on.reached(next)) return true;
    }
    return false;
  });
}

/// The sweep back from the end to all of these states that have a way home.
void sweep_back(const Ground& ground, reach::Sweep& back, std::vector<StateId> lasts,
                std::int64_t asked_ms) {
  const std::int64_t first_ms = std::min(2 * asked_ms, longest_ms);
  reach::SweepLimits limits(first_ms);
  limits.until = lasts;
  back.run_back(ground.goals, ground.costs, limits);
  if (first_ms == longest_ms) return;
  reach::Sweep on(ground.roads);
  std::erase_if(lasts, [&](StateId last) {
    return back.reached(last) || !may_lead_home(ground, back, on, last);
  });
  if (lasts.empty()) return;
  // Those it has met are nearer than these.
  limits.limit_ms = longest_ms;
  limits.until = lasts;
  back.run_back(ground.goals, ground.costs, limits);
}

}  // namespace

std::vector<ReachedChance> reached_chances(const Ground& ground, const wish::Want& want,
                                           std::int64_t limit_ms) {
  const reach::Backwards backwards(ground.roads);
  reach::Sweep out(ground.roads), back(ground.roads, &backwards);
  out.run(ground.starts, ground.costs, limit_ms);
  const std::vector<Opening> open = openings(ground, out, want);
  if (open.empty()) return {};
  sweep_back(ground, back, lasts_of(open), limit_ms);
  return reached(ground, out, back, open);
}

std::vector<ReachedChance> reached_of_all(const Ground& ground, const reach::Sweep& out,
                                          const reach::Sweep& back) {
  return reached(ground, out, back,
                 openings_of(ground, out, std::nullopt, [](const road::Chance& chance) {
                   return road::form_of(chance.kind) != road::KindForm::manoeuvre;
                 }));
}

std::vector<ReachedChance> chances_within(const Ground& ground, std::span<const wish::Want> wants,
                                          std::int64_t loop_ms) {
  const reach::Backwards backwards(ground.roads);
  reach::Sweep out(ground.roads), back(ground.roads, &backwards);
  reach::sweep_between(out, back, ground.starts, ground.goals, ground.costs, loop_ms);
  std::vector<ReachedChance> found;
  for (const wish::Want& want : wants)
    for (const ReachedChance& one : reached(ground, out, back, openings(ground, out, want)))
      if (one.loop_ms <= loop_ms) found.push_back(one);
  return found;
}

}  // namespace loopwright::find
