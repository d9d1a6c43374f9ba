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
  all.minutes = minutes_without(all.walls);
  const Worth sum = [this](const Ground& ground) {
    int worth = 0;
    // One can't make up for another.
    for (const Blamed& blamed : blamed_) worth += std::min(blamed.worth(ground), blamed.way.worth);
    return worth;
  };
  return find::better_starts(ground_, sum, all);
}

std::optional<int> ByTheHour::minutes_without(const std::vector<Wall>& blamed) const {
  if (!length_ || blamed.empty()) return std::nullopt;
  std::vector<Wall> left = ground_.walls.walls();
  std::erase_if(left,
                [&](const Wall& wall) { return std::ranges::find(blamed, wall) != blamed.end(); });
  const ClockWalls walls = ground_.walls.with_only(std::move(left));
  return length_(Ground(ground_.roads, ground_.wish, ground_.setting, walls));
}

void ByTheHour::give_starts(wish::Shortfall& shortfall) const {
  shortfall.better_starts = better_starts();
  if (blamed_.empty() || !shortfall.better_starts.empty()) return;
  const std::string none = "; no better start up to " + std::to_string(most_hours_off) +
                           " hours earlier or later was found";
  shortfall.why += none;
  if (!shortfall.missing.empty()) shortfall.missing.front().why += none;
}

}  // namespace loopwright::find
