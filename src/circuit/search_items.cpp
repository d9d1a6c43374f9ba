#include "circuit/search_items.hpp"

#include <algorithm>
#include <tuple>

namespace loopwright::circuit {

namespace {

constexpr std::size_t longest_chain = 4;

std::int32_t fitting(std::int64_t ms) {
  return static_cast<std::int32_t>(std::min<std::int64_t>(ms, far_ms));
}

/// By exit the only entry it has a leg to; entry_count: there are several, or none.
std::vector<std::uint32_t> only_entries(const Problem& p) {
  std::vector<std::uint32_t> only(p.exit_count, p.entry_count);
  for (std::uint32_t exit = 0; exit < p.exit_count; ++exit) {
    int ways = 0;
    for (std::uint32_t entry = 0; entry <= p.entry_count; ++entry) {
      if (p.leg(exit, entry) >= no_way) continue;
      ++ways;
      only[exit] = entry;
    }
    if (ways != 1) only[exit] = p.entry_count;
  }
  return only;
}

}  // namespace

Items::Items(const Problem& p, std::span<const std::uint8_t> allowed)
    : problem(p), spaced_sets(1), only_(only_entries(p)) {
  std::vector<std::uint32_t> chain;
  for (std::uint32_t row = 0; row < p.passes.size(); ++row) {
    chain.assign(1, row);
    add_chains(chain, allowed);
  }
  drop_equals();
  fill_tables();
}

std::int32_t Items::leg(std::uint32_t exit, std::uint32_t entry) const {
  return fitting(problem.leg(exit, entry));
}

void Items::add_chains(std::vector<std::uint32_t>& chain, std::span<const std::uint8_t> allowed) {
  const std::uint32_t last = chain.back();
  if (!allowed.empty() && allowed[last] == 0) return;
  const std::uint32_t exit = problem.passes[last].exit;
  if (!is_forced(exit)) return add(chain);
  if (chain.size() == longest_chain) return;
  for (std::uint32_t row = 0; row < problem.passes.size(); ++row) {
    if (problem.passes[row].entry != only_[exit]) continue;
    chain.push_back(row);
    add_chains(chain, allowed);
    chain.pop_back();
  }
}

void Items::add(std::span<const std::uint32_t> chain) {
  Item item;
  item.first_row = static_cast<std::uint32_t>(rows.size());
  item.row_count = static_cast<std::uint32_t>(chain.size());
  item.first_count = static_cast<std::uint32_t>(counts.size());
  item.entry = problem.passes[chain.front()].entry;
  item.exit = problem.passes[chain.back()].exit;
  std::int64_t ms = 0;
  for (std::size_t i = 0; i < chain.size(); ++i) {
    const Pass& pass = problem.passes[chain[i]];
    if (i > 0) ms += problem.leg(problem.passes[chain[i - 1]].exit, pass.entry);
    for (const std::uint32_t group : pass.groups)
      counts.push_back({group, problem.groups[group].goal, fitting(ms)});
    ms += pass.inner_ms;
  }
  item.end_count = static_cast<std::uint32_t>(counts.size());
  item.inner_ms = fitting(ms);
  const std::int64_t alone =
      problem.leg(problem.home(), item.entry) + ms + problem.leg(item.exit, problem.end());
  if (alone > problem.most_ms || alone >= far_ms || item.first_count == item.end_count) {
    counts.resize(item.first_count);
    return;
  }
  item.spaced = spaced_set(item);
  rows.insert(rows.end(), chain.begin(), chain.end());
  items.push_back(item);
}

std::uint32_t Items::spaced_set(const Item& item) {
  std::vector<std::uint32_t> goals;
  for (const Counting& c : counts_of(item)) {
    if (problem.goals[c.goal].spacing_ms > 0 && !problem.groups[c.group].worths.empty())
      goals.push_back(c.goal);
  }
  std::sort(goals.begin(), goals.end());
  goals.erase(std::unique(goals.begin(), goals.end()), goals.end());
  const auto found = std::find(spaced_sets.begin(), spaced_sets.end(), goals);
  if (found == spaced_sets.end()) {
    spaced_sets.push_back(goals);
    return static_cast<std::uint32_t>(spaced_sets.size() - 1);
  }
  return static_cast<std::uint32_t>(found - spaced_sets.begin());
}

void Items::drop_equals() {
  const auto groups_of = [this](const Item& item) {
    std::vector<std::uint32_t> groups;
    for (const Counting& c : counts_of(item)) groups.push_back(c.group);
    return groups;
  };
  std::sort(items.begin(), items.end(), [&](const Item& a, const Item& b) {
    return std::tuple(a.entry, a.exit, groups_of(a), a.inner_ms, a.first_row) <
           std::tuple(b.entry, b.exit, groups_of(b), b.inner_ms, b.first_row);
  });
  const auto same = [&](const Item& a, const Item& b) {
    return a.entry == b.entry && a.exit == b.exit && groups_of(a) == groups_of(b);
  };
  items.erase(std::unique(items.begin(), items.end(), same), items.end());
}

void Items::fill_tables() {
  const std::size_t n = items.size();
  to_.resize(n * (problem.exit_count + std::size_t{1}));
  from_.resize(n * (problem.entry_count + std::size_t{1}));
  for (std::uint32_t exit = 0; exit <= problem.exit_count; ++exit) {
    for (std::size_t i = 0; i < n; ++i) to_[exit * n + i] = leg(exit, items[i].entry);
  }
  for (std::uint32_t entry = 0; entry <= problem.entry_count; ++entry) {
    for (std::size_t i = 0; i < n; ++i)
      from_[entry * n + i] = std::min(far_ms, items[i].inner_ms + leg(items[i].exit, entry));
  }
}

}  // namespace loopwright::circuit
