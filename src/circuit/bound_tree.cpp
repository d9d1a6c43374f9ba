// 1. Take the open node with the greatest bound (of equals the newest). Close all when that is no better,
//    floored to the grid of values, than the walk to beat.
// 2. Solve, add violated cuts, solve again, while that moves the bound. Cuts are sought at a mean of the amounts
//    of the last rounds, not at the last ones: these jump from corner to corner, and cuts at a corner cut
//    off little (in-out separation, Ben-Ameur and Neto 2007). On a made town of 170 entries that took 23
//    rounds and 1 s in place of 87 rounds and 6 s to the same bound.
// 3. At the first node: columns that no better walk uses, by their slopes, lose their room for good.
// 4. Decide something: two nodes more, each going on from this one's basis.
#include "circuit/bound_tree.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace loopwright::circuit {

namespace {

constexpr double worth_a_round = 0.01;  // of the way to the walk to beat; ours
constexpr int rounds_at_root = 60, rounds_at_node = 6;
constexpr int slow_at_root = 5,
              slow_at_node = 2;  // rounds that move the bound less, one after the other
constexpr int idle_solves = 5;
constexpr double of_new = 0.5;              // see smoothed_cuts; measured: 0.15 and 0.3 are slower
constexpr int most_iterations = 1'000'000;  // of one solve, so that it fits the solver's int
constexpr std::size_t few_cuts = 10;        // then the amounts themselves are looked at too

std::int64_t grid_of(const Problem& problem) {
  std::int64_t grid = 0;
  for (const Group& group : problem.groups)
    for (const std::int64_t worth : group.worths) grid = std::gcd(grid, worth);
  return std::max<std::int64_t>(1, grid);
}

/// Takes the rows out of it, and adds for each goal that its worth is no more than asked.most_worth says.
std::vector<Row> rows_of(Formulation& f, const Asked& asked) {
  std::vector<Row> rows = std::move(f.rows);
  for (std::size_t goal = 0; goal < asked.most_worth.size(); ++goal) {
    if (asked.most_worth[goal] >= no_way) continue;
    const auto most = static_cast<double>(asked.most_worth[goal]);
    Row row{{}, -std::numeric_limits<double>::infinity(), most};
    for (std::size_t group = 0; group < f.worths.size(); ++group)
      if (asked.problem.groups[group].goal == goal)
        for (const int column : f.worths[group])
          row.terms.push_back({column, f.columns[column].gain});
    if (!row.terms.empty()) rows.push_back(std::move(row));
  }
  return rows;
}

}  // namespace

Tree::Tree(const Asked& asked, WorkLeft& left)
    : clusters_(nested(asked.problem)),
      network_(asked.network),
      nodes_(network_, clusters_),
      f_(formulate(asked.problem, nodes_)),
      lp_(f_.columns, rows_of(f_, asked)),
      brancher_(asked.problem, nodes_, f_),
      cutter_(nodes_, f_),
      left_(left),
      cost_(static_cast<std::int64_t>(f_.columns.size())),
      grid_(grid_of(asked.problem)) {}

bool Tree::later(const Node& a, const Node& b) {
  return a.bound != b.bound ? a.bound < b.bound : a.number < b.number;
}

std::int64_t Tree::floored(double bound) const {
  if (bound < 0) return -1;
  const double most = f_.penalty + 1;
  return static_cast<std::int64_t>(std::floor(std::min(bound, most) / static_cast<double>(grid_))) *
         grid_;
}

void Tree::apply(const Node& node) {
  for (const int c : changed_) lp_.limit(c, f_.columns[c].low, f_.columns[c].high);
  changed_.clear();
  for (const Change& change : node.changes) {
    const Column& now = lp_.columns()[change.column];
    lp_.limit(change.column, std::max(now.low, change.low), std::min(now.high, change.high));
    changed_.push_back(change.column);
  }
  if (node.basis) lp_.go_on_from(*node.basis);
}

std::vector<Row> Tree::smoothed_cuts(bool afresh) {
  const std::span<const double> now = lp_.amounts();
  if (afresh) smooth_.assign(now.begin(), now.end());
  for (std::size_t c = 0; c < smooth_.size(); ++c) smooth_[c] += of_new * (now[c] - smooth_[c]);
  std::vector<Row> cuts = cutter_.violated(smooth_);
  if (cuts.size() >= few_cuts) return cuts;
  const std::vector<Row> more = cutter_.violated(now);
  if (more.empty()) return more;
  cuts.insert(cuts.end(), more.begin(), more.end());
  return cuts;
}

