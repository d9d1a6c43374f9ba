// Method: each worth is blamed alone; better starts must give all of them at once.
#include "find/by_the_hour.hpp"

#include <algorithm>

namespace loopwright::find {

std::string ByTheHour::blame(Worth worth) {
  InTheWay way = in_the_way(ground_, worth);
  if (!way.any()) return "";
  blamed_.push_back({std::move(worth), std::move(way)});
  return blamed_.back().way.words;
}

void ByTheHour::put_off(Worth worth, std::function<bool(const Instant& start)> fits) {
  blamed_.push_back({std::move(worth), {{}, 1, {}, std::move(fits)}});
}

std::vector<Instant> ByTheHour::better_starts() const {
  InTheWay all;
  for (const Blamed& blamed : blamed_) {
    all.walls.insert(all.walls.end(), blamed.way.walls.begin(), blamed.way.walls.end());
    all.worth += blamed.way.worth;
  }
  const bool some_put_off = std::ranges::any_of(
      blamed_, [](const Blamed& blamed) { return static_cast<bool>(blamed.way.also); });
  if (some_put_off)
    all.also = [this](const Instant& start) {
      return std::ranges::all_of(blamed_, [&](const Blamed& blamed) {
        return !blamed.way.also || blamed.way.also(start);
      });
    };
  const Worth sum = [this](const Ground& ground) {
    int worth = 0;
    // One can't make up for another.
    for (const Blamed& blamed : blamed_) worth += std::min(blamed.worth(ground), blamed.way.worth);
    return worth;
  };
  return find::better_starts(ground_, sum, all);
}

}  // namespace loopwright::find
