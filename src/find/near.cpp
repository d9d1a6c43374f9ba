// The nearest chances of a want: each place and movement once, by time there. Of bus lanes asked for
// at their hours those that have the verdict on arriving there.
#include <algorithm>
#include <set>

#include "find/in_the_way.hpp"
#include "find/near_ground.hpp"
#include "find/reached_chances.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::find {
namespace {

std::int64_t limit_ms(const NearAsk& ask) {
  return static_cast<std::int64_t>(ask.within_minutes * 60000);
}

bool is_so_then(const Ground& ground, const wish::Want& want, const ReachedChance& reached) {
  return !want.verdict || lane_verdict_at(ground, reached) == *want.verdict;
}

Worth some_of(const NearAsk& ask) {
  return [&ask](const Ground& ground) {
    const auto reached = reached_chances(ground, ask.want, limit_ms(ask));
    const auto counts = [&](const ReachedChance& one) { return is_so_then(ground, ask.want, one); };
    return std::ranges::any_of(reached, counts) ? 1 : 0;
  };
}

/// What keeps all of them away, asked on the ground that it is kept on.
template <class Told>
auto kept_away(const road::Roads& roads, const NearAsk& ask, const hours::Setting& setting,
               Told told) {
  const wish::Wish wish = there_and_back(ask.wish, ask.within_minutes);
  const ClockWalls walls = near_walls(roads, wish, setting);
  const Worth some = some_of(ask);
  const Ground ground(roads, wish, setting, walls);
  return told(ground, some, in_the_way(ground, some));
}

}  // namespace

std::vector<NearChance> chances_near(const road::Roads& roads, const NearAsk& ask,
                                     const hours::Setting& setting) {
  const wish::Wish wish = there_and_back(ask.wish, ask.within_minutes);
  const ClockWalls walls = near_walls(roads, wish, setting);
  const Ground ground(roads, wish, setting, walls);
  std::vector<NearChance> near;
  std::set<std::pair<PlaceId, road::Movement>> told;
  for (const ReachedChance& reached : reached_chances(ground, ask.want, limit_ms(ask))) {
    if (!is_so_then(ground, ask.want, reached)) continue;
    const road::Chance& chance = roads.chances[reached.chance.index()];
    if (!told.emplace(chance.place, chance.movement).second) continue;
    near.push_back({reached.chance, static_cast<double>(reached.there_ms) / 60000,
                    static_cast<double>(reached.back_ms) / 60000});
  }
  return near;
}

std::string kept_from_near(const road::Roads& roads, const NearAsk& ask,
                           const hours::Setting& setting) {
  return kept_away(roads, ask, setting,
                   [](const Ground&, const Worth&, const InTheWay& way) { return way.words; });
}

std::vector<Instant> better_starts_near(const road::Roads& roads, const NearAsk& ask,
                                        const hours::Setting& setting) {
  return kept_away(roads, ask, setting,
                   [](const Ground& ground, const Worth& some, const InTheWay& way) {
                     return better_starts(ground, some, way);
                   });
}

}  // namespace loopwright::find
