// Branch and bound over a formulation: the bound falls until the work is used up or nothing is left open.
//
//   Tree tree({problem, network}, left);   tree.run(guide);   tree.bound();
//
// Rules: counted work only. The bound holds at every moment: it is the worst of the open nodes, of the
// nodes that could not be settled, and of the walk that has to be beaten.
#pragma once

#include <cstdint>
#include <limits>
#include <memory>
#include <span>
#include <vector>

#include "circuit/bound_branch.hpp"
#include "circuit/bound_cuts.hpp"
#include "circuit/bound_formulation.hpp"

namespace loopwright::circuit {

/// Work that is left, shared by the trees of one bound.
struct WorkLeft {
  int cut_rounds = 0, nodes = 0;
  std::int64_t work = 0;
};

/// What a tree asks while it runs.
class Guide {
 public:
  virtual ~Guide() = default;
  /// Bounds at or below are of no interest; -1: all are.
  [[nodiscard]] virtual std::int64_t to_beat() const = 0;
  /// The programme's amounts at a node, by arc; may raise to_beat().
  virtual void look(const Network& network, std::span<const double> amounts, bool whole) = 0;
};

struct Asked {
  const Problem& problem;
  const Network& network;
  std::vector<std::int64_t> most_worth =
      {};  ///< by goal, known from elsewhere; empty: nothing known
};

class Tree {
 public:
  /// Rules: all that is referred to outlives the tree.
  Tree(const Asked& asked, WorkLeft& left);

  void run(Guide& guide);

  /// No walk that meets every `least` has more value; below 0: none meets them.
  [[nodiscard]] std::int64_t bound() const { return bound_; }

 private:
  struct Change {
    int column;
    double low, high;
  };
  struct Node {
    double bound = 0;
    int number = 0;  ///< in order of making
    std::vector<Change> changes;
    std::shared_ptr<const Basis> basis;
  };
  enum class State { dropped, undecided, unfinished };

  static bool later(const Node& a, const Node& b);
  [[nodiscard]] std::int64_t floored(double bound) const;
  void apply(const Node& node);
  std::vector<Row> smoothed_cuts(bool afresh);
  State relax(Node& node, Guide& guide);
  void branch(const Node& node, Guide& guide);
  void narrow(Guide& guide);
  void add_child(const Node& node, Change change);

  Clusters clusters_;
  const Network& network_;
  ClusterNodes nodes_;
  Formulation f_;
  Programme lp_;
  Brancher brancher_;
  Cutter cutter_;
  WorkLeft& left_;
  const std::int64_t cost_;
  std::int64_t grid_ = 1;
  std::int64_t bound_ = std::numeric_limits<std::int64_t>::max();
  double unsettled_ = -1;  ///< bound of nodes without anything left to decide
  int made_ = 0;
  std::vector<Node> open_;  ///< a heap
  std::vector<double> smooth_;
  std::vector<int> changed_;
  std::vector<double> root_slopes_;
  double root_bound_ = 0;
  std::int64_t narrowed_for_ = -2;
};

}  // namespace loopwright::circuit
