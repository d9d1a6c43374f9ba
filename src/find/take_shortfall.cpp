// Method:
//   1. It can be driven to, over and home from: with its minutes, when these are too many, else only with the rest it can't.
//   2. It can't, but could without one of the wish's limits: that is the reason, a place kept off by its name.
//   3. The clock is why: what it shuts is named.
//   4. Else no road that a learner may drive leads there and home again.
#include "find/take_shortfall.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "find/keep_off.hpp"
#include "find/reached_chances.hpp"
#include "find/worths.hpp"

namespace loopwright::find {
namespace {

/// Least time from home over some of the place to the end; none when nothing of it can be driven so.
std::optional<std::int64_t> least_ms_over(const Ground& ground, const wish::Take& take) {
  const KeptOff place = kept_off(ground.roads, {take.name, {take.at}});
  const reach::Backwards backwards(ground.roads);
  reach::Sweep out(ground.roads), back(ground.roads, &backwards);
  out.run(ground.starts, ground.costs, longest_ms);
  back.run_back(ground.goals, ground.costs, longest_ms);
  std::optional<std::int64_t> least_ms;
  for (const std::uint32_t row : out.settled()) {
    const StateId state{row};
    const StretchId stretch = ground.roads.stretch_of(state);
    const bool is_of_it =
        place.nodes.empty()
            ? std::ranges::binary_search(place.pieces, stretch.piece())
            : std::ranges::find(place.nodes, ground.roads.from_node(stretch)) != place.nodes.end();
    if (!is_of_it || !back.reached(state)) continue;
    // The stretch itself is in both.
    const std::int64_t ms =
        std::max<std::int64_t>(0, out.ms(state) + back.ms(state) - ground.costs.along_ms(stretch));
    if (!least_ms || ms < *least_ms) least_ms = ms;
  }
  return least_ms;
}

bool can_be_driven(const Ground& ground, const wish::Wish& wish, const wish::Take& take) {
  const Ground other(ground.roads, wish, ground.setting, ground.walls);
  return least_ms_over(other, take).has_value();
}

/// What the wish says that keeps it away, when taking that back alone is enough; empty: nothing does.
std::string limit_in_the_way(const Ground& ground, const wish::Take& take) {
  const wish::Wish& asked = ground.wish;
  for (std::size_t k = 0; k < asked.keep_offs.size(); ++k) {
    wish::Wish without = asked;
    without.keep_offs.erase(without.keep_offs.begin() + static_cast<std::ptrdiff_t>(k));
    const std::string& name = asked.keep_offs[k].name;
    if (can_be_driven(ground, without, take))
      return "kept off, or only to be reached through what is: " +
             (name.empty() ? "an area of --keep-off" : "--keep-off '" + name + "'");
  }
  for (std::size_t k = 0; k < asked.avoids.size(); ++k) {
    wish::Wish without = asked;
    without.avoids.erase(without.avoids.begin() + static_cast<std::ptrdiff_t>(k));
    if (can_be_driven(ground, without, take))
      return "every way over it passes " + wish::write_avoid(asked.avoids[k]) +
             ", which is avoided";
  }
  wish::Wish without = asked;
  without.street_use.clear();
  if (!asked.street_use.empty() && can_be_driven(ground, without, take))
    return "driven often enough by the ledger, or only to be reached by streets that are";
  without = asked;
  without.hardest.reset();
  without.level_given = false;
  if (can_be_driven(ground, without, take))
    return std::string("every way over it passes something too hard") +
           (asked.hardest ? "" : " for the level");
  without.keep_offs.clear();
  without.avoids.clear();
  without.street_use.clear();
  return can_be_driven(ground, without, take)
             ? "more than one of what is avoided, kept off, used up or too hard is in the way"
             : "";
}

Worth drivable(const wish::Take& take) {
  return [take](const Ground& ground) { return least_ms_over(ground, take) ? 1 : 0; };
}

std::string whole_minutes(double ms) {
  return std::to_string(std::lround(ms / 60'000));
}

}  // namespace

std::string why_not_taken(const Ground& ground, const wish::Take& take, ByTheHour& clock) {
  const std::string name = "'" + take.name + "': ";
  const std::int64_t most_ms = most_ms_of(ground.wish);
  if (const auto least_ms = least_ms_over(ground, take)) {
    const std::string least = whole_minutes(static_cast<double>(*least_ms));
    const std::string most = whole_minutes(static_cast<double>(most_ms));
    if (*least_ms > most_ms)
      return name + "there and home takes " + least + " of " + most + " minutes";
    return name + "there and home takes " + least + " of " + most +
           " minutes, but no loop that takes it and does the rest was found";
  }
  if (const std::string limit = limit_in_the_way(ground, take); !limit.empty()) return name + limit;
  if (const std::string shut = clock.blame(drivable(take)); !shut.empty())
    return name + "not at that time: " + shut;
  return name + "no road that a learner may drive leads there and home again";
}

}  // namespace loopwright::find
