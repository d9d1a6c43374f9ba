// 1. Flow: one unit leaves home; what enters a node leaves it; the arcs' times fit.
// 2. A group's passes of worth, and those that count, are no more than its arcs' flow. Pieces of worth fall,
//    so the programme takes them in order. Groups under a cap have no more of worth together.
// 3. A goal's passes of worth fit into the time at its spacing. So does their number in whole, rounded down.
// 4. Clusters (SEARCH.md's starting cuts, in fewer rows): a column says whether anything inside is counted; it
//    is at most the flow into the cluster, at most the column of the cluster around, and at least each
//    group's first pass.
// 5. Where legs are as they are, what a walk waits is a column of each cluster: the smallest that holds both ends of the leg. A
//    goal's passes of worth in a cluster are then no more than the times it is come into, and one each spacing of
//    the time driven and waited inside: between two of one stay lies a spacing, and no two such times overlap.
#include "circuit/bound_formulation.hpp"

#include <algorithm>
#include <limits>

#include "circuit/bound_inflow.hpp"

namespace loopwright::circuit {

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

class Builder {
 public:
  Builder(const Problem& problem, const ClusterNodes& nodes)
      : p_(problem), network_(nodes.network()), clusters_(nodes.clusters()), nodes_(nodes) {
    f_.worths.resize(p_.groups.size());
    f_.counts.assign(p_.groups.size(), no_column);
    f_.visited.assign(clusters_.all.size(), no_column);
    f_.of_worth.assign(p_.goals.size(), no_column);
    f_.missing.assign(p_.goals.size(), no_column);
    f_.arcs_of_group.resize(p_.groups.size());
  }

  Formulation build() {
    flow();
    for (std::uint32_t goal = 0; goal < p_.goals.size(); ++goal) goal_columns(goal);
    for (std::uint32_t group = 0; group < p_.groups.size(); ++group) group_columns(group);
    for (std::uint32_t goal = 0; goal < p_.goals.size(); ++goal) goal_rows(goal);
    cap_rows();
    places();
    cluster_rows();
    if (!wait_.empty()) spaced_rows();
    give_back_room();
    return std::move(f_);
  }

 private:
  int column(double gain, double high) {
    f_.columns.push_back({gain, 0, high});
    return static_cast<int>(f_.columns.size()) - 1;
  }

  /// What the rows grew by and don't need: they stay for as long as bounds are looked for, beside the solver's own.
  void give_back_room() {
    f_.columns.shrink_to_fit();
    for (Row& row : f_.rows) row.terms.shrink_to_fit();
  }

  void flow() {
    std::vector<Row> at(network_.node_count);
    Row time{{}, -infinite, static_cast<double>(p_.most_ms) / ms_in_row};
    for (std::uint32_t row = 0; row < network_.arcs.size(); ++row) {
      const Arc& arc = network_.arcs[row];
      const int c = column(0, static_cast<double>(arc.most));
      at[arc.from].terms.push_back({c, -1});
      if (arc.to != network_.end) at[arc.to].terms.push_back({c, 1});
      if (arc.ms != 0) time.terms.push_back({c, static_cast<double>(arc.ms) / ms_in_row});
      if (arc.pass == no_pass) continue;
      for (const std::uint32_t group : p_.passes[arc.pass].groups)
        f_.arcs_of_group[group].push_back(row);
    }
    if (waits_count())
      for (std::size_t row = 0; row < clusters_.all.size(); ++row) {
        wait_.push_back(column(0, time.high));
        time.terms.push_back({wait_.back(), 1});
      }
    at[network_.home].low = at[network_.home].high = -1;
    for (std::uint32_t node = 0; node < network_.end; ++node)
      if (!at[node].terms.empty() || node == network_.home) f_.rows.push_back(std::move(at[node]));
    f_.rows.push_back(std::move(time));
  }

  /// Most passes of worth for a goal that fit into the time, by its spacing alone.
  [[nodiscard]] std::int64_t spaced_in(std::uint32_t goal) const {
    std::int64_t first = no_way, last = no_way, pieces = 0;
    for (const Group& group : p_.groups)
      if (group.goal == goal) pieces += static_cast<std::int64_t>(group.worths.size());
    for (const Pass& pass : p_.passes)
      for (const std::uint32_t group : pass.groups) {
        if (p_.groups[group].goal != goal) continue;
        first = std::min(first, p_.leg(p_.home(), pass.entry));
        last = std::min(last, pass.inner_ms + p_.leg(pass.exit, p_.end()));
      }
    const std::int64_t spacing = p_.goals[goal].spacing_ms;
    if (first >= no_way || last >= no_way || first + last > p_.most_ms) return 0;
    return spacing == 0 ? pieces : std::min(pieces, (p_.most_ms - first - last) / spacing + 1);
  }

