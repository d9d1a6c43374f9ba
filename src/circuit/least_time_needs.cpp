#include "circuit/least_time_needs.hpp"

#include <algorithm>

namespace loopwright::circuit {

namespace {

constexpr std::size_t most_choices_of = 4;     // counts of an item, all choices of which are moves
constexpr std::size_t most_table = 3'000'000;  // numbers in the table

/// Row of a value in a list, at its end when it is new.
std::uint32_t row_in(std::vector<std::uint32_t>& list, std::uint32_t value) {
  const auto found = std::find(list.begin(), list.end(), value);
  const auto row = static_cast<std::uint32_t>(found - list.begin());
  if (found == list.end()) list.push_back(value);
  return row;
}

}  // namespace

Needs::Needs(const Items& its) : items(its), multiplier(its.problem.groups.size(), 0) {
  for (const Group& group : items.problem.groups)
    most.push_back(std::min(group.most_counted, items.problem.goals[group.goal].least));
  for (std::uint32_t item = 0; item < items.items.size(); ++item) add_moves(item);
  exits.push_back(items.problem.home());
  fill_legs();
  lay_out();
}

void Needs::add_moves(std::uint32_t item) {
  const Item& row = items.items[item];
  Move move;
  move.item = item;
  move.inner_ms = row.inner_ms;
  for (const Counting& c : items.counts_of(row))
    if (items.problem.goals[c.goal].least > 0) move.counts.push_back({c.group, c.goal});
  if (move.counts.empty()) return;
  move.entry = row_in(entries, row.entry);
  move.place = row_in(exits, row.exit);
  whole.push_back(move);
  const std::size_t counts = move.counts.size();
  if (counts > most_choices_of) {
    moves.push_back(move);
    return;
  }
  for (unsigned choice = 1; choice < 1U << counts; ++choice) {
    Move some = move;
    some.counts.clear();
    for (std::size_t i = 0; i < counts; ++i)
      if ((choice >> i & 1U) != 0) some.counts.push_back(move.counts[i]);
    moves.push_back(some);
  }
}

void Needs::fill_legs() {
  for (const std::uint32_t exit : exits) {
    for (const std::uint32_t entry : entries) legs_.push_back(items.leg(exit, entry));
    to_end_.push_back(items.leg(exit, items.problem.end()));
  }
  by_entry_.resize(entries.size());
}

void Needs::lay_out() {
  const std::vector<Goal>& goals = items.problem.goals;
  stride_.assign(goals.size(), 0);
  for (std::size_t g = 0; g < goals.size(); ++g) {
    const std::size_t levels = static_cast<std::size_t>(goals[g].least) + 1;
    if (levels == 1 || levels > most_table / rows_ / exits.size()) continue;
    stride_[g] = rows_;
    rows_ *= levels;
  }
  table_.resize(rows_ * exits.size());
}

std::size_t Needs::row_of(const std::vector<int>& needed) const {
  std::size_t row = 0;
  for (std::size_t g = 0; g < needed.size(); ++g)
    row += stride_[g] * static_cast<std::size_t>(needed[g]);
  return row;
}

std::vector<int> Needs::needed_in(std::size_t row) const {
  std::vector<int> needed(stride_.size(), 0);
  for (std::size_t g = 0; g < stride_.size(); ++g)
    if (stride_[g] > 0)
      needed[g] = static_cast<int>(row / stride_[g] %
                                   (static_cast<std::size_t>(items.problem.goals[g].least) + 1));
  return needed;
}

std::size_t Needs::row_after(std::size_t row, const std::vector<int>& needed,
                             const Move& move) const {
  for (std::size_t i = 0; i < move.counts.size(); ++i) {
    const std::uint32_t goal = move.counts[i].goal;
    int before = 0;
    for (std::size_t j = 0; j < i; ++j) before += move.counts[j].goal == goal ? 1 : 0;
    if (needed[goal] > before) row -= stride_[goal];
  }
  return row;
}

std::int64_t Needs::cost(const Move& move) const {
  std::int64_t ms = move.inner_ms;
  for (const Move::Count& c : move.counts) ms += multiplier[c.group];
  return ms;
}

void Needs::reckon() {
  std::copy(to_end_.begin(), to_end_.end(), table_.begin());
  for (std::size_t row = 1; row < rows_; ++row) reckon_row(row, needed_in(row));
}

void Needs::reckon_row(std::size_t row, const std::vector<int>& needed) {
  std::fill(by_entry_.begin(), by_entry_.end(), no_way);
  for (const Move& move : moves) {
    const std::size_t after = row_after(row, needed, move);
    if (after == row) continue;
    by_entry_[move.entry] =
        std::min(by_entry_[move.entry], cost(move) + table_[after * exits.size() + move.place]);
  }
  for (std::size_t place = 0; place < exits.size(); ++place) {
    const std::int64_t* legs = legs_.data() + place * entries.size();
    std::int64_t best = no_way;
    for (std::size_t e = 0; e < by_entry_.size(); ++e)
      best = std::min(best, legs[e] + by_entry_[e]);
    table_[row * exits.size() + place] = best;
  }
}

std::int64_t Needs::rest(const std::vector<int>& needed, std::uint32_t place) const {
  return table_[row_of(needed) * exits.size() + place];
}

std::int64_t Needs::taken_off() const {
  std::int64_t ms = 0;
  for (std::size_t g = 0; g < most.size(); ++g) ms += multiplier[g] * most[g];
  return ms;
}

std::int64_t Needs::steps() const {
  return static_cast<std::int64_t>(rows_ * (moves.size() + exits.size() * entries.size()));
}

std::vector<std::int64_t> Needs::best_counts() const {
  std::vector<std::int64_t> counts(most.size(), 0);
  std::uint32_t place = home();
  for (std::size_t row = rows_ - 1; row > 0;) {
    const std::vector<int> needed = needed_in(row);
    const std::int64_t best = table_[row * exits.size() + place];
    const auto leads_on = [&](const Move& move) {
      const std::size_t after = row_after(row, needed, move);
      return after != row &&
             leg(place, move.entry) + cost(move) + table_[after * exits.size() + move.place] ==
                 best;
    };
    const auto move = std::find_if(moves.begin(), moves.end(), leads_on);
    if (best >= far_ms || move == moves.end()) break;
    for (const Move::Count& c : move->counts) ++counts[c.group];
    row = row_after(row, needed, *move);
    place = move->place;
  }
  return counts;
}

}  // namespace loopwright::circuit
