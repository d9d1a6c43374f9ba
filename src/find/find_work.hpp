// How much work each effort of looking for loops takes.
//
//   const FindWork work = work_of(effort);
//
// Rules: work is counted (tries, rounds, labels, vertices settled), never timed, so the same wish gets the same loops
// on any machine. `tools/bench search` prints what it comes to, in milliseconds.
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "find/more_worth.hpp"
#include "find/passage_graph.hpp"
#include "loopwright/circuit/circuit.hpp"
#include "loopwright/find/find.hpp"

namespace loopwright::find {

/// So many of the best tries are driven anew part by part (more_worth.hpp).
struct WorthStep {
  std::size_t tries = 0;
  MoreWorth::Widths widths;
};

/// How much work finding and bounding may take.
struct FindWork {
  /// Plans without a walk, once a walk has led to a good one; fewer when as many as fit are wanted, which is
  /// what walks are for.
  int tries = 0, tries_for_most = 0;
  int tries_without = 0;     ///< when no walk has, or the clock shuts streets
  bool until_good = false;   ///< of these no more than lead to a good one
  int tries_when_unmet = 0;  ///< more, when none of these is good
  int walks = 1;             ///< looked for, one after the other (walks.hpp)
  int most_walks = 1;        ///< when none of these is good
  int walk_rounds = 0;       ///< of the search of each
  int improvements = 0;      ///< of each plan (builder.hpp)
  std::size_t driven_less_again =
      0;  ///< of the best tries, each with so many searches (less_again.hpp)
  int less_again_searches = 0;
  std::vector<WorthStep> worth_more = {};  ///< one after the other
  std::size_t picked = 0;  ///< candidates for a want that plans without a walk pick among
  PassageGraph::Work legs = {}, legs_for_most = {};  ///< the latter when as many as fit are wanted
  int quickest_rounds = 0;  ///< of a walk along the quickest legs, to close the bound's tree sooner
  circuit::BoundWork bound;
};
FindWork work_of(Effort effort);

}  // namespace loopwright::find
