// Method (simulated annealing over ruin and recreate: Schrimpf and others 2000; Kirkpatrick and others
// 1983; from memory):
// 1. Fill an empty walk a few times with different tastes; take the best, or the one handed in.
// 2. Each round: ruin a copy (search_ruin.hpp), fill it again (search_insert.hpp), and go on with it
//    when it is not worse than what we have by more than the temperature lets chance allow. Worse:
//    missing passes weigh more than all worth; time weighs a little beside worth, since what is saved
//    lets something in later.
// 3. Keep the best; last, take out what brings nothing and try each visit's other waits.
#include <algorithm>
#include <cmath>

#include "circuit/search_insert.hpp"
#include "circuit/search_ruin.hpp"
#include "circuit/search_tour.hpp"
#include "loopwright/circuit/circuit.hpp"

namespace loopwright::circuit {

namespace {

constexpr Taste::Power powers[] = {Taste::Power::plain, Taste::Power::rooted,
                                   Taste::Power::squared};

struct Found {
  std::vector<Visit> visits;
  Score score;
};

class Searcher {
 public:
  Searcher(const Items& items, const SearchWork& work)
      : items_(items), clock_(items), inserter_(items, clock_), dice_(work.seed) {
    for (std::size_t goal = 0; goal < items.problem.goals.size(); ++goal)
      if (items.problem.goals[goal].least > 0) counted_goals_.push_back(goal);
  }

  Walk run(int rounds, const Walk& start) {
    begin(start);
    anneal(rounds);
    tidy();
    return walk_of(items_, clock_, best_.visits);
  }

 private:
  void begin(const Walk& start) {
    keep({{}, clock_.time({})});
    now_ = best_;
    if (!best_.score.fits(items_.problem)) return;
    Found given{visits_of(items_, start), {}};
    given.score = clock_.time(given.visits);
    if (given.score.fits(items_.problem)) keep(given);
    for (const Taste::Power power : powers) build({power});
    for (const std::size_t goal : counted_goals_) build({Taste::Power::plain, goal});
    now_ = best_;
  }

  void build(const Taste& taste) {
    Found built;
    built.score = inserter_.fill(built.visits, taste, dice_);
    keep(built);
  }

  void keep(const Found& found) {
    if (found.score.better_than(best_.score)) best_ = found;
  }

  /// What annealing weighs: worth, less what is missing and a little for time.
  [[nodiscard]] double weight(const Score& s) const {
    return static_cast<double>(s.value) - missing_weight_ * s.missing -
           ms_weight_ * static_cast<double>(s.ms);
  }

  void set_weights() {
    const double value = static_cast<double>(best_.score.value);
    const double ms = static_cast<double>(std::max<std::int64_t>(1, best_.score.ms));
    ms_weight_ = value > 0 ? 0.1 * value / ms : 1;
    missing_weight_ = 4 * (value > 0 ? value : ms);
    scale_ = std::max(value, ms_weight_ * ms);
  }

  void anneal(int rounds) {
    if (items_.items.empty() || best_.visits.empty()) return;
    set_weights();
    for (int round = 0; round < rounds; ++round) {
      const double done = static_cast<double>(round) / rounds;
      const double heat = scale_ * 0.03 * std::pow(0.01, done);
      next_ = now_;
      ruin(items_, next_.visits, dice_);
      change_a_wait(next_.visits);
      next_.score = inserter_.fill(next_.visits, taste(), dice_);
      if (!next_.score.fits(items_.problem)) continue;
      keep(next_);
      if (weight(next_.score) > weight(now_.score) + heat * std::log(dice_.share() + 1e-12))
        std::swap(now_, next_);
    }
  }

  /// Now and then one visit waits for something else than before.
  void change_a_wait(std::vector<Visit>& visits) {
    if (items_.spaced_sets.size() == 1 || visits.empty() || dice_.below(4) > 0) return;
    Visit& visit = visits[dice_.below(visits.size())];
    const Item& item = items_.items[visit.item];
    if (item.spaced == 0) return;
    visit.patience = static_cast<Patience>(dice_.below(single + items_.counts_of(item).size()));
  }

  Taste taste() {
    static constexpr double noises[] = {0.1, 0.3, 0.6};
    const std::size_t goal = counted_goals_.empty() || dice_.below(3) > 0
                                 ? Taste::no_goal
                                 : counted_goals_[dice_.below(counted_goals_.size())];
    const int any_first = std::max(0, static_cast<int>(dice_.below(5)) - 1);
    return {powers[dice_.below(4) % 3], goal, any_first, noises[dice_.below(3)]};
  }

  /// Single steps that only ever better the best.
  void tidy() {
    for (bool better = true; better;) {
      better = false;
      for (std::size_t i = 0; i < best_.visits.size(); ++i) better = tidy_visit(i) || better;
    }
  }

  bool tidy_visit(std::size_t i) {
    bool better = false;
    Found next = best_;
    const Item& item = items_.items[next.visits[i].item];
    const std::size_t patiences = item.spaced == 0 ? 0 : single + items_.counts_of(item).size();
    for (std::size_t patience = 0; patience < patiences; ++patience) {
      next.visits[i].patience = static_cast<Patience>(patience);
      better = keep_timed(next) || better;
    }
    next = best_;
    next.visits.erase(next.visits.begin() + static_cast<std::ptrdiff_t>(i));
    return keep_timed(next) || better;
  }

  bool keep_timed(Found& next) {
    next.score = clock_.time(next.visits);
    if (!next.score.fits(items_.problem) || !next.score.better_than(best_.score)) return false;
    best_ = next;
    return true;
  }

  const Items& items_;
  Clock clock_;
  Inserter inserter_;
  Dice dice_;
  std::vector<std::size_t> counted_goals_;
  Found best_, now_, next_;
  double ms_weight_ = 1, missing_weight_ = 1, scale_ = 1;
};

Score score_of(const Problem& problem, const Walk& walk) {
  const Evaluation e = evaluate(problem, walk);
  return {e.missing, e.value, e.ms};
}

}  // namespace

Walk search(const Problem& problem, const SearchWork& work, const Walk& start,
            std::span<const std::uint8_t> allowed) {
  const Items items(problem, allowed);
  Walk found = Searcher(items, work).run(work.rounds, start);
  const Score given = score_of(problem, start);
  const Score score = score_of(problem, found);
  const bool given_counts = given.ms <= problem.most_ms && given.ms < no_way;
  return given_counts && given.better_than(score) ? start : found;
}

}  // namespace loopwright::circuit
