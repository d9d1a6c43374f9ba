// Method:
// 1. A first walk by search(), worths and most_ms left out.
// 2. Bounds by relaxation, their multipliers improved step by step (least_time_needs.hpp; the step by
//    Held, Wolfe and Crowder 1974, from memory); when they reach the walk's time, that is proved.
// 3. Otherwise best-first search with the best multipliers (least_time_labels.hpp).
// Rules: a group a move of many counts shares in gets no multiplier, since not all choices of what that
// move counts for are there.
#include <algorithm>
#include <cmath>

#include "circuit/least_time_labels.hpp"
#include "circuit/search_tour.hpp"
#include "loopwright/circuit/circuit.hpp"

namespace loopwright::circuit {

namespace {

constexpr int search_rounds = 600;
constexpr int most_improvements = 120;
constexpr std::int64_t most_steps = 300'000'000;

/// The problem without what the least time doesn't ask for.
Problem bare(const Problem& problem) {
  Problem p = problem;
  for (Group& group : p.groups) group.worths.clear();
  for (Goal& goal : p.goals) goal.spacing_ms = 0;
  const auto counts = [&](std::uint32_t group) { return p.goals[p.groups[group].goal].least > 0; };
  for (Pass& pass : p.passes)
    pass.groups.erase(std::remove_if(pass.groups.begin(), pass.groups.end(),
                                     [&](std::uint32_t group) { return !counts(group); }),
                      pass.groups.end());
  p.most_ms = no_way;
  return p;
}

/// Groups whose counts can be priced: all choices of what their moves count for are moves.
std::vector<std::uint8_t> priced_groups(const Needs& needs) {
  std::vector<std::uint8_t> priced(needs.most.size(), 1);
  for (const Move& move : needs.whole) {
    const bool all_choices =
        std::any_of(needs.moves.begin(), needs.moves.end(),
                    [&](const Move& m) { return m.item == move.item && m.counts.size() == 1; });
    if (all_choices) continue;
    for (const Move::Count& c : move.counts) priced[c.group] = 0;
  }
  return priced;
}

class Prover {
 public:
  Prover(const Problem& problem, const Items& items)
      : problem_(problem), items_(items), needs_(items) {
    for (const Goal& goal : problem.goals) needed_.push_back(goal.least);
  }

  LeastTime run(const LeastTimeWork& work) {
    if (!enough_counts()) return {no_way, {}, true};
    take(search(problem_, {search_rounds, 1}));
    improve();
    if (bound_ms_ < quickest()) look(work.nodes);
    LeastTime result{std::min(bound_ms_, quickest()), walk_, bound_ms_ >= quickest()};
    if (result.at_least_ms >= far_ms) result.at_least_ms = no_way;
    return result;
  }

 private:
  [[nodiscard]] std::int64_t quickest() const {
    return walk_ ? walk_ms_ : static_cast<std::int64_t>(far_ms);
  }

  /// The groups that can be driven at all allow as many counts as are needed.
  [[nodiscard]] bool enough_counts() const {
    std::vector<std::int64_t> counts(needed_.size(), 0);
    std::vector<std::uint8_t> seen(needs_.most.size(), 0);
    for (const Move& move : needs_.whole)
      for (const Move::Count& c : move.counts) {
        counts[c.goal] += seen[c.group] != 0 ? 0 : needs_.most[c.group];
        seen[c.group] = 1;
      }
    for (std::size_t g = 0; g < counts.size(); ++g)
      if (counts[g] < needed_[g]) return false;
    return true;
  }

  void take(const Walk& walk) {
    const Evaluation e = evaluate(problem_, walk);
    if (e.missing > 0 || e.ms >= quickest()) return;
    walk_ = walk;
    walk_ms_ = e.ms;
  }

  void improve() {
    const std::vector<std::uint8_t> priced = priced_groups(needs_);
    std::vector<std::int64_t> best(needs_.multiplier);
    double share = 1;
    int idle = 0;
    std::int64_t steps = 0;
    for (int i = 0; i < most_improvements && steps < most_steps; ++i) {
      needs_.reckon();
      steps += needs_.steps();
      const std::int64_t reached = needs_.rest(needed_, needs_.home()) - needs_.taken_off();
      if (reached > bound_ms_ || i == 0) {
        bound_ms_ = std::max(bound_ms_, reached);
        best = needs_.multiplier;
        idle = 0;
      } else if (++idle % 5 == 0) {
        share /= 2;
      }
      if (bound_ms_ >= quickest() || !move_multipliers(priced, reached, share)) break;
    }
    needs_.multiplier = best;
    needs_.reckon();
  }

  /// False: no group is counted too often, nor priced and counted too seldom.
  bool move_multipliers(const std::vector<std::uint8_t>& priced, std::int64_t reached,
                        double share) {
    const std::vector<std::int64_t> counts = needs_.best_counts();
    double square = 0;
    for (std::size_t g = 0; g < counts.size(); ++g) {
      const double over = static_cast<double>(counts[g] - needs_.most[g]);
      if (priced[g] != 0 && (over > 0 || needs_.multiplier[g] > 0)) square += over * over;
    }
    if (square == 0) return false;
    const double target =
        walk_ ? static_cast<double>(walk_ms_) : 1.1 * static_cast<double>(reached);
    const double step = share * (target - static_cast<double>(reached)) / square;
    for (std::size_t g = 0; g < counts.size(); ++g) {
      if (priced[g] == 0) continue;
      const double over = static_cast<double>(counts[g] - needs_.most[g]);
      needs_.multiplier[g] =
          std::max<std::int64_t>(0, needs_.multiplier[g] + std::llround(step * over));
    }
    return true;
  }

  void look(std::int64_t nodes) {
    Labels labels(needs_, quickest());
    labels.run(nodes);
    if (labels.best()) {
      std::vector<Visit> visits;
      for (const std::uint32_t item : *labels.best()) visits.push_back({item, none});
      Clock clock(items_);
      take(walk_of(items_, clock, visits));
    }
    bound_ms_ = std::max(bound_ms_, labels.bound_ms());
  }

  const Problem& problem_;
  const Items& items_;
  Needs needs_;
  std::vector<int> needed_;
  std::optional<Walk> walk_;
  std::int64_t walk_ms_ = 0, bound_ms_ = 0;
};

}  // namespace

LeastTime least_time(const Problem& problem, const LeastTimeWork& work) {
  const Problem p = bare(problem);
  const Items items(p, {});
  return Prover(p, items).run(work);
}

}  // namespace loopwright::circuit
