// How good the best loop of a wish can be at most.
//
//   Certifier certifier(hunt);
//   walk = certifier.bound(graph, work, walk);   // may hand back a better walk
//   loop.certificate = certifier.certificate(loop value);
//
// Rules: a bound holds for every drive of the wish inside its window: it leaves out what can only lessen
// the value (road driven twice, caps, hours of bus lanes). No bound is claimed
//   - when streets or turns are open for a part of the lesson only: the search then keeps off some that a
//     drive might pass in time;
//   - of what is welcome, which is no pass of the problem.
// That of the circuit only where all that is wanted as "max" is of junctions and no stop is planned: a run
// or a roadside chance at the door is no candidate, yet may be passed, and a stop spaces passes for nothing.
#pragma once

#include <optional>

#include "find/passage_graph.hpp"
#include "loopwright/circuit/circuit.hpp"
#include "loopwright/find/find.hpp"

namespace loopwright::find {

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
  /// Of the best tries, in narrow parts, and of the best of these in wide ones (more_worth.hpp).
  std::size_t worth_more = 0, worth_most = 0;
  std::size_t picked = 0;  ///< candidates for a want that plans without a walk pick among
  /// Vertices that all searches for legs may settle (passage_graph.hpp); when as many as fit are wanted.
  std::uint64_t settled = 0, settled_for_most = 0;
  circuit::BoundWork bound;
};
FindWork work_of(Effort effort);

class Certifier {
 public:
  explicit Certifier(const Hunt& hunt) : hunt_(hunt) {}

  /// Bounds the value, never worse than before; returns a walk at least as good as the one known. Rules: graph is of
  /// the hunt.
  circuit::Walk bound(const PassageGraph& graph, const circuit::BoundWork& work,
                      const circuit::Walk& known);

  [[nodiscard]] wish::Certificate certificate(std::int64_t value) const;

 private:
  [[nodiscard]] bool is_circuit() const;
  [[nodiscard]] std::int64_t spacing_bound() const;
  const Hunt& hunt_;
  std::optional<std::int64_t> bound_;
};

}  // namespace loopwright::find
