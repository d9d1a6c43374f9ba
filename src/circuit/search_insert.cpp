#include "circuit/search_insert.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::circuit {

namespace {

constexpr std::size_t most_tries = 4;
constexpr double first_goal_gain = 20;
constexpr std::int64_t long_ago = -std::int64_t{far_ms};

std::int32_t clamped(std::int64_t ms) {
  return static_cast<std::int32_t>(std::clamp<std::int64_t>(ms, -far_ms, far_ms));
}

double weighed(double gain, const Taste& taste) {
  if (taste.power == Taste::Power::squared) return gain * gain;
  return taste.power == Taste::Power::rooted ? std::sqrt(gain) : gain;
}

/// Nothing an item counts for depends on another of its own rows.
bool stands_alone(const Items& items, const Item& item) {
  if (item.row_count > 1) return false;
  std::vector<std::uint32_t> goals;
  for (const Counting& c : items.counts_of(item)) goals.push_back(c.goal);
  std::sort(goals.begin(), goals.end());
  return std::unique(goals.begin(), goals.end()) == goals.end();
}

}  // namespace

Inserter::Inserter(const Items& items, Clock& clock)
    : items_(items),
      clock_(clock),
      spaced_(items.spaced_sets.size() > 1),
      gain_(items.items.size()),
      weighed_(items.items.size()),
      chance_(items.items.size()),
      best_delay_(items.items.size()),
      best_gap_(items.items.size()) {
  for (const Item& item : items.items) spaced_set_.push_back(item.spaced);
  const std::int64_t most = std::min<std::int64_t>(items.problem.most_ms, far_ms);
  grain_ms_ = static_cast<double>(most) / 2000.0 + 0.5;
  for (const Group& group : items.problem.groups)
    for (const std::int64_t worth : group.worths) missing_gain_ += static_cast<double>(worth);
  exact_ = !spaced_ && items.problem.caps.empty() &&
           std::all_of(items.items.begin(), items.items.end(),
                       [&](const Item& item) { return stands_alone(items, item); });
}

Score Inserter::fill(std::vector<Visit>& visits, const Taste& taste, Dice& dice) {
  now_ = clock_.time(visits, &times_);
  open_items(taste, dice);
  gauge(visits, taste);
  for (const std::uint32_t i : open_) best_delay_[i] = far_ms;
  for (std::uint32_t gap = 0; gap < gaps_.size(); ++gap) compare(gap);
  for (int i = 0; i < taste.any_first; ++i) put_any(visits, taste, dice);
  while (put_best(visits, taste)) {
  }
  return now_;
}

void Inserter::open_items(const Taste& taste, Dice& dice) {
  open_.resize(items_.items.size());
  for (std::uint32_t i = 0; i < open_.size(); ++i) {
    open_[i] = i;
    gain_[i] = -1;
    chance_[i] = taste.noise > 0 ? 1 - taste.noise * dice.share() : 1.0;
  }
}

void Inserter::gauge(std::span<const Visit> visits, const Taste& taste) {
  gauge_gains(taste);
  gauge_gaps(visits);
  gauge_before(visits);
  gauge_after(visits);
}

/// What is gained by one more pass of each item, as the clock stands; closes those without.
void Inserter::gauge_gains(const Taste& taste) {
  std::size_t kept = 0;
  for (const std::uint32_t i : open_) {
    const double gain = gain_of(items_.items[i], taste);
    if (gain <= 0) continue;
    open_[kept++] = i;
    if (gain == gain_[i]) continue;
    gain_[i] = gain;
    weighed_[i] = chance_[i] * weighed(gain, taste);
  }
  open_.resize(kept);
}

double Inserter::gain_of(const Item& item, const Taste& taste) const {
  const Problem& p = items_.problem;
  double gain = 0;
  for (const Counting& c : items_.counts_of(item)) {
    const Group& group = p.groups[c.group];
    gain += static_cast<double>(clock_.next_worth(c.group));
    if (clock_.got[c.goal] < p.goals[c.goal].least && clock_.counted[c.group] < group.most_counted)
      gain += c.goal == taste.first_goal ? first_goal_gain * missing_gain_ : missing_gain_;
  }
  return gain;
}

