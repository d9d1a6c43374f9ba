// 1. One goal of worth, spaced, no `least`: a tree over the spaced network, which is exact (walks of the
//    counted passes alone, waits where they are too close).
// 2. Else, for each spaced goal of worth a short tree over its own spaced network says how much it can have at
//    most alone, whatever else is wanted; then one tree over the plain network with these as rows. It knows
//    spacing only from one pass to the next, as a number of passes and by these rows, so its bound may stay above the best walk.
// 3. At nodes, the passes the programme uses are handed to the search.
#include <algorithm>

#include "circuit/bound_tree.hpp"
#include "circuit/bound_walk.hpp"
#include "loopwright/circuit/circuit.hpp"

namespace loopwright::circuit {

namespace {

/// -1: breaks the time or a goal's `least`.
std::int64_t value_of(const Problem& problem, const Walk& walk) {
  const Evaluation e = evaluate(problem, walk);
  return e.ms > problem.most_ms || e.missing > 0 ? -1 : e.value;
}

/// Rounds to walks and keeps the best.
class Rounding : public Guide {
 public:
  Rounding(const Problem& problem, const SearchWork& repair, const Walk& known)
      : problem_(problem), repair_(repair) {
    take(known);
    take({});
  }

  [[nodiscard]] std::int64_t to_beat() const override { return value_; }
  [[nodiscard]] const Walk& best() const { return best_; }
  void space(std::int64_t spacing_ms) { spacing_ms_ = spacing_ms; }

  void look(const Network& network, std::span<const double> amounts, bool whole) override {
    if (whole) return take(walk_of(problem_, network, amounts, spacing_ms_));
    std::vector<std::uint8_t> mask = used_passes(problem_, network, amounts);
    if (repair_.rounds <= 0 || mask == last_mask_ || looks_++ % every_ != 0) return;
    take(search(problem_, repair_, {}, mask));
    last_mask_ = std::move(mask);
  }

 private:
  void take(const Walk& walk) {
    const std::int64_t value = value_of(problem_, walk);
    if (value <= value_) return;
    value_ = value;
    best_ = walk;
  }

  static constexpr int every_ = 4;  // nodes; ours: the search costs as much as several
  const Problem& problem_;
  SearchWork repair_;
  Walk best_;
  std::int64_t value_ = -1, spacing_ms_ = 0;
  int looks_ = 0;
  std::vector<std::uint8_t> last_mask_;
};

/// For bounds alone.
class NoWalks : public Guide {
 public:
  [[nodiscard]] std::int64_t to_beat() const override { return -1; }
  void look(const Network& /*network*/, std::span<const double> /*amounts*/,
            bool /*whole*/) override {}
};

std::vector<std::uint32_t> goals_of_worth(const Problem& problem) {
  std::vector<std::uint32_t> goals;
  for (const Group& group : problem.groups)
    if (!group.worths.empty() && group.worths.front() > 0) goals.push_back(group.goal);
  std::sort(goals.begin(), goals.end());
  goals.erase(std::unique(goals.begin(), goals.end()), goals.end());
  return goals;
}

/// About what the first programme over the network takes, without whose end a tree says little. Measured on Newport and
/// the county: iterations are a quarter to half of the arcs.
std::int64_t work_of_first(const Network& network) {
  const auto arcs = static_cast<std::int64_t>(network.arcs.size());
  return arcs * arcs / 2;
}

/// By goal, the most its passes are worth when nothing else is wanted.
std::vector<std::int64_t> worth_alone(const Problem& problem,
                                      const std::vector<std::uint32_t>& goals, WorkLeft& left) {
  std::vector<std::int64_t> most(problem.goals.size(), no_way);
  const auto parts = static_cast<int>(4 * goals.size());  // a quarter of the work for all of them
  for (const std::uint32_t goal : goals) {
    if (problem.goals[goal].spacing_ms == 0) continue;
    const Problem alone = worth_of(problem, goal);
    const Network network = spaced_network(alone, problem.goals[goal].spacing_ms);
    const WorkLeft given = {left.cut_rounds / parts, std::max(1, left.nodes / parts),
                            left.work / parts};
    if (given.work < work_of_first(network)) continue;
    WorkLeft rest = given;
    NoWalks no_walks;
    Tree tree({alone, network}, rest);
    tree.run(no_walks);
    most[goal] = tree.bound();
    left.cut_rounds -= given.cut_rounds - rest.cut_rounds;
    left.work -= given.work - rest.work;
  }
  return most;
}

}  // namespace

Bound bound(const Problem& problem, const BoundWork& work, const Walk& known) {
  Rounding rounding(problem, work.repair, known);
  WorkLeft left = {work.cut_rounds, work.nodes, work.work};
  const std::vector<std::uint32_t> goals = goals_of_worth(problem);
  const bool hard = std::any_of(problem.goals.begin(), problem.goals.end(),
                                [](const Goal& goal) { return goal.least > 0; });
  std::int64_t value = -1;
  if (goals.size() == 1 && !hard && problem.goals[goals.front()].spacing_ms > 0) {
    const std::int64_t spacing_ms = problem.goals[goals.front()].spacing_ms;
    const Problem alone = worth_of(problem, goals.front());
    const Network network = spaced_network(alone, spacing_ms);
    rounding.space(spacing_ms);
    Tree tree({alone, network}, left);
    tree.run(rounding);
    value = tree.bound();
  } else {
    const std::vector<std::int64_t> most = worth_alone(problem, goals, left);
    const Network network = plain_network(problem);
    Tree tree({problem, network, most}, left);
    tree.run(rounding);
    value = tree.bound();
  }
  return {std::max<std::int64_t>(0, value), value < 0, rounding.best()};
}

}  // namespace loopwright::circuit
