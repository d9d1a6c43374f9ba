// One try: stops for the counts, stops for "max", ways round to fill the minutes, improvement.
#include "find/builder.hpp"

namespace loopwright::find {

Builder::Builder(const Hunt& hunt)
    : hunt_(hunt),
      times_(hunt),
      out_(hunt.graph),
      back_(hunt.graph),
      extra_ms_(hunt.graph.size(), 0),
      used_(hunt.piece_m.size(), 0),
      seen_(hunt.piece_m.size(), 0) {}

Plan Builder::build(std::uint64_t seed, const Liking& liking) {
  dice_ = Dice(seed);
  Plan plan;
  insert_counts(plan, liking);
  insert_max(plan);
  spare_quiet_streets(plan, liking);
  fill(plan, liking);
  improve(plan, liking);
  return plan;
}

Plan Builder::build_shortest(std::uint64_t seed) {
  dice_ = Dice(seed);
  Plan plan;
  insert_counts(plan, {});
  return plan;
}

}  // namespace loopwright::find
