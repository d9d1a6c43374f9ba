#include "circuit/search_insert.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::circuit {

namespace {

constexpr std::size_t tries_on_the_clock = 4;
constexpr std::int64_t long_ago = -far_ms;

}  // namespace

Inserter::Inserter(const Items& items, Clock& clock)
    : items_(items),
      clock_(clock),
      gain_(items.items.size()),
      chance_(items.items.size()),
      best_delay_(items.items.size()),
      best_gap_(items.items.size()),
      blocked_(items.items.size()) {
  const std::int64_t most = std::min<std::int64_t>(items.problem.most_ms, far_ms);
  grain_ms_ = static_cast<double>(most) / 2000.0 + 0.5;
  for (const Group& group : items.problem.groups)
    for (const std::int64_t worth : group.worths) missing_gain_ += static_cast<double>(worth);
}

Score Inserter::fill(std::vector<Visit>& visits, const Taste& taste, Dice& dice) {
  for (double& chance : chance_) chance = taste.noise > 0 ? 1 - taste.noise * dice.share() : 1.0;
  std::fill(blocked_.begin(), blocked_.end(), std::uint8_t{0});
  now_ = clock_.time(visits, &times_);
  look_at(visits);
  while (put_best(visits, taste)) {
  }
  return now_;
}

/// Compares all gaps with all items.
void Inserter::look_at(std::span<const Visit> visits) {
  std::fill(best_delay_.begin(), best_delay_.end(), std::int64_t{far_ms});
  gaps_.resize(visits.size() + 1);
  gauge_gains();
  gauge_spacing(visits);
  for (std::size_t gap = 0; gap < gaps_.size(); ++gap) gauge_gap(visits, gap);
  for (std::size_t gap = 0; gap < gaps_.size(); ++gap) compare(gap);
}

void Inserter::gauge_gap(std::span<const Visit> visits, std::size_t gap) {
  const Problem& p = items_.problem;
  const Item* before = gap == 0 ? nullptr : &items_.items[visits[gap - 1].item];
  const std::int64_t leaves = before == nullptr ? 0 : times_.begin[gap - 1] + before->inner_ms;
  gaps_[gap].to = items_.to(before == nullptr ? p.home() : before->exit);
  gaps_[gap].from =
      items_.from(gap == visits.size() ? p.end() : items_.items[visits[gap].item].entry);
  gaps_[gap].length = times_.begin[gap] - leaves;
}

/// What is gained by one more pass of each item, as the clock stands.
void Inserter::gauge_gains() {
  const Problem& p = items_.problem;
  for (std::size_t i = 0; i < gain_.size(); ++i) {
    double gain = 0;
    for (const Counting& c : items_.counts_of(items_.items[i])) {
      const Group& group = p.groups[c.group];
      const std::size_t taken = clock_.worth[c.group];
      if (taken < group.worths.size()) gain += static_cast<double>(group.worths[taken]);
      if (clock_.got[c.goal] < p.goals[c.goal].least &&
          clock_.counted[c.group] < group.most_counted)
        gain += missing_gain_;
    }
    gain_[i] = gain;
  }
}

/// By gap and spaced set: how long after leaving the visit before an item may begin, and how long after
/// an item's beginning the next visit may.
void Inserter::gauge_spacing(std::span<const Visit> visits) {
  const std::size_t sets = items_.spaced_sets.size();
  ready_.assign(gaps_.size() * sets, long_ago);
  after_.assign(gaps_.size() * sets, long_ago);
  for (Gap& gap : gaps_) gap.absorbed = 0;
  if (sets == 1) return;
  const Problem& p = items_.problem;
  goal_ms_.assign(p.goals.size(), long_ago);
  for (std::size_t gap = 0; gap < gaps_.size(); ++gap) {
    std::int64_t leaves = 0;
    if (gap > 0) {
      const Item& before = items_.items[visits[gap - 1].item];
      for (const std::uint32_t goal : items_.spaced_sets[before.spaced])
        goal_ms_[goal] = times_.begin[gap - 1];
      leaves = times_.begin[gap - 1] + before.inner_ms;
    }
    for (std::size_t set = 1; set < sets; ++set)
      for (const std::uint32_t goal : items_.spaced_sets[set])
        ready_[gap * sets + set] =
            std::max(ready_[gap * sets + set], goal_ms_[goal] + p.goals[goal].spacing_ms - leaves);
  }
  goal_ms_.assign(p.goals.size(), 2 * std::int64_t{far_ms});
  for (std::size_t gap = gaps_.size(); gap-- > 0;) {
    if (gap < visits.size()) {
      const Item& next = items_.items[visits[gap].item];
      for (const std::uint32_t goal : items_.spaced_sets[next.spaced])
        goal_ms_[goal] = times_.begin[gap];
      gaps_[gap].absorbed = times_.wait[gap] + (next.spaced == 0 ? gaps_[gap + 1].absorbed : 0);
    }
    for (std::size_t set = 1; set < sets; ++set)
      for (const std::uint32_t goal : items_.spaced_sets[set])
        after_[gap * sets + set] =
            std::max(after_[gap * sets + set],
                     p.goals[goal].spacing_ms - (goal_ms_[goal] - times_.begin[gap]));
  }
}

