// 1. Passes in no group, and arcs that no walk within the time reaches and leaves again, are left out.
// 2. Plain: an arc a pass from entry to exit, an arc a leg from exit to entry. A walk is one of passes that have worth
//    or count; a leg between two that can only have worth for one spaced goal is as long as its spacing needs.
// 3. Spaced: an exit becomes two nodes, one for next entries that are near (the arc lasts the spacing, or what
//    the least way round does that takes so long) and one for far ones (pass and leg last longer than the spacing).
//    Where the time to a near entry isn't the same after all passes of the exit, the arc of each pass leads straight
//    to it with its own time.
// 4. Arcs no quicker than two quicker ones through a pass between are dropped. Both must be quicker, or two
//    equal arcs could drop each other.
#include "circuit/bound_network.hpp"

#include <algorithm>

#include "circuit/bound_times.hpp"

namespace loopwright::circuit {

namespace {

/// More passes than these have no use in any walk: neither worth nor count.
std::int64_t useful_passes(const Problem& problem) {
  std::int64_t sum = 0;
  for (const Group& group : problem.groups)
    sum += static_cast<std::int64_t>(group.worths.size()) +
           std::min(group.most_counted, problem.goals[group.goal].least);
  return sum;
}

class Builder {
 public:
  Builder(const Problem& problem, std::int64_t spacing_ms)
      : p_(problem),
        spacing_(spacing_ms),
        legs_(spacing_ms > 0 ? problem.legs : legs_between_counted(problem)),
        times_(spacing_ms > 0 ? QuickestWays(problem, spacing_ms) : QuickestWays(problem, legs_)),
        by_exit_(problem.exit_count),
        to_exit_(problem.exit_count, no_way),
        begins_(problem.exit_count, no_way) {
    for (std::uint32_t row = 0; row < p_.passes.size(); ++row) {
      const Pass& pass = p_.passes[row];
      if (pass.groups.empty()) continue;
      const std::int64_t there = plus(p_.leg(p_.home(), pass.entry), pass.inner_ms);
      if (plus(there, p_.leg(pass.exit, p_.end())) > p_.most_ms) continue;
      by_exit_[pass.exit].push_back(row);
      to_exit_[pass.exit] = std::min(to_exit_[pass.exit], there);
      begins_[pass.exit] = std::min(begins_[pass.exit], p_.leg(p_.home(), pass.entry));
    }
    // Legs of a best walk between passes of use, each stretched to a chain that meets no entry twice.
    most_ = useful_passes(p_) + 1;
  }

  Network plain() {
    start(p_.exit_count);
    home_legs();
    for (std::uint32_t exit = 0; exit < p_.exit_count; ++exit) {
      for (const std::uint32_t row : by_exit_[exit])
        add_pass(row, node(exit), p_.passes[row].inner_ms);
      if (!by_exit_[exit].empty()) plain_legs(exit);
    }
    return whole();
  }

  Network spaced() {
    start(2 * p_.exit_count);
    network_.spaced = true;
    home_legs();
    for (std::uint32_t exit = 0; exit < p_.exit_count; ++exit)
      if (!by_exit_[exit].empty()) spaced_legs(exit);
    return whole();
  }

 private:
  /// Without what the arcs grew by and don't need.
  Network whole() {
    network_.arcs.shrink_to_fit();
    return std::move(network_);
  }

  void start(std::uint32_t between) {
    network_.entry_count = p_.entry_count;
    network_.home = p_.entry_count + between;
    network_.end = network_.home + 1;
    network_.node_count = network_.end + 1;
  }

  [[nodiscard]] std::uint32_t node(std::uint32_t exit) const { return p_.entry_count + exit; }
  [[nodiscard]] std::uint32_t far_node(std::uint32_t exit) const {
    return p_.entry_count + p_.exit_count + exit;
  }
  [[nodiscard]] std::uint32_t target(std::uint32_t entry) const {
    return entry == p_.end() ? network_.end : entry;
  }

  void add(std::uint32_t from, std::uint32_t to, std::int64_t ms, std::uint32_t pass = no_pass) {
    const bool once = from == network_.home || to == network_.end;
    network_.arcs.push_back({from, to, ms, pass, once ? 1 : most_});
  }

  void add_pass(std::uint32_t row, std::uint32_t to, std::int64_t ms) {
    add(p_.passes[row].entry, to, ms, row);
  }

  /// Whether a walk within the time can be at `there_ms` when the leg begins.
  [[nodiscard]] bool fits(std::int64_t there_ms, std::int64_t ms, std::uint32_t to) const {
    const std::int64_t after = to == p_.end() ? 0 : times_.to_end(to);
    return plus(plus(there_ms, ms), after) <= p_.most_ms;
  }

  struct Near {
    std::int64_t ms;
    std::uint32_t entry;
  };
  /// The entries one can come to, the nearest first; `ms_to`: from the place that one is at.
  template <class MsTo>
  [[nodiscard]] std::vector<Near> nearest(MsTo ms_to) const {
    std::vector<Near> entries;
    for (std::uint32_t entry = 0; entry < p_.entry_count; ++entry)
      if (const std::int64_t ms = ms_to(entry); ms < no_way) entries.push_back({ms, entry});
    std::sort(entries.begin(), entries.end(),
              [](const Near& a, const Near& b) { return a.ms < b.ms; });
    return entries;
  }

