#include "circuit/search_ruin.hpp"

#include <algorithm>

namespace loopwright::circuit {

namespace {

constexpr std::size_t longest_string = 20;

std::size_t string_length(std::size_t visits, Dice& dice) {
  return 1 + dice.below(
                 std::min(visits, std::max<std::size_t>(3, std::min(longest_string, visits / 2))));
}

void take_string(std::vector<Visit>& visits, std::size_t first, std::size_t length) {
  const auto begin = visits.begin() + static_cast<std::ptrdiff_t>(first);
  visits.erase(begin, begin + static_cast<std::ptrdiff_t>(length));
}

std::size_t any_string(std::vector<Visit>& visits, Dice& dice) {
  const std::size_t length = string_length(visits.size(), dice);
  const std::size_t first = dice.below(visits.size() - length + 1);
  take_string(visits, first, length);
  return first;
}

/// Each visit with its chance in thousandths.
void take_some(std::vector<Visit>& visits, std::size_t first, std::size_t end, std::int64_t chance,
               Dice& dice) {
  std::size_t kept = first;
  for (std::size_t i = first; i < visits.size(); ++i) {
    if (i < end && dice.thousandths() < chance) continue;
    visits[kept++] = visits[i];
  }
  visits.resize(kept);
}

/// A second string around the visit nearest to one of those taken out.
void take_near(const Items& items, std::vector<Visit>& visits, const Item& taken, Dice& dice) {
  std::size_t nearest = 0;
  std::int32_t least = far_ms;
  for (std::size_t i = 0; i < visits.size(); ++i) {
    const std::int32_t ms = items.to(taken.exit)[visits[i].item];
    // Chance lets farther ones be the nearest now and then.
    if (ms >= least || dice.below(4) == 0) continue;
    least = ms;
    nearest = i;
  }
  const std::size_t length = string_length(visits.size(), dice);
  const std::size_t back = std::min(nearest, dice.below(length));
  take_string(visits, nearest - back, std::min(length, visits.size() - (nearest - back)));
}

/// Time saved by taking each out, over its first worths: the dearest go.
void take_dear(const Items& items, std::vector<Visit>& visits, Dice& dice) {
  const Problem& p = items.problem;
  std::vector<std::pair<double, std::size_t>> dear;
  for (std::size_t i = 0; i < visits.size(); ++i) {
    const std::uint32_t at = i == 0 ? p.home() : items.items[visits[i - 1].item].exit;
    const std::uint32_t next =
        i + 1 == visits.size() ? p.end() : items.items[visits[i + 1].item].entry;
    const std::int64_t saved = std::int64_t{items.to(at)[visits[i].item]} +
                               items.from(next)[visits[i].item] - items.leg(at, next);
    std::int64_t worth = 1;
    for (const Counting& c : items.counts_of(items.items[visits[i].item])) {
      const Group& group = p.groups[c.group];
      if (!group.worths.empty()) worth += group.worths.front();
    }
    dear.emplace_back(
        static_cast<double>(saved) / static_cast<double>(worth) * (0.5 + dice.share()), i);
  }
  const std::size_t length = string_length(visits.size(), dice);
  std::partial_sort(dear.begin(), dear.begin() + static_cast<std::ptrdiff_t>(length), dear.end(),
                    [](const auto& a, const auto& b) { return a > b; });
  std::vector<std::uint8_t> goes(visits.size(), 0);
  for (std::size_t k = 0; k < length; ++k) goes[dear[k].second] = 1;
  std::size_t kept = 0;
  for (std::size_t i = 0; i < visits.size(); ++i)
    if (goes[i] == 0) visits[kept++] = visits[i];
  visits.resize(kept);
}

}  // namespace

void ruin(const Items& items, std::vector<Visit>& visits, Dice& dice) {
  if (visits.empty()) return;
  const std::size_t kind = dice.below(20);
  if (kind < 6) {
    any_string(visits, dice);
  } else if (kind < 10) {
    const std::size_t length = std::min(visits.size(), 2 * string_length(visits.size(), dice));
    const std::size_t first = dice.below(visits.size() - length + 1);
    take_some(visits, first, first + length, 500, dice);
  } else if (kind < 16) {
    const Item& seed = items.items[visits[dice.below(visits.size())].item];
    take_near(items, visits, seed, dice);
    if (!visits.empty()) take_near(items, visits, seed, dice);
  } else if (kind < 18) {
    take_some(visits, 0, visits.size(), 100 + static_cast<std::int64_t>(dice.below(200)), dice);
  } else if (kind < 19) {
    take_some(visits, 0, visits.size(), 400 + static_cast<std::int64_t>(dice.below(500)), dice);
  } else {
    take_dear(items, visits, dice);
  }
}

}  // namespace loopwright::circuit
