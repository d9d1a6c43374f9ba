// Method:
//   1. Without "max" the value is minus the road driven twice: no more than minus what is forced
//      (forced_twice.hpp).
//   2. With "max": passes that count begin a spacing apart, so few fit into the minutes; and the circuit
//      bound over all candidates, where they are all in the passage graph. The lesser holds.
#include "find/certify.hpp"

#include <algorithm>
#include <cmath>

#include "find/counting.hpp"
#include "find/forced_twice.hpp"
#include "loopwright/wish/stops.hpp"
#include "loopwright/wish/turn_round.hpp"

namespace loopwright::find {

/// All that is wanted as "max" is passed as the passage graph has it.
bool Certifier::is_circuit() const {
  const wish::Wish& wish = hunt_.ground.wish;
  return wish::kept_for_stops_s(wish) == 0 &&
         std::ranges::all_of(wish.wants, [](const wish::Want& want) {
           // Of what a pass may lead into only some ways are candidates (joined.cpp).
           return want.count ||
                  (!want.into && road::form_of(want.kind) == road::KindForm::junction);
         });
}

std::int64_t Certifier::spacing_bound() const {
  const Caps& caps = hunt_.ground.caps;
  const std::int64_t most_ms = hunt_.high_ms + 1000 * wish::kept_for_stops_s(hunt_.ground.wish);
  std::int64_t value = 0;
  for (const wish::Want& want : hunt_.ground.wish.wants) {
    if (want.count) continue;
    const std::int64_t spacing_ms = spacing_ms_of(hunt_.ground.wish, want, caps);
    value += (most_ms / std::max<std::int64_t>(1, spacing_ms) + 1) * caps.repeat_worth.front();
  }
  return value;
}

circuit::Walk Certifier::bound(const PassageGraph& graph, const FindWork& work,
                               const circuit::Walk& known) {
  if (hunt_.ground.walls.has_learnt()) return known;
  if (!counts_worth(hunt_.ground.wish)) {
    bound_ = -std::llround(forced_twice_m(hunt_) - 1e-6);
    return known;
  }
  if (wish::welcomes_practice(hunt_.ground.wish)) return known;
  bound_ = std::min(bound_.value_or(spacing_bound()), spacing_bound());
  if (!is_circuit() || !graph.complete() || work.bound.nodes == 0) return known;
  circuit::Problem problem = graph.problem();
  // Of what must be taken only a part is in the graph; leaving it out can only raise the bound.
  for (std::size_t k = hunt_.ground.wish.wants.size(); k < problem.goals.size(); ++k)
    problem.goals[k].least = 0;
  const circuit::Walk quick =
      circuit::search(problem, {.rounds = work.quickest_rounds, .seed = 1}, known);
  const circuit::Bound found = circuit::bound(problem, work.bound, quick);
  if (!found.impossible) bound_ = std::min(*bound_, found.value);
  return found.best;
}

wish::Certificate Certifier::certificate(std::int64_t value) const {
  wish::Certificate certificate;
  certificate.value = value;
  certificate.candidates = static_cast<std::int64_t>(hunt_.candidates.size());
  if (!bound_ || *bound_ < value) return certificate;
  certificate.bound = bound_;
  certificate.state = *bound_ == value ? "best possible" : "within";
  return certificate;
}

}  // namespace loopwright::find
