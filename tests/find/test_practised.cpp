// Which passes a want for as many as fit is practised by: against trying every choice.
#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <map>
#include <utility>

#include "loopwright/base/dice.hpp"
#include "loopwright/find/practised.hpp"

namespace {

using namespace loopwright;
using find::Practicable;

constexpr std::array<std::int64_t, 6> worths = {1000, 700, 500, 300, 200, 100};

std::vector<Practicable> random_passes(Dice& dice, std::size_t count) {
  std::vector<Practicable> all;
  std::int64_t ms = 0;
  for (std::size_t i = 0; i < count; ++i) {
    ms += static_cast<std::int64_t>(dice.below(100'000));
    const auto movement = dice.below(2) == 0 ? road::Movement::left : road::Movement::right;
    all.push_back({i, PlaceId{static_cast<std::uint32_t>(dice.below(4))}, movement, ms});
  }
  return all;
}

/// Worth of a choice; -1 when it isn't spaced or a place is in it too often.
std::int64_t worth_of(const std::vector<Practicable>& chosen, const find::PractisedRules& rules) {
  std::map<std::pair<PlaceId, road::Movement>, std::size_t> times;
  std::map<PlaceId, int> of_place;
  std::int64_t sum = 0;
  for (std::size_t i = 0; i < chosen.size(); ++i) {
    if (i > 0 && chosen[i].begins_ms - chosen[i - 1].begins_ms < rules.spacing_ms) return -1;
    if (++of_place[chosen[i].place] > rules.of_place.value_or(1000)) return -1;
    const std::size_t before = times[{chosen[i].place, chosen[i].movement}]++;
    if (before < rules.worths.size()) sum += rules.worths[before];
  }
  return sum;
}

std::int64_t best_worth(const std::vector<Practicable>& all, const find::PractisedRules& rules) {
  std::int64_t best = 0;
  for (std::uint32_t mask = 0; mask < (1U << all.size()); ++mask) {
    std::vector<Practicable> chosen;
    for (std::size_t i = 0; i < all.size(); ++i)
      if ((mask >> i & 1U) != 0) chosen.push_back(all[i]);
    best = std::max(best, worth_of(chosen, rules));
  }
  return best;
}

TEST_CASE("the passes chosen as practised are worth as much as any choice", "[find][practised]") {
  Dice dice(7);
  int as_good = 0;
  constexpr int cases = 200;
  for (int k = 0; k < cases; ++k) {
    const auto all = random_passes(dice, 4 + dice.below(9));
    const find::PractisedRules rules{static_cast<std::int64_t>(30'000 * dice.below(7)), worths,
                                     dice.below(2) == 0
                                         ? std::nullopt
                                         : std::optional<int>(1 + static_cast<int>(dice.below(3)))};
    const find::Practised chosen = find::choose_practised(all, rules);
    std::vector<Practicable> passes;
    for (const std::size_t pass : chosen.passes) passes.push_back(all[pass]);
    REQUIRE(worth_of(passes, rules) == chosen.worth);
    const std::int64_t best = best_worth(all, rules);
    REQUIRE(chosen.worth <= best);
    if (chosen.worth == best) ++as_good;
  }
  // The search is narrow on purpose; it may miss a choice now and then, not often.
  INFO(as_good << " of " << cases << " as good as the best");
  CHECK(as_good >= cases * 97 / 100);
}

TEST_CASE("a worthless pass on the way doesn't take a good one's place", "[find][practised]") {
  // One place thrice, then another place a minute later: the spacing lets one of the last two count.
  const PlaceId worn{1}, fresh{2};
  const std::vector<Practicable> all = {{0, worn, road::Movement::left, 0},
                                        {1, worn, road::Movement::left, 120'000},
                                        {2, worn, road::Movement::left, 240'000},
                                        {3, fresh, road::Movement::left, 300'000}};
  const find::Practised chosen = find::choose_practised(all, {120'000, worths});
  CHECK(chosen.passes == std::vector<std::size_t>{0, 1, 3});
  CHECK(chosen.worth == 2700);
  CHECK(find::choose_practised({}, {120'000, worths}).passes.empty());
}

}  // namespace
