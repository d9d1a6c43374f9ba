// Method: one sweep from home, and one back from the end where that matters, over the ground's costs.
#include "find/worths.hpp"

#include <algorithm>
#include <set>

#include "find/reached_chances.hpp"

namespace loopwright::find {

Worth places_within(const wish::Want& want, std::int64_t most_ms, int enough) {
  return [=](const Ground& ground) {
    std::set<PlaceId> places;
    for (const ReachedChance& reached : chances_within(ground, {&want, 1}, most_ms))
      places.insert(ground.roads.chances[reached.chance.index()].place);
    return std::min(static_cast<int>(places.size()), enough);
  };
}

Worth room_for(std::int64_t least_ms, std::int64_t most_ms) {
  return [=](const Ground& ground) {
    if (ground.starts.empty() || ground.goals.empty()) return 0;
    return road_within(ground, most_ms) >= least_ms ? 2 : 1;
  };
}

std::optional<std::int64_t> least_ms_to_end(const Ground& ground) {
  reach::Sweep out(ground.roads);
  out.run(ground.starts, ground.costs, longest_ms);
  std::optional<std::int64_t> least_ms;
  for (const reach::Seed& goal : ground.goals) {
    if (!out.reached(goal.state)) continue;
    const std::int64_t along = ground.costs.along_ms(ground.roads.stretch_of(goal.state));
    const std::int64_t ms = std::max<std::int64_t>(0, out.ms(goal.state) - along + goal.ms);
    if (!least_ms || ms < *least_ms) least_ms = ms;
  }
  return least_ms;
}

Worth end_within(std::int64_t most_ms) {
  return [=](const Ground& ground) {
    const auto least_ms = least_ms_to_end(ground);
    return least_ms && *least_ms <= most_ms ? 1 : 0;
  };
}

std::int64_t most_ms_of(const wish::Wish& wish) {
  return wish.minutes ? std::int64_t{60'000} * (*wish.minutes - wish.reserve_minutes) : longest_ms;
}

}  // namespace loopwright::find