  void goal_columns(std::uint32_t goal) {
    std::int64_t most_worth = 0;
    for (const Group& group : p_.groups)
      if (group.goal == goal && !group.worths.empty())
        most_worth = std::max(most_worth, group.worths.front());
    if (most_worth > 0) {
      const std::int64_t most = spaced_in(goal);
      f_.of_worth[goal] = column(0, static_cast<double>(most));
      f_.penalty += static_cast<double>(most) * static_cast<double>(most_worth);
    }
    if (p_.goals[goal].least > 0) f_.missing[goal] = column(0, p_.goals[goal].least);
  }

  void group_columns(std::uint32_t row) {
    const Group& group = p_.groups[row];
    Row worth{{}, -infinite, 0}, count{{}, -infinite, 0};
    for (const std::int64_t gain : group.worths) {
      if (gain <= 0) break;
      f_.worths[row].push_back(column(static_cast<double>(gain), 1));
      worth.terms.push_back({f_.worths[row].back(), 1});
      if (f_.worths[row].size() > 1)
        f_.later.push_back(
            {{{f_.worths[row].back(), 1}, {f_.worths[row].front(), -1}}, -infinite, 0});
    }
    const int most = std::min(group.most_counted, p_.goals[group.goal].least);
    if (most > 0) {
      f_.counts[row] = column(0, most);
      count.terms.push_back({f_.counts[row], 1});
    }
    for (Row* each : {&worth, &count}) {
      if (each->terms.empty()) continue;
      for (const std::uint32_t arc : f_.arcs_of_group[row])
        each->terms.push_back({static_cast<int>(arc), -1});
      f_.rows.push_back(std::move(*each));
    }
  }

  void goal_rows(std::uint32_t goal) {
    const double least = p_.goals[goal].least;
    Row worth{{{f_.of_worth[goal], -1}}, 0, 0}, count{{{f_.missing[goal], 1}}, least, infinite};
    for (std::uint32_t group = 0; group < p_.groups.size(); ++group) {
      if (p_.groups[group].goal != goal) continue;
      for (const int c : f_.worths[group]) worth.terms.push_back({c, 1});
      if (f_.counts[group] != no_column) count.terms.push_back({f_.counts[group], 1});
    }
    if (f_.of_worth[goal] != no_column) f_.rows.push_back(std::move(worth));
    if (f_.missing[goal] == no_column) return;
    f_.rows.push_back(std::move(count));
    f_.columns[f_.missing[goal]].gain = -(2 * f_.penalty + 1);
  }

  void cap_rows() {
    std::vector<Row> rows;
    for (const int most : p_.caps) rows.push_back({{}, -infinite, static_cast<double>(most)});
    for (std::uint32_t group = 0; group < p_.groups.size(); ++group)
      if (p_.groups[group].cap != no_cap)
        for (const int c : f_.worths[group]) rows[p_.groups[group].cap].terms.push_back({c, 1});
    for (Row& row : rows)
      if (!row.terms.empty()) f_.rows.push_back(std::move(row));
  }

  void places() {
    f_.place_of_group = clusters_.of_group;
    f_.groups_of_place.resize(clusters_.place_count);
    f_.arcs_of_place.resize(clusters_.place_count);
    for (std::uint32_t group = 0; group < p_.groups.size(); ++group)
      if (clusters_.of_group[group] < clusters_.place_count)
        f_.groups_of_place[clusters_.of_group[group]].push_back(group);
    std::vector<std::uint32_t> place(p_.entry_count, 0);
    for (std::uint32_t row = 0; row < clusters_.place_count; ++row)
      for (const std::uint32_t entry : clusters_.all[row].entries) place[entry] = row;
    for (std::uint32_t a = 0; a < network_.arcs.size(); ++a)
      if (network_.arcs[a].pass != no_pass)
        f_.arcs_of_place[place[network_.arcs[a].from]].push_back(a);
  }

