// The programme of a network: which columns there are, and the rows it starts with.
//
//   Formulation f = formulate(problem, nodes);
//   Programme lp(f.columns, f.rows);
//
// Rules: whole amounts of the columns that keep the rows and are connected to home are walks; every walk of
// counted passes gives such amounts that gain its value, less `penalty` for each pass missing from a goal.
#pragma once

#include <cstdint>
#include <vector>

#include "circuit/bound_cluster_nodes.hpp"
#include "circuit/bound_programme.hpp"

namespace loopwright::circuit {

inline constexpr int no_column = -1;

inline constexpr double ms_in_row = 60'000;  ///< times stand in minutes, so that factors are near 1

/// A row with the arcs inside a cluster, which are too many to be written down of every cluster.
struct ClusterRow {
  std::uint32_t cluster = 0;
  double per_minute = 0;  ///< factor of each minute of the arcs inside
  Row rest;               ///< limit and other terms; a column may be met again
};

struct Formulation {
  std::vector<Column> columns;  ///< the network's arcs first, one each
  std::vector<Row> rows;
  std::vector<Row> later;  ///< rows that every walk keeps, to be added when amounts don't
  std::vector<ClusterRow> in_clusters;  ///< the same
  std::vector<std::vector<int>>
      worths;                 ///< by group: columns of its first, second, … pass of worth
  std::vector<int> counts;    ///< by group: column of passes towards `least`, or none
  std::vector<int> visited;   ///< by cluster: 1 when something inside has worth or counts, or none
  std::vector<int> of_worth;  ///< by goal: passes of worth, or none
  std::vector<int> missing;   ///< by goal: passes missing from `least`, or none
  std::vector<std::vector<std::uint32_t>> arcs_of_group;    ///< that drive a pass of it
  std::vector<std::uint32_t> place_of_group;                ///< or a greater cluster, or none
  std::vector<std::vector<std::uint32_t>> groups_of_place;  ///< that lie in it whole
  std::vector<std::vector<std::uint32_t>> arcs_of_place;    ///< that drive a pass from there
  double penalty = 0;                                       ///< more than any walk's value
};

Formulation formulate(const Problem& problem, const ClusterNodes& nodes);

}  // namespace loopwright::circuit
