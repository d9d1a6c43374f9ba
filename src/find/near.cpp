// The nearest chances of a want: each place and movement once, by time there.
#include <set>

#include "find/reached_chances.hpp"
#include "loopwright/find/find.hpp"

namespace loopwright::find {

std::vector<NearChance> chances_near(const road::Roads& roads, const wish::Wish& wish,
                                     const wish::Want& want, double within_minutes) {
  const Ground ground(roads, wish);
  const auto limit_ms = static_cast<std::int64_t>(within_minutes * 60000);
  std::vector<NearChance> near;
  std::set<std::pair<PlaceId, road::Movement>> told;
  for (const ReachedChance& reached : reached_chances(ground, want, limit_ms)) {
    const road::Chance& chance = roads.chances[reached.chance.index()];
    if (!told.emplace(chance.place, chance.movement).second) continue;
    near.push_back({reached.chance, static_cast<double>(reached.there_ms) / 60000,
                    static_cast<double>(reached.back_ms) / 60000});
  }
  return near;
}

}  // namespace loopwright::find
