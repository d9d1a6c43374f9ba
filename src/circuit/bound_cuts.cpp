// For a set S of nodes without home and the end, passes P, and columns c1 … cK that stand for at most K passes of P:
//   c1 + … + cK ≤ flow of P's arcs outside S + K · inflow(S)
// An arc is outside S when neither of its ends is in S. Valid: a walk that drives P inside S enters S.
// With a cluster whose entries all lie in S the column "something in the cluster is counted" (K = 1) stands
// for all its groups at once.
// 1. The formulation's later rows are looked through.
// 2. Sets that the amounts hold together are tried.
// 3. For each place, the sets of the smallest cuts between home and its passes, both the one nearest to home
//    and the one nearest to the place, are tried.
// 4. The same for groups that spread over places or whose passes lead straight to an entry, and for all pieces of a
//    group together.
#include "circuit/bound_cuts.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>

#include "circuit/bound_flow.hpp"
#include "circuit/bound_shrink.hpp"

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

double minutes_of(const Arc& arc) {
  return static_cast<double>(arc.ms) / ms_in_row;
}

/// Terms of the same column become one.
Row each_column_once(Row row) {
  std::sort(row.terms.begin(), row.terms.end(),
            [](const Term& a, const Term& b) { return a.column < b.column; });
  std::vector<Term> terms;
  for (const Term& term : row.terms)
    if (!terms.empty() && terms.back().column == term.column)
      terms.back().factor += term.factor;
    else
      terms.push_back(term);
  row.terms = std::move(terms);
  return row;
}

/// What may be too much: some columns, their sum, how many passes they stand for at most, and these.
struct Claim {
  std::vector<int> columns;
  double sum;
  double most;
  const std::vector<std::uint32_t>& arcs;
};

