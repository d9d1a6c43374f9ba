#include "circuit/least_time_labels.hpp"

#include <algorithm>
#include <numeric>

namespace loopwright::circuit {

namespace {

constexpr std::uint32_t none_bit = 256;
constexpr std::size_t most_compared = 64;

}  // namespace

Labels::Labels(const Needs& needs, std::int64_t most_ms)
    : needs_(needs), most_ms_(most_ms), taken_off_(needs.taken_off()) {
  lay_out();
}

/// One bit for each count of a group that can run out; those without room are not followed.
void Labels::lay_out() {
  const Problem& p = needs_.items.problem;
  first_bit_.assign(p.groups.size(), none_bit);
  bits_of_goal_.resize(p.goals.size());
  std::uint32_t next = 0;
  for (std::size_t g = 0; g < p.groups.size(); ++g) {
    const std::int64_t most = needs_.most[g];
    if (most >= p.goals[p.groups[g].goal].least || next + most > none_bit) continue;
    first_bit_[g] = next;
    for (std::int64_t i = 0; i < most; ++i, ++next)
      bits_of_goal_[p.groups[g].goal][next / 64] |= std::uint64_t{1} << next % 64;
  }
}

/// Row of what is needed; needs are few, so that the number they make is enough to know them by.
std::uint32_t Labels::needs_row(const std::vector<int>& needed) {
  std::uint64_t code = 0;
  for (std::size_t g = 0; g < needed.size(); ++g)
    code = code * (static_cast<std::uint64_t>(needs_.items.problem.goals[g].least) + 1) +
           static_cast<std::uint64_t>(needed[g]);
  const auto [at, is_new] =
      needs_rows_.try_emplace(code, static_cast<std::uint32_t>(needs_seen_.size()));
  if (is_new) needs_seen_.push_back(needed);
  return at->second;
}

void Labels::run(std::int64_t most_labels) {
  for (const Goal& goal : needs_.items.problem.goals) needed_.push_back(goal.least);
  Label start;
  start.place = needs_.home();
  start.needs = needs_row(needed_);
  bound_ms_ = most_ms_;
  add(start);
  std::int64_t looked_at = 0;
  while (!queue_.empty()) {
    const Queued next = queue_.top();
    bound_ms_ = std::min(next.bound_ms, most_ms_);
    if (next.bound_ms >= most_ms_ || looked_at++ >= most_labels) return;
    queue_.pop();
    if (labels_[next.label].dropped) continue;
    for (const Move& move : needs_.whole) go_on(next.label, move);
  }
  bound_ms_ = most_ms_;
}

void Labels::go_on(std::uint32_t from, const Move& move) {
  Label label = labels_[from];
  needed_ = needs_seen_[label.needs];
  label.ms += needs_.leg(label.place, move.entry) + move.inner_ms;
  if (label.ms >= most_ms_ || !count(label, move)) return;
  label.place = move.place;
  label.before = from;
  label.item = move.item;
  if (std::all_of(needed_.begin(), needed_.end(), [](int n) { return n == 0; }))
    return finish(label);
  clear_met(label);
  label.needs = needs_row(needed_);
  add(label);
}

/// Counts what is needed of a move; false: nothing.
bool Labels::count(Label& label, const Move& move) {
  bool counts = false;
  for (const Move::Count& c : move.counts) {
    if (needed_[c.goal] == 0) continue;
    if (const std::uint32_t first = first_bit_[c.group]; first != none_bit) {
      const std::uint32_t end = first + static_cast<std::uint32_t>(needs_.most[c.group]);
      std::uint32_t bit = first;
      while (bit < end && (label.counted[bit / 64] >> bit % 64 & 1U) != 0) ++bit;
      if (bit == end) continue;
      label.counted[bit / 64] |= std::uint64_t{1} << bit % 64;
    }
    --needed_[c.goal];
    label.counted_ms += needs_.multiplier[c.group];
    counts = true;
  }
  return counts;
}

/// How often groups of a goal that is met were counted matters no more.
void Labels::clear_met(Label& label) const {
  for (std::size_t g = 0; g < needed_.size(); ++g) {
    if (needed_[g] > 0) continue;
    for (std::size_t w = 0; w < label.counted.size(); ++w) label.counted[w] &= ~bits_of_goal_[g][w];
  }
}

void Labels::finish(const Label& label) {
  const std::int64_t ms = label.ms + needs_.to_end(label.place);
  if (ms >= most_ms_) return;
  most_ms_ = ms;
  std::vector<std::uint32_t> items{label.item};
  for (std::uint32_t at = label.before; at != 0; at = labels_[at].before)
    items.push_back(labels_[at].item);
  std::reverse(items.begin(), items.end());
  best_ = std::move(items);
}

/// Another label at the same exit with the same needs is at least as good; drops those worse than this.
bool Labels::is_worse(const Label& label) {
  const auto within = [](const Counted& a, const Counted& b) {
    for (std::size_t w = 0; w < a.size(); ++w)
      if ((a[w] & ~b[w]) != 0) return false;
    return true;
  };
  std::vector<std::uint32_t>& standing =
      standing_[std::uint64_t{label.needs} * needs_.exits.size() + label.place];
  std::size_t kept = 0;
  bool worse = false;
  for (const std::uint32_t other : standing) {
    Label& o = labels_[other];
    worse = worse || (o.ms <= label.ms && within(o.counted, label.counted));
    if (!worse && label.ms <= o.ms && within(label.counted, o.counted)) {
      o.dropped = true;
      continue;
    }
    standing[kept++] = other;
  }
  standing.resize(kept);
  if (!worse && standing.size() < most_compared)
    standing.push_back(static_cast<std::uint32_t>(labels_.size()));
  return worse;
}

void Labels::add(const Label& label) {
  const std::int64_t rest = needs_.rest(needed_, label.place);
  const std::int64_t bound = label.ms + label.counted_ms + rest - taken_off_;
  if (rest >= far_ms || bound >= most_ms_ || is_worse(label)) return;
  queue_.push({bound, std::accumulate(needed_.begin(), needed_.end(), 0),
               static_cast<std::uint32_t>(labels_.size())});
  labels_.push_back(label);
}

}  // namespace loopwright::circuit