std::int64_t Inserter::delay(std::size_t gap, std::uint32_t item) const {
  const Gap& g = gaps_[gap];
  const std::size_t row = gap * items_.spaced_sets.size() + items_.items[item].spaced;
  const std::int64_t begins = std::max<std::int64_t>(g.to[item], ready_[row]);
  const std::int64_t next = begins + std::max<std::int64_t>(g.from[item], after_[row]);
  return std::max<std::int64_t>(0, next - g.length - g.absorbed);
}

void Inserter::compare(std::size_t gap) {
  const std::uint32_t n = static_cast<std::uint32_t>(gain_.size());
  for (std::uint32_t i = 0; i < n; ++i) {
    const std::int64_t ms = delay(gap, i);
    if (ms >= best_delay_[i]) continue;
    best_delay_[i] = ms;
    best_gap_[i] = static_cast<std::uint32_t>(gap);
  }
}

/// After an item was put into a gap: that and the next are new, the later ones one further on.
void Inserter::compare_after(std::size_t gap) {
  const std::uint32_t n = static_cast<std::uint32_t>(gain_.size());
  for (std::uint32_t i = 0; i < n; ++i) {
    if (best_delay_[i] >= far_ms) continue;
    if (best_gap_[i] == gap) {
      best_delay_[i] = far_ms;
      for (std::size_t g = 0; g < gaps_.size(); ++g) {
        const std::int64_t ms = delay(g, i);
        if (ms >= best_delay_[i]) continue;
        best_delay_[i] = ms;
        best_gap_[i] = static_cast<std::uint32_t>(g);
      }
    } else if (best_gap_[i] > gap) {
      ++best_gap_[i];
    }
  }
  compare(gap);
  compare(gap + 1);
}

double Inserter::rate(double gain, std::int64_t ms, const Taste& taste) const {
  const double weighed = taste.gain_power == 1 ? gain : std::pow(gain, taste.gain_power);
  return weighed / (static_cast<double>(ms) + grain_ms_);
}

void Inserter::choose_tries(const Taste& taste) {
  tries_.clear();
  const std::int64_t spare = std::min<std::int64_t>(items_.problem.most_ms, far_ms) - now_.ms;
  for (std::uint32_t i = 0; i < gain_.size(); ++i) {
    if (gain_[i] <= 0 || blocked_[i] != 0 || best_delay_[i] > spare) continue;
    const double score = rate(gain_[i], best_delay_[i], taste) * chance_[i];
    if (tries_.size() == tries_on_the_clock && score <= tries_.back().score) continue;
    if (tries_.size() == tries_on_the_clock) tries_.pop_back();
    std::size_t at = tries_.size();
    while (at > 0 && tries_[at - 1].score < score) --at;
    tries_.insert(tries_.begin() + static_cast<std::ptrdiff_t>(at), {i, score});
  }
}

/// Puts the item into its best gap with each patience that makes sense, keeps the best rate.
void Inserter::try_item(std::vector<Visit>& visits, std::uint32_t item, Candidate& best,
                        double& best_rate, const Taste& taste) {
  const Item& row = items_.items[item];
  const std::size_t gap = best_gap_[item];
  const std::size_t spaced = items_.spaced_sets[row.spaced].size();
  const auto at =
      visits.insert(visits.begin() + static_cast<std::ptrdiff_t>(gap), Visit{item, all});
  const std::size_t counts = items_.counts_of(row).size();
  for (std::size_t patience = 0; patience < single + counts; ++patience) {
    if (patience != all && (spaced == 0 || (patience >= single && spaced == 1))) continue;
    at->patience = static_cast<Patience>(patience);
    const Score score = clock_.time(visits);
    if (!score.fits(items_.problem) || !score.gives_more_than(now_)) continue;
    const double gain = static_cast<double>(score.value - now_.value) +
                        missing_gain_ * static_cast<double>(now_.missing - score.missing);
    const double found =
        rate(std::max(gain, 0.5), std::max<std::int64_t>(0, score.ms - now_.ms), taste) *
        chance_[item];
    if (found <= best_rate) continue;
    best_rate = found;
    best = {*at, gap, score};
  }
  visits.erase(at);
}

bool Inserter::put_best(std::vector<Visit>& visits, const Taste& taste) {
  for (;;) {
    choose_tries(taste);
    if (tries_.empty()) return false;
    Candidate best;
    double best_rate = 0;
    for (const Try& t : tries_) try_item(visits, t.item, best, best_rate, taste);
    if (best_rate <= 0) {
      for (const Try& t : tries_) blocked_[t.item] = 1;
      continue;
    }
    visits.insert(visits.begin() + static_cast<std::ptrdiff_t>(best.gap), best.visit);
    now_ = clock_.time(visits, &times_);
    gaps_.resize(visits.size() + 1);
    gauge_gains();
    gauge_spacing(visits);
    for (std::size_t gap = 0; gap < gaps_.size(); ++gap) gauge_gap(visits, gap);
    compare_after(best.gap);
    return true;
  }
}

}  // namespace loopwright::circuit