class Separator {
 public:
  Separator(const ClusterNodes& nodes, const Formulation& formulation, Inflow& inflow,
            std::span<const double> amounts)
      : nodes_(nodes),
        network_(nodes.network()),
        inflow_(inflow),
        f_(formulation),
        amounts_(amounts),
        clusters_(nodes.clusters()),
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
    for (std::size_t place = 0; place < f_.arcs_of_place.size(); ++place)
      counted_.push_back(counted_in(place));
  }

  std::vector<Row> run() {
    known_rows();
    rows_in_clusters();
    for (const std::vector<std::uint32_t>& set : held_together(network_, amounts_)) {
      std::vector<std::uint8_t> nodes(network_.node_count, 0);
      for (const std::uint32_t node : set) nodes[node] = 1;
      try_clusters(nodes);
    }
    for (std::size_t place = 0; place < counted_.size(); ++place)
      look({{f_.visited[place]}, counted_[place], 1, f_.arcs_of_place[place]});
    for (std::uint32_t group = 0; group < f_.worths.size(); ++group) {
      const std::vector<int>& worths = f_.worths[group];
      const std::vector<std::uint32_t>& arcs = f_.arcs_of_group[group];
      const bool apart =
          f_.place_of_group[group] >= f_.arcs_of_place.size() || goes_straight_on(arcs);
      if (!worths.empty() && apart) look({{worths.front()}, amounts_[worths.front()], 1, arcs});
      if (worths.size() > 1) {
        double sum = 0;
        for (const int c : worths) sum += amounts_[c];
        look({worths, sum, static_cast<double>(worths.size()), arcs});
      }
      const int count = f_.counts[group];
      if (count != no_column) look({{count}, amounts_[count], f_.columns[count].high, arcs});
    }
    std::stable_sort(cuts_.begin(), cuts_.end(),
                     [](const Cut& a, const Cut& b) { return a.violation > b.violation; });
    std::vector<Row> rows;
    for (Cut& cut : cuts_)
      if (rows.size() < most_rows) rows.push_back(std::move(cut.row));
    return rows;
  }

 private:
  /// Some pass leads straight to an entry, so that its place may be come to and yet this group not.
  [[nodiscard]] bool goes_straight_on(const std::vector<std::uint32_t>& arcs) const {
    return std::ranges::any_of(arcs, [&](std::uint32_t a) {
      return network_.arcs[a].to < network_.entry_count && amounts_[a] > least_violation;
    });
  }

  void known_rows() {
    for (const Row& row : f_.later) {
      double over = -row.high;
      for (const Term& term : row.terms) over += term.factor * amounts_[term.column];
      if (over > least_violation) cuts_.push_back({over, row});
    }
  }

  void rows_in_clusters() {
    const std::vector<double> minutes = minutes_inside();
    for (const ClusterRow& row : f_.in_clusters) {
      double over = row.per_minute * minutes[row.cluster] - row.rest.high;
      for (const Term& term : row.rest.terms) over += term.factor * amounts_[term.column];
      if (over > least_violation) cuts_.push_back({over, whole_row(row)});
    }
  }

  /// By cluster, what is driven on its arcs.
  [[nodiscard]] std::vector<double> minutes_inside() const {
    std::vector<double> minutes(clusters_.all.size(), 0);
    for (std::size_t a = 0; a < network_.arcs.size(); ++a) {
      if (amounts_[a] <= 0) continue;
      const std::uint32_t in = nodes_.around(network_.arcs[a]);
      if (in != no_cluster) minutes[in] += amounts_[a] * minutes_of(network_.arcs[a]);
    }
    for (std::uint32_t row = 0; row < minutes.size(); ++row)
      if (clusters_.all[row].parent != no_cluster)
        minutes[clusters_.all[row].parent] += minutes[row];
    return minutes;
  }

  [[nodiscard]] Row whole_row(const ClusterRow& of) const {
    Row row = of.rest;
    for (const std::uint32_t a : nodes_.arcs_inside(of.cluster))
      if (network_.arcs[a].ms != 0)
        row.terms.push_back({static_cast<int>(a), of.per_minute * minutes_of(network_.arcs[a])});
    return each_column_once(std::move(row));
  }

  /// As much of one walk as the place is surely visited.
  [[nodiscard]] double counted_in(std::size_t place) const {
    double most = 0;
    for (const std::uint32_t group : f_.groups_of_place[place]) {
      if (!f_.worths[group].empty()) most = std::max(most, amounts_[f_.worths[group].front()]);
      const int count = f_.counts[group];
      if (count != no_column) most = std::max(most, amounts_[count] / f_.columns[count].high);
    }
    return most;
  }

  void look(const Claim& claim) {
    const double sum = claim.sum / claim.most;
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
    for (const std::uint32_t a : claim.arcs) {
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

  /// The greatest cluster inside that holds the place most counted against the flow into the set.
  bool try_clusters(const std::vector<std::uint8_t>& nodes) {
    std::vector<std::size_t> inside(clusters_.all.size(), 0);
    std::uint32_t most = no_cluster;
    for (std::uint32_t row = 0; row < clusters_.all.size(); ++row) {
      if (row < clusters_.place_count)
        for (const std::uint32_t entry : clusters_.all[row].entries) inside[row] += nodes[entry];
      if (clusters_.all[row].parent != no_cluster) inside[clusters_.all[row].parent] += inside[row];
      if (row < clusters_.place_count && whole(row, inside) && f_.visited[row] != no_column &&
          (most == no_cluster || counted_[row] > counted_[most]))
        most = row;
    }
    if (most == no_cluster || counted_[most] < least_violation) return false;
    const double sum = counted_[most];
    while (clusters_.all[most].parent != no_cluster && whole(clusters_.all[most].parent, inside))
      most = clusters_.all[most].parent;
    if (!tried_.insert(nodes).second) return true;
    static const std::vector<std::uint32_t> none;
    try_row({{f_.visited[most]}, sum, 1, none}, nodes);
    return true;
  }

  [[nodiscard]] bool whole(std::uint32_t row, const std::vector<std::size_t>& inside) const {
    return inside[row] == clusters_.all[row].entries.size();
  }

  void try_set(const Claim& claim, std::vector<std::uint8_t>& nodes) {
    nodes[network_.end] = 0;  // nothing enters through it
    nodes.resize(network_.node_count);
    if (claim.most > 1 || !try_clusters(nodes)) try_row(claim, nodes);
  }

  void try_row(const Claim& claim, const std::vector<std::uint8_t>& nodes) {
    Cut cut{claim.sum, {{}, -infinite, 0}};
    for (const int c : claim.columns) cut.row.terms.push_back({c, 1});
    for (const std::uint32_t a : claim.arcs)
      if (nodes[network_.arcs[a].from] == 0 && nodes[network_.arcs[a].to] == 0)
        cut.row.terms.push_back({static_cast<int>(a), -1});
    const std::size_t flows = claim.columns.size();
    inflow_.add(nodes, -claim.most, cut.row);
    for (std::size_t t = flows; t < cut.row.terms.size(); ++t)
      cut.violation += cut.row.terms[t].factor * amounts_[cut.row.terms[t].column];
    cut.violation /= claim.most;
    if (cut.violation > least_violation / 2) cuts_.push_back(std::move(cut));
  }

  const ClusterNodes& nodes_;
  const Network& network_;
  Inflow& inflow_;
  const Formulation& f_;
  std::span<const double> amounts_;
  const Clusters& clusters_;
  Flow flow_;
  std::vector<std::uint32_t> flow_arc_, to_group_, aimed_;
  std::vector<std::int64_t> shares_ = std::vector<std::int64_t>(network_.entry_count, 0);
  std::vector<double> counted_;                ///< by place
  std::set<std::vector<std::uint8_t>> tried_;  ///< sets, with clusters
  std::vector<Cut> cuts_;
};

}  // namespace

Cutter::Cutter(const ClusterNodes& nodes, const Formulation& formulation)
    : nodes_(nodes), formulation_(formulation), inflow_(nodes.network()) {}

std::vector<Row> Cutter::violated(std::span<const double> amounts) {
  return Separator(nodes_, formulation_, inflow_, amounts).run();
}

}  // namespace loopwright::circuit