Tree::State Tree::relax(Node& node, Guide& guide) {
  const bool root = node.changes.empty();
  int slow = 0;
  for (int round = 0;; ++round) {
    const double before = node.bound;
    if (left_.work <= 0) return State::unfinished;
    const double enough = static_cast<double>(guide.to_beat()) + 0.99 * static_cast<double>(grid_);
    left_.work -= cost_ * (lp_.solve({static_cast<int>(std::min<std::int64_t>(
                                          left_.work / cost_ + 1, most_iterations)),
                                      enough}) +
                           1);
    node.bound = std::min(node.bound, lp_.bound());
    if (floored(node.bound) <= guide.to_beat()) return State::dropped;
    if (!lp_.solved()) return left_.work <= 0 ? State::unfinished : State::undecided;
    const double gap = std::max(1.0, node.bound - static_cast<double>(guide.to_beat()));
    slow = before - node.bound < worth_a_round * gap ? slow + 1 : 0;
    const bool enough_rounds = slow >= (root ? slow_at_root : slow_at_node) ||
                               round >= (root ? rounds_at_root : rounds_at_node);
    if (left_.cut_rounds <= 0 ||
        (enough_rounds && brancher_.choose(lp_.amounts()).column != no_column))
      return State::undecided;
    --left_.cut_rounds;
    std::vector<Row> cuts = smoothed_cuts(round == 0);
    if (cuts.empty()) return State::undecided;
    lp_.purge(idle_solves);
    lp_.add(std::move(cuts));
  }
}

void Tree::narrow(Guide& guide) {
  if (root_slopes_.empty() || narrowed_for_ == guide.to_beat()) return;
  narrowed_for_ = guide.to_beat();
  for (std::size_t c = 0; c < f_.columns.size(); ++c) {
    Column& column = f_.columns[c];
    if (column.high <= column.low ||
        floored(root_bound_ - std::fabs(root_slopes_[c])) > narrowed_for_)
      continue;
    if (root_slopes_[c] < 0 && column.low == 0)
      column.high = 0;
    else if (root_slopes_[c] > 0 && column.high == 1)
      column.low = 1;
    else
      continue;
    changed_.push_back(static_cast<int>(c));
  }
}

void Tree::add_child(const Node& node, Change change) {
  Node child = node;
  child.number = ++made_;
  child.changes.push_back(change);
  open_.push_back(std::move(child));
  std::push_heap(open_.begin(), open_.end(), later);
}

void Tree::branch(const Node& node, Guide& guide) {
  const Branch decide = lp_.solved() ? brancher_.choose(lp_.amounts()) : Branch{};
  if (decide.column == no_column) {
    if (lp_.solved()) guide.look(network_, lp_.amounts(), true);
    if (floored(node.bound) > guide.to_beat()) unsettled_ = std::max(unsettled_, node.bound);
    return;
  }
  Node after = node;
  after.basis = std::make_shared<const Basis>(lp_.basis());
  const double down = std::floor(decide.at);
  add_child(after, {decide.column, -1, down});
  add_child(after, {decide.column, down + 1, f_.columns[decide.column].high});
}

void Tree::run(Guide& guide) {
  Node first;
  first.bound = f_.penalty;
  open_.push_back(first);
  while (!open_.empty() && floored(open_.front().bound) > guide.to_beat() &&
         floored(open_.front().bound) > floored(unsettled_) && left_.nodes > 0) {
    std::pop_heap(open_.begin(), open_.end(), later);
    Node node = std::move(open_.back());
    open_.pop_back();
    --left_.nodes;
    apply(node);
    const State state = relax(node, guide);
    if (state == State::unfinished) {
      unsettled_ = std::max(unsettled_, node.bound);
      break;
    }
    if (state == State::dropped) continue;
    if (node.changes.empty()) {
      root_slopes_ = lp_.slopes();
      root_bound_ = lp_.bound();
    }
    if (lp_.solved()) guide.look(network_, lp_.amounts(), false);
    narrow(guide);
    branch(node, guide);
  }
  std::int64_t open = open_.empty() ? -1 : floored(open_.front().bound);
  bound_ = std::max({open, floored(unsettled_), guide.to_beat()});
}

}  // namespace loopwright::circuit
