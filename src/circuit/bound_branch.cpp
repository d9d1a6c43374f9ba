// The most undecided of the first kind that has any. A cluster is undecided when something inside is counted
// in part (low) and less than one walk's worth of flow enters it (high): then neither "nothing inside is
// counted" nor "it is entered" holds of the amounts, and both sides of the branch cut them off. SEARCH.md
// measured that clusters before single places make the gap three times smaller; of clusters equally undecided
// the one with more worth inside goes first.
#include "circuit/bound_branch.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::circuit {

namespace {

constexpr double whole = 1e-5;

/// 0 … 0.5.
double off(double amount) {
  return std::fabs(amount - std::round(amount));
}

void offer(Branch& best, double& score, std::span<const double> amounts, int column) {
  if (column == no_column || off(amounts[column]) <= score) return;
  score = off(amounts[column]);
  best = {column, amounts[column]};
}

}  // namespace

Brancher::Brancher(const Problem& problem, const ClusterNodes& nodes,
                   const Formulation& formulation)
    : problem_(problem),
      nodes_(nodes),
      network_(nodes.network()),
      clusters_(nodes.clusters()),
      f_(formulation) {}

/// What flows into each cluster.
std::vector<double> Brancher::inflow(std::span<const double> amounts) const {
  std::vector<double> inflow(clusters_.all.size(), 0);
  for (std::size_t a = 0; a < network_.arcs.size(); ++a) {
    if (amounts[a] <= 0) continue;
    const std::uint32_t both = nodes_.around(network_.arcs[a]);
    for (std::uint32_t in = nodes_.around(network_.arcs[a].to); in != no_cluster && in != both;
         in = clusters_.all[in].parent)
      inflow[in] += amounts[a];
  }
  return inflow;
}

Branch Brancher::cluster(std::span<const double> amounts) const {
  std::vector<double> low(clusters_.all.size(), 0), high(clusters_.all.size(), 1),
      gain(clusters_.all.size(), 0);
  for (std::size_t group = 0; group < f_.worths.size(); ++group) {
    const std::uint32_t in = clusters_.of_group[group];
    if (in == no_cluster) continue;
    for (const int c : f_.worths[group]) gain[in] += amounts[c] * f_.columns[c].gain;
    if (!f_.worths[group].empty()) low[in] = std::max(low[in], amounts[f_.worths[group][0]]);
    const int count = f_.counts[group];
    if (count != no_column) low[in] = std::max(low[in], amounts[count] / f_.columns[count].high);
  }
  const std::vector<double> ways_in = inflow(amounts);
  Branch best;
  double score = 0;
  for (std::size_t row = 0; row < low.size(); ++row) {
    const std::uint32_t parent = clusters_.all[row].parent;
    if (parent != no_cluster) {
      low[parent] = std::max(low[parent], low[row]);
      gain[parent] += gain[row];
    }
    if (f_.visited[row] == no_column) continue;
    high[row] = std::min(1.0, ways_in[row]);
    const double undecided = std::min(low[row], 1 - high[row]);
    const double weighed = undecided * std::sqrt(1 + gain[row]);
    if (undecided > whole && weighed > score) {
      score = weighed;
      best = {f_.visited[row], 0.5};
    }
  }
  return best;
}

Branch Brancher::choose(std::span<const double> amounts) const {
  Branch best;
  double score = whole;
  for (std::size_t goal = 0; goal < f_.of_worth.size(); ++goal)
    if (problem_.goals[goal].spacing_ms > 0) offer(best, score, amounts, f_.of_worth[goal]);
  if (best.column == no_column) best = cluster(amounts);
  if (best.column == no_column)
    for (const std::vector<int>& pieces : f_.worths)
      if (!pieces.empty()) offer(best, score, amounts, pieces.front());
  for (const bool passes : {true, false})
    if (best.column == no_column)
      for (std::size_t a = 0; a < network_.arcs.size(); ++a)
        if ((network_.arcs[a].pass != no_pass) == passes)
          offer(best, score, amounts, static_cast<int>(a));
  if (best.column == no_column)
    for (const std::vector<int>& pieces : f_.worths)
      for (const int column : pieces) offer(best, score, amounts, column);
  return best;
}

}  // namespace loopwright::circuit
