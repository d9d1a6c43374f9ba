// What to decide next, where the programme's amounts are not whole.
#pragma once

#include <span>
#include <vector>

#include "circuit/bound_formulation.hpp"

namespace loopwright::circuit {

struct Branch {
  int column = no_column;  ///< none: all that matters is whole
  double at = 0;           ///< at most ⌊at⌋ on one side, at least ⌊at⌋ + 1 on the other
};

class Brancher {
 public:
  /// Rules: all outlive it.
  Brancher(const Problem& problem, const ClusterNodes& nodes, const Formulation& formulation);

  /// Goals' numbers of worth where they are spaced, then clusters, groups, passes, legs.
  [[nodiscard]] Branch choose(std::span<const double> amounts) const;

 private:
  [[nodiscard]] Branch cluster(std::span<const double> amounts) const;
  [[nodiscard]] std::vector<double> inflow(std::span<const double> amounts) const;

  const Problem& problem_;
  const ClusterNodes& nodes_;
  const Network& network_;
  const Clusters& clusters_;
  const Formulation& f_;
};

}  // namespace loopwright::circuit