  void cluster_rows() {
    Inflow ways_in(network_);
    for (std::uint32_t group = 0; group < p_.groups.size(); ++group)
      if (!f_.worths[group].empty() || f_.counts[group] != no_column) group_in_cluster(group);
    for (std::uint32_t row = 0; row < clusters_.all.size(); ++row) {
      if (f_.visited[row] == no_column) continue;
      Row inflow{{{f_.visited[row], 1}}, -infinite, 0};
      const std::vector<std::uint8_t> nodes = nodes_.of(row);
      ways_in.add(nodes, -1, inflow);
      f_.rows.push_back(std::move(inflow));
      time_inside(row, nodes);
      const std::uint32_t parent = clusters_.all[row].parent;
      if (parent != no_cluster)
        f_.rows.push_back({{{f_.visited[row], 1}, {f_.visited[parent], -1}}, -infinite, 0});
    }
  }

  /// A walk in the cluster is there no longer than the time less the way there and back.
  void time_inside(std::uint32_t row, const std::vector<std::uint8_t>& nodes) {
    std::int64_t first = no_way, last = no_way;
    for (const Pass& pass : p_.passes) {
      if (pass.groups.empty() || nodes[pass.entry] == 0) continue;
      first = std::min(first, p_.leg(p_.home(), pass.entry));
      last = std::min(last, p_.leg(pass.exit, p_.end()));
    }
    if (first >= no_way || last >= no_way) return;
    const std::int64_t inside = std::max<std::int64_t>(0, p_.most_ms - first - last);
    const double most = static_cast<double>(inside) / ms_in_row;
    f_.in_clusters.push_back({row, 1, {{{f_.visited[row], -most}}, -infinite, 0}});
  }

  /// Some goal is spaced, and the network doesn't have its spacing built in.
  [[nodiscard]] bool waits_count() const {
    return !network_.spaced && std::any_of(p_.goals.begin(), p_.goals.end(),
                                           [](const Goal& goal) { return goal.spacing_ms > 0; });
  }

  /// The time driven (by its arcs) and waited inside, less the way there: to how many spacings it comes, and one more each time.
  [[nodiscard]] Row spacings_inside(std::uint32_t cluster, double spacing, Inflow& ways_in) const {
    Row row{{}, -infinite, 0};
    ways_in.add(nodes_.of(cluster), -1, row);
    for (std::uint32_t inner = 0; inner <= cluster; ++inner)
      if (lies_in(inner, cluster)) row.terms.push_back({wait_[inner], -1 / spacing});
    return row;
  }

  [[nodiscard]] bool lies_in(std::uint32_t inner, std::uint32_t outer) const {
    while (inner != no_cluster && inner < outer) inner = clusters_.all[inner].parent;
    return inner == outer;
  }

  void spaced_rows() {
    Inflow ways_in(network_);
    for (std::uint32_t goal = 0; goal < p_.goals.size(); ++goal) {
      if (p_.goals[goal].spacing_ms == 0) continue;
      std::vector<std::vector<int>> passes(clusters_.all.size());
      for (std::uint32_t group = 0; group < p_.groups.size(); ++group)
        if (p_.groups[group].goal == goal)
          for (std::uint32_t in = clusters_.of_group[group]; in != no_cluster;
               in = clusters_.all[in].parent)
            passes[in].insert(passes[in].end(), f_.worths[group].begin(), f_.worths[group].end());
      const double spacing = static_cast<double>(p_.goals[goal].spacing_ms) / ms_in_row;
      for (std::uint32_t cluster = 0; cluster < clusters_.all.size(); ++cluster) {
        if (passes[cluster].size() < 2) continue;
        Row row = spacings_inside(cluster, spacing, ways_in);
        for (const int pass : passes[cluster]) row.terms.push_back({pass, 1});
        f_.in_clusters.push_back({cluster, -1 / spacing, std::move(row)});
      }
    }
  }

  void group_in_cluster(std::uint32_t group) {
    const std::uint32_t in = clusters_.of_group[group];
    if (in == no_cluster) return;
    for (std::uint32_t row = in; row != no_cluster; row = clusters_.all[row].parent)
      if (f_.visited[row] == no_column) f_.visited[row] = column(0, 1);
    const int visited = f_.visited[in], count = f_.counts[group];
    if (!f_.worths[group].empty())
      f_.rows.push_back({{{f_.worths[group].front(), 1}, {visited, -1}}, -infinite, 0});
    if (count != no_column)
      f_.rows.push_back({{{count, 1}, {visited, -f_.columns[count].high}}, -infinite, 0});
  }

  const Problem& p_;
  const Network& network_;
  const Clusters& clusters_;
  const ClusterNodes& nodes_;
  std::vector<int> wait_;  ///< by cluster: column of the minutes waited in it; or empty
  Formulation f_;
};

}  // namespace

Formulation formulate(const Problem& problem, const ClusterNodes& nodes) {
  return Builder(problem, nodes).build();
}

}  // namespace loopwright::circuit
