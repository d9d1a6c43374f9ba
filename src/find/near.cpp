// The nearest chances of a want: each place and movement once, by time there.
#include <set>

#include "find/reached_chances.hpp"
#include "loopwright/find/find.hpp"

namespace loopwright::find {

std::vector<NearChance> chances_near(const road::Roads& roads, const NearAsk& ask,
                                     const hours::Setting& setting) {
  // Nobody knows yet when one would be there: what may be shut is.
  ClockWalls walls(roads, ask.wish, setting);
  walls.shut_all();
  const Ground ground(roads, ask.wish, setting, walls);
  const auto limit_ms = static_cast<std::int64_t>(ask.within_minutes * 60000);
  std::vector<NearChance> near;
  std::set<std::pair<PlaceId, road::Movement>> told;
  for (const ReachedChance& reached : reached_chances(ground, ask.want, limit_ms)) {
    const road::Chance& chance = roads.chances[reached.chance.index()];
    if (!told.emplace(chance.place, chance.movement).second) continue;
    near.push_back({reached.chance, static_cast<double>(reached.there_ms) / 60000,
                    static_cast<double>(reached.back_ms) / 60000});
  }
  return near;
}

}  // namespace loopwright::find