  /// Whether going to `to` in `ms` is no quicker than over a pass at one of these.
  [[nodiscard]] bool dominated(std::int64_t ms, std::uint32_t to,
                               const std::vector<Near>& entries) const {
    for (const Near& by : entries) {
      if (by.ms >= ms) return false;
      const std::int64_t second = times_.between(by.entry, to);
      if (second < ms && by.ms + second <= ms) return true;
    }
    return false;
  }

  void home_legs() {
    const auto ms_to = [&](std::uint32_t entry) { return p_.leg(p_.home(), entry); };
    const std::vector<Near> entries = nearest(ms_to);
    for (std::uint32_t to = 0; to <= p_.end(); ++to) {
      const std::int64_t ms = ms_to(to);
      if (fits(0, ms, to) && !dominated(ms, to, entries)) add(network_.home, target(to), ms);
    }
  }

  void plain_legs(std::uint32_t exit) {
    const auto ms_to = [&](std::uint32_t entry) {
      return legs_[static_cast<std::size_t>(exit) * (p_.entry_count + 1) + entry];
    };
    const std::vector<Near> entries = nearest(ms_to);
    for (std::uint32_t to = 0; to <= p_.end(); ++to) {
      const std::int64_t ms = ms_to(to);
      if (fits(to_exit_[exit], ms, to) && !dominated(ms, to, entries))
        add(node(exit), target(to), ms);
    }
  }

  void spaced_legs(std::uint32_t exit) {
    const std::vector<std::uint32_t>& rows = by_exit_[exit];
    std::int64_t quick = no_way;
    for (const std::uint32_t row : rows) {
      quick = std::min(quick, p_.passes[row].inner_ms);
      add_pass(row, node(exit), 0);
      add_pass(row, far_node(exit), p_.passes[row].inner_ms);
    }
    const auto quickest_to = [&](std::uint32_t to) {
      std::int64_t ms = no_way;
      for (const std::uint32_t row : rows) ms = std::min(ms, after(row, to));
      return ms;
    };
    const std::vector<Near> entries = nearest(quickest_to);
    for (std::uint32_t to = 0; to <= p_.end(); ++to) {
      const std::int64_t leg = p_.leg(exit, to);
      if (leg >= no_way) continue;
      const std::int64_t spaced = to == p_.end() ? 0 : begins_[exit] + spacing_;
      if (!fits(std::max(spaced, to_exit_[exit] + leg), 0, to)) continue;
      if (to != p_.end() && quick + leg < spacing_)
        near_legs(exit, to);
      else if (!dominated(quick + leg, to, entries))
        add(far_node(exit), target(to), leg);
    }
  }

  /// From the beginning of the pass to the next's.
  [[nodiscard]] std::int64_t after(std::uint32_t row, std::uint32_t to) const {
    return begin_to_begin(p_, p_.passes[row], to, spacing_);
  }

  void near_legs(std::uint32_t exit, std::uint32_t to) {
    const std::vector<std::uint32_t>& rows = by_exit_[exit];
    const std::int64_t first_ms = after(rows.front(), to);
    if (std::ranges::all_of(rows, [&](std::uint32_t row) { return after(row, to) == first_ms; })) {
      if (first_ms < no_way) add(node(exit), to, first_ms);
      return;
    }
    for (const std::uint32_t row : rows)
      if (after(row, to) < no_way) add_pass(row, to, after(row, to));
  }

  const Problem& p_;
  std::int64_t spacing_;
  std::vector<std::int64_t> legs_;  ///< of the plain network; spaced ones have times of their own
  QuickestWays times_;
  std::vector<std::vector<std::uint32_t>> by_exit_;
  std::vector<std::int64_t> to_exit_;  ///< from home, through the quickest pass
  std::vector<std::int64_t> begins_;   ///< from home to the nearest entry of a pass to the exit
  std::int64_t most_ = 1;
  Network network_;
};

}  // namespace

Network plain_network(const Problem& problem) {
  return Builder(problem, 0).plain();
}

Network spaced_network(const Problem& problem, std::int64_t spacing_ms) {
  return Builder(problem, spacing_ms).spaced();
}

Problem worth_of(const Problem& problem, std::uint32_t goal) {
  Problem result = problem;
  result.goals.assign(1, {0, problem.goals[goal].spacing_ms});
  result.groups.clear();
  std::vector<std::uint32_t> kept(problem.groups.size(), no_pass);
  for (std::uint32_t row = 0; row < problem.groups.size(); ++row) {
    if (problem.groups[row].goal != goal || problem.groups[row].worths.empty()) continue;
    kept[row] = static_cast<std::uint32_t>(result.groups.size());
    result.groups.push_back({0, problem.groups[row].worths, 0, problem.groups[row].cap});
  }
  for (Pass& pass : result.passes) {
    std::vector<std::uint32_t> groups;
    for (const std::uint32_t row : pass.groups)
      if (kept[row] != no_pass) groups.push_back(kept[row]);
    pass.groups = std::move(groups);
  }
  return result;
}

}  // namespace loopwright::circuit