void Inserter::gauge_gaps(std::span<const Visit> visits) {
  const std::size_t sets = items_.spaced_sets.size();
  gaps_.resize(visits.size() + 1);
  ready_.resize(gaps_.size() * sets);
  after_.resize(gaps_.size() * sets);
  std::uint32_t at = items_.problem.home();
  std::int64_t leaves = 0;
  for (std::size_t i = 0; i < gaps_.size(); ++i) {
    const Item* next = i < visits.size() ? &items_.items[visits[i].item] : nullptr;
    Gap& gap = gaps_[i];
    gap.to = items_.to(at);
    gap.from = items_.from(next == nullptr ? items_.problem.end() : next->entry);
    gap.ready = ready_.data() + i * sets;
    gap.after = after_.data() + i * sets;
    gap.length = clamped(times_.begin[i] - leaves);
    if (next == nullptr) break;
    at = next->exit;
    leaves = times_.begin[i] + next->inner_ms;
  }
}

/// How long after leaving the visit before it an item of each spaced set may begin.
void Inserter::gauge_before(std::span<const Visit> visits) {
  const std::size_t sets = items_.spaced_sets.size();
  goal_ms_.assign(items_.problem.goals.size(), 2 * long_ago);
  std::int64_t leaves = 0;
  for (std::size_t gap = 0; gap < gaps_.size(); ++gap) {
    for (std::size_t set = 0; set < sets; ++set) {
      std::int64_t ms = long_ago;
      for (const std::uint32_t goal : items_.spaced_sets[set])
        ms = std::max(ms, goal_ms_[goal] + items_.problem.goals[goal].spacing_ms - leaves);
      ready_[gap * sets + set] = clamped(ms);
    }
    if (gap == visits.size()) break;
    const Item& item = items_.items[visits[gap].item];
    for (const std::uint32_t goal : items_.spaced_sets[item.spaced])
      goal_ms_[goal] = times_.begin[gap];
    leaves = times_.begin[gap] + item.inner_ms;
  }
}

/// How long after an item's beginning the next visit may begin, so that those after it stay spaced; and
/// what of a delay the waits after it absorb.
void Inserter::gauge_after(std::span<const Visit> visits) {
  const std::size_t sets = items_.spaced_sets.size();
  goal_ms_.assign(items_.problem.goals.size(), -2 * long_ago);
  std::int64_t absorbed = 0;
  for (std::size_t gap = gaps_.size(); gap-- > 0;) {
    if (gap < visits.size()) {
      const Item& next = items_.items[visits[gap].item];
      for (const std::uint32_t goal : items_.spaced_sets[next.spaced])
        goal_ms_[goal] = times_.begin[gap];
      absorbed = times_.wait[gap] + (next.spaced == 0 ? absorbed : 0);
    }
    gaps_[gap].length = clamped(gaps_[gap].length + absorbed);
    for (std::size_t set = 0; set < sets; ++set) {
      std::int64_t ms = long_ago;
      for (const std::uint32_t goal : items_.spaced_sets[set])
        ms = std::max(ms,
                      items_.problem.goals[goal].spacing_ms + times_.begin[gap] - goal_ms_[goal]);
      after_[gap * sets + set] = clamped(ms);
    }
  }
}

void Inserter::compare(std::uint32_t number) {
  const Gap gap = gaps_[number];
  for (const std::uint32_t i : open_) {
    const std::int32_t ms = delay(gap, i);
    if (ms >= best_delay_[i]) continue;
    best_delay_[i] = ms;
    best_gap_[i] = number;
  }
}

/// After an item was put into a gap: that and the next are new, the later ones one further on.
void Inserter::compare_after(std::uint32_t number) {
  for (const std::uint32_t i : open_) {
    if (best_gap_[i] > number) ++best_gap_[i];
    if (best_gap_[i] != number) continue;
    best_delay_[i] = far_ms;
    for (std::uint32_t g = 0; g < gaps_.size(); ++g) {
      const std::int32_t ms = delay(gaps_[g], i);
      if (ms >= best_delay_[i]) continue;
      best_delay_[i] = ms;
      best_gap_[i] = g;
    }
  }
  compare(number);
  compare(number + 1);
}

