// For a set S of nodes without home, and columns c1 … of one group of which each is at most 1 in a walk:
//   c ≤ flow of the group's arcs outside S + inflow(S)          (one of them)
//   c1 + … + cK ≤ flow of the group's arcs outside S + K · inflow(S)
// An arc is outside S when neither of its ends is in S. Valid: a walk that passes the group inside S enters S.
// 1. A second piece of worth is taken only with the first: c_k ≤ c_1.
// 2. For each group that has an amount, the set S of the smallest cut between home and its arcs, both the cut
//    nearest to home and the one nearest to the group.
#include "circuit/bound_cuts.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "circuit/bound_flow.hpp"

namespace loopwright::circuit {

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double least_violation = 0.01;  // ours: less moves the bound by less than it costs
constexpr std::size_t most_rows = 200;
constexpr double unit = 1 << 24;  // of capacity, for a flow of one

struct Cut {
  double violation;
  Row row;
};

/// What of a group may be too much: some columns, and how many passes they stand for at most.
struct Claim {
  std::uint32_t group;
  std::vector<int> columns;
  double most;
};

class Separator {
 public:
  Separator(const Network& network, const Formulation& formulation, std::span<const double> amounts)
      : network_(network),
        f_(formulation),
        amounts_(amounts),
        flow_(network_.node_count + 1),
        flow_arc_(network_.arcs.size(), 0) {
    for (std::uint32_t a = 0; a < network_.arcs.size(); ++a) {
      const std::int64_t capacity = std::llround(amounts_[a] * unit);
      if (capacity <= 0) continue;
      flow_arc_[a] = flow_.add(network_.arcs[a].from, network_.arcs[a].to, capacity);
    }
    to_group_.resize(network_.entry_count, 0);
    for (std::uint32_t e = 0; e < network_.entry_count; ++e)
      to_group_[e] = flow_.add(e, network_.node_count, 0);
  }

  std::vector<Row> run() {
    for (std::uint32_t group = 0; group < f_.worths.size(); ++group) {
      pieces_in_order(group);
      const std::vector<int>& worths = f_.worths[group];
      if (!worths.empty()) look({group, {worths.front()}, 1});
      if (worths.size() > 1) look({group, worths, static_cast<double>(worths.size())});
      if (f_.counts[group] != no_column)
        look({group, {f_.counts[group]}, f_.columns[f_.counts[group]].high});
    }
    std::stable_sort(cuts_.begin(), cuts_.end(),
                     [](const Cut& a, const Cut& b) { return a.violation > b.violation; });
    std::vector<Row> rows;
    for (Cut& cut : cuts_)
      if (rows.size() < most_rows) rows.push_back(std::move(cut.row));
    return rows;
  }

 private:
  void pieces_in_order(std::uint32_t group) {
    const std::vector<int>& worths = f_.worths[group];
    for (std::size_t k = 1; k < worths.size(); ++k) {
      const double over = amounts_[worths[k]] - amounts_[worths[0]];
      if (over > least_violation)
        cuts_.push_back({over, {{{worths[k], 1}, {worths[0], -1}}, -infinite, 0}});
    }
  }

  void look(const Claim& claim) {
    double sum = 0;
    for (const int c : claim.columns) sum += amounts_[c];
    sum /= claim.most;
    if (sum < least_violation) return;
    aim(claim);
    const auto enough = static_cast<std::int64_t>((sum - least_violation) * unit);
    if (flow_.run(network_.home, network_.node_count, enough) < enough) {
      std::vector<std::uint8_t> far = flow_.beyond_source(), near = flow_.before_sink();
      try_set(claim, far);
      if (near != far) try_set(claim, near);
    }
    restore();
  }

  /// Leads the group's arcs to the sink, at their share of the claim.
  void aim(const Claim& claim) {
    for (const std::uint32_t a : f_.arcs_of_group[claim.group]) {
      const std::int64_t capacity = std::llround(amounts_[a] * unit);
      if (capacity <= 0) continue;
      if (claim.most == 1) flow_.set(flow_arc_[a], 0);
      const std::uint32_t entry = network_.arcs[a].from;
      shares_[entry] += static_cast<std::int64_t>(static_cast<double>(capacity) / claim.most);
      flow_.set(to_group_[entry], shares_[entry]);
      aimed_.push_back(a);
    }
  }

  void restore() {
    for (const std::uint32_t a : aimed_) {
      flow_.set(flow_arc_[a], std::llround(amounts_[a] * unit));
      shares_[network_.arcs[a].from] = 0;
      flow_.set(to_group_[network_.arcs[a].from], 0);
    }
    aimed_.clear();
  }

  void try_set(const Claim& claim, const std::vector<std::uint8_t>& nodes) {
    Cut cut{0, {{}, -infinite, 0}};
    for (const int c : claim.columns) cut.row.terms.push_back({c, 1});
    for (const std::uint32_t a : f_.arcs_of_group[claim.group])
      if (nodes[network_.arcs[a].from] == 0 && nodes[network_.arcs[a].to] == 0)
        cut.row.terms.push_back({static_cast<int>(a), -1});
    add_inflow(network_, nodes, -claim.most, cut.row);
    for (const Term& term : cut.row.terms) cut.violation += term.factor * amounts_[term.column];
    cut.violation /= claim.most;
    if (cut.violation > least_violation / 2) cuts_.push_back(std::move(cut));
  }

  const Network& network_;
  const Formulation& f_;
  std::span<const double> amounts_;
  Flow flow_;
  std::vector<std::uint32_t> flow_arc_, to_group_, aimed_;
  std::vector<std::int64_t> shares_ = std::vector<std::int64_t>(network_.entry_count, 0);
  std::vector<Cut> cuts_;
};

}  // namespace

std::vector<Row> violated_cuts(const Network& network, const Formulation& formulation,
                               std::span<const double> amounts) {
  return Separator(network, formulation, amounts).run();
}

}  // namespace loopwright::circuit
