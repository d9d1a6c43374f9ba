// How far it is by road from the end of a stretch to other stretches: room reach's search by length.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "loopwright/reach/reach.hpp"

namespace loopwright::trace {

/// Rules: scratch for one thread; roads must outlive it.
class Router {
 public:
  /// turn_round_m: what turning round at a dead end counts as, so that no way does it lightly.
  Router(const road::Roads& roads, double turn_round_m);

  /// Searches from the end of a state's stretch, at most so many metres. `until`: as SweepLimits has it.
  void run_after(StateId from, double most_m, std::span<const StateId> until);
  /// Metres from there to the end of a state's stretch; none when it wasn't reached.
  [[nodiscard]] std::optional<double> metres_to(StateId state) const;
  /// The stretches on the way there, `from` not included. Rules: metres_to(state)
  [[nodiscard]] std::vector<StateId> way_to(StateId state) const { return sweep_.path(state); }

  /// Calls act(state) for every state of a stretch, the plain one first.
  template <class Act>
  void each_state(StretchId stretch, Act act) const {
    act(StateId{stretch.index()});
    for (const StateId copy : copies_.of(stretch)) act(copy);
  }
  [[nodiscard]] const road::Roads& roads() const { return roads_; }

 private:
  const road::Roads& roads_;
  reach::StretchCopies copies_;
  reach::Costs costs_;
  reach::Sweep sweep_;
  std::vector<reach::Seed> seeds_;
};

}  // namespace loopwright::trace
