#include "circuit/search_tour.hpp"

#include <algorithm>

namespace loopwright::circuit {

Clock::Clock(const Items& items)
    : counted(items.problem.groups.size(), 0),
      worth(items.problem.groups.size(), 0),
      got(items.problem.goals.size(), 0),
      items_(items),
      next_ms_(items.problem.goals.size(), 0),
      of_cap_(items.problem.caps.size(), 0) {}

void Clock::reset() {
  for (const std::uint32_t group : touched_) {
    counted[group] = 0;
    worth[group] = 0;
  }
  touched_.clear();
  std::fill(got.begin(), got.end(), 0);
  std::fill(next_ms_.begin(), next_ms_.end(), 0);
  std::fill(of_cap_.begin(), of_cap_.end(), 0);
  value_ = 0;
}

std::int64_t Clock::next_worth(std::uint32_t row) const {
  const Group& group = items_.problem.groups[row];
  if (worth[row] >= group.worths.size()) return 0;
  if (group.cap != no_cap && of_cap_[group.cap] >= items_.problem.caps[group.cap]) return 0;
  return group.worths[worth[row]];
}

std::int64_t Clock::ready(const Item& item, Patience patience) const {
  if (item.spaced == 0 || patience == none) return 0;
  std::int64_t ms = 0;
  Patience k = single;
  for (const Counting& c : items_.counts_of(item)) {
    if (patience != all && patience != k++) continue;
    if (next_worth(c.group) > 0) ms = std::max(ms, next_ms_[c.goal] - c.offset_ms);
  }
  return ms;
}

void Clock::count(const Item& item, std::int64_t begins) {
  for (const Counting& c : items_.counts_of(item)) {
    const Group& group = items_.problem.groups[c.group];
    if (counted[c.group] == 0) touched_.push_back(c.group);
    if (counted[c.group]++ < group.most_counted) ++got[c.goal];
    const std::int64_t at = begins + c.offset_ms;
    if (at < next_ms_[c.goal] || worth[c.group] >= group.worths.size()) continue;
    if (group.cap != no_cap && of_cap_[group.cap]++ >= items_.problem.caps[group.cap]) continue;
    value_ += group.worths[worth[c.group]++];
    next_ms_[c.goal] = at + items_.problem.goals[c.goal].spacing_ms;
  }
}

/// When the leg ends that can't end before may_begin.
std::int64_t Clock::later(std::uint32_t exit, std::uint32_t entry, std::int64_t leaves,
                          std::int64_t may_begin) const {
  return leaves +
         std::min<std::int64_t>(far_ms, items_.problem.longer_leg(exit, entry, may_begin - leaves));
}

Score Clock::time(std::span<const Visit> visits, VisitTimes* times) {
  reset();
  const Problem& problem = items_.problem;
  if (times != nullptr) {
    times->begin.clear();
    times->wait.clear();
  }
  std::int64_t ms = 0;
  std::uint32_t at = problem.home();
  for (const Visit& visit : visits) {
    const Item& item = items_.items[visit.item];
    const std::int64_t arrives = ms + items_.to(at)[visit.item];
    const std::int64_t may_begin = ready(item, visit.patience);
    ms = may_begin > arrives ? later(at, item.entry, ms, may_begin) : arrives;
    if (times != nullptr) {
      times->begin.push_back(ms);
      times->wait.push_back(ms - arrives);
    }
    count(item, ms);
    ms += item.inner_ms;
    at = item.exit;
  }
  ms += items_.leg(at, problem.end());
  if (times != nullptr) {
    times->begin.push_back(ms);
    times->wait.push_back(0);
  }
  Score score{0, value_, ms};
  for (std::size_t g = 0; g < got.size(); ++g)
    score.missing += std::max(0, problem.goals[g].least - got[g]);
  return score;
}

Walk walk_of(const Items& items, Clock& clock, std::span<const Visit> visits) {
  VisitTimes times;
  clock.time(visits, &times);
  Walk walk;
  for (std::size_t i = 0; i < visits.size(); ++i) {
    const std::span<const std::uint32_t> rows = items.rows_of(items.items[visits[i].item]);
    walk.passes.insert(walk.passes.end(), rows.begin(), rows.end());
    walk.wait_ms.push_back(times.wait[i]);
    walk.wait_ms.resize(walk.passes.size(), 0);
  }
  return walk;
}

std::vector<Visit> visits_of(const Items& items, const Walk& walk) {
  std::vector<std::vector<std::uint32_t>> beginning(items.problem.passes.size());
  for (std::uint32_t i = 0; i < items.items.size(); ++i)
    beginning[items.rows_of(items.items[i]).front()].push_back(i);
  std::vector<Visit> visits;
  for (std::size_t at = 0; at < walk.passes.size();) {
    std::size_t used = 1;
    for (const std::uint32_t i : beginning[walk.passes[at]]) {
      const std::span<const std::uint32_t> rows = items.rows_of(items.items[i]);
      if (rows.size() > walk.passes.size() - at ||
          !std::equal(rows.begin(), rows.end(),
                      walk.passes.begin() + static_cast<std::ptrdiff_t>(at)))
        continue;
      visits.push_back({i, all});
      used = rows.size();
      break;
    }
    at += used;
  }
  return visits;
}

}  // namespace loopwright::circuit