/// The few open items of most weighed gain for their delay that fit.
void Inserter::choose_tries() {
  tries_.clear();
  const std::size_t most = exact_ ? 1 : most_tries;
  const std::int64_t most_ms = spare();
  for (const std::uint32_t i : open_) {
    if (best_delay_[i] > most_ms) continue;
    const double rate = weighed_[i] / (static_cast<double>(best_delay_[i]) + grain_ms_);
    if (tries_.size() == most && rate <= tries_.back().rate) continue;
    if (tries_.size() == most) tries_.pop_back();
    std::size_t at = tries_.size();
    while (at > 0 && tries_[at - 1].rate < rate) --at;
    tries_.insert(tries_.begin() + static_cast<std::ptrdiff_t>(at), {i, rate});
  }
}

/// Puts the item into its best gap with each patience that makes sense; keeps the best rate.
void Inserter::try_item(std::vector<Visit>& visits, std::uint32_t item, Candidate& best,
                        const Taste& taste) {
  const Item& row = items_.items[item];
  const std::uint32_t gap = best_gap_[item];
  const std::size_t goals = items_.spaced_sets[row.spaced].size();
  const std::size_t patiences = goals > 1 ? single + items_.counts_of(row).size() : single;
  const auto at = visits.insert(visits.begin() + gap, Visit{item, all});
  for (std::size_t patience = goals == 0 ? all : none; patience < patiences; ++patience) {
    at->patience = static_cast<Patience>(patience);
    const Score score = clock_.time(visits);
    if (!score.fits(items_.problem) || !score.gives_more_than(now_)) continue;
    double gain = static_cast<double>(score.value - now_.value) +
                  missing_gain_ * static_cast<double>(now_.missing - score.missing);
    if (score.missing < now_.missing) gain = std::max(gain, gain_[item]);
    const double ms = static_cast<double>(std::max<std::int64_t>(0, score.ms - now_.ms));
    const double rate = chance_[item] * weighed(std::max(gain, 0.5), taste) / (ms + grain_ms_);
    if (rate > best.rate) best = {*at, gap, rate};
  }
  visits.erase(at);
}

Inserter::Candidate Inserter::best_try(std::vector<Visit>& visits, const Taste& taste) {
  Candidate best;
  if (exact_) return {{tries_[0].item, all}, best_gap_[tries_[0].item], 1};
  for (const Try& t : tries_) try_item(visits, t.item, best, taste);
  return best;
}

void Inserter::close_tries() {
  const auto tried = [this](std::uint32_t item) {
    return std::any_of(tries_.begin(), tries_.end(), [=](const Try& t) { return t.item == item; });
  };
  open_.erase(std::remove_if(open_.begin(), open_.end(), tried), open_.end());
}

void Inserter::put(std::vector<Visit>& visits, const Candidate& candidate, const Taste& taste) {
  visits.insert(visits.begin() + candidate.gap, candidate.visit);
  now_ = clock_.time(visits, &times_);
  gauge(visits, taste);
  compare_after(candidate.gap);
}

void Inserter::put_any(std::vector<Visit>& visits, const Taste& taste, Dice& dice) {
  constexpr int most_draws = 8;
  for (int draw = 0; draw < most_draws && !open_.empty(); ++draw) {
    const std::uint32_t item = open_[dice.below(open_.size())];
    if (best_delay_[item] > spare()) continue;
    tries_.assign(1, {item, 1});
    const Candidate candidate = best_try(visits, taste);
    if (candidate.rate > 0) return put(visits, candidate, taste);
  }
}

bool Inserter::put_best(std::vector<Visit>& visits, const Taste& taste) {
  for (;;) {
    choose_tries();
    if (tries_.empty()) return false;
    const Candidate best = best_try(visits, taste);
    if (best.rate > 0) {
      put(visits, best, taste);
      return true;
    }
    close_tries();
  }
}

}  // namespace loopwright::circuit
