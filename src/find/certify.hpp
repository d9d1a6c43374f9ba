// How good the best loop of a wish can be at most.
//
//   Certifier certifier(hunt, {});
//   walk = certifier.bound(graph, work, walk);   // may hand back a better walk
//   loop.certificate = certifier.certificate(loop value);
//
// Rules: a bound holds for every drive of the wish inside its window: it leaves out what can only lessen
// the value (road driven twice, caps, hours of bus lanes, streets and turns that are shut for a part of the lesson).
// No bound is claimed of what is welcome, which is no pass of the problem. Once the search keeps off what a drive met
// shut, which another might pass in time, nothing new is bounded: what was known before still holds.
// That of the circuit only where all that is wanted as "max" is of junctions and no stop is planned: a run
// or a roadside chance at the door is no candidate, yet may be passed, and a stop spaces passes for nothing.
#pragma once

#include <optional>

#include "find/find_work.hpp"
#include "find/passage_graph.hpp"
#include "loopwright/circuit/circuit.hpp"

namespace loopwright::find {

class Certifier {
 public:
  /// known: a bound of the same wish, found before some of its walls were.
  Certifier(const Hunt& hunt, std::optional<std::int64_t> known) : hunt_(hunt), bound_(known) {}

  /// Bounds the value, never worse than before; returns a walk at least as good as the one known. Rules: graph is of
  /// the hunt.
  circuit::Walk bound(const PassageGraph& graph, const FindWork& work, const circuit::Walk& known);

  [[nodiscard]] wish::Certificate certificate(std::int64_t value) const;
  [[nodiscard]] std::optional<std::int64_t> best_known() const { return bound_; }

 private:
  [[nodiscard]] bool is_circuit() const;
  [[nodiscard]] std::int64_t spacing_bound() const;
  const Hunt& hunt_;
  std::optional<std::int64_t> bound_;
};

}  // namespace loopwright::find
