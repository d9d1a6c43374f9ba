// One try: stops for the counts, stops for "max", ways round to fill the minutes, improvement.
#include "find/builder.hpp"

#include <algorithm>

namespace loopwright::find {

Builder::Builder(const Hunt& hunt, int improvements)
    : hunt_(hunt),
      improvements_(improvements),
      times_(hunt),
      guide_(hunt),
      out_(hunt.graph),
      back_(hunt.graph),
      slow_(hunt.graph),
      extra_ms_(hunt.graph.size(), 0),
      used_(hunt.piece_m.size(), 0),
      seen_(hunt.piece_m.size(), 0) {
  const auto& wants = hunt.ground.wish.wants;
  for (std::size_t w = 0; w < wants.size(); ++w)
    if (wants[w].count)
      for (const std::uint32_t row : hunt.of_want[w])
        counted_entries_.push_back(hunt.candidates[row].path.front());
  std::sort(counted_entries_.begin(), counted_entries_.end());
  counted_entries_.erase(std::unique(counted_entries_.begin(), counted_entries_.end()),
                         counted_entries_.end());
}

Plan Builder::build(std::uint64_t seed, const Liking& liking) {
  dice_ = Dice(seed);
  Plan plan;
  insert_takes(plan);
  insert_counts(plan, liking);
  insert_max(plan);
  bring_within(plan, liking);
  improve(plan, liking);
  return plan;
}

void Builder::bring_within(Plan& plan, const Liking& liking) {
  spare_quiet_streets(plan, liking);
  fill(plan, liking);
}

Plan Builder::build_shortest(std::uint64_t seed) {
  dice_ = Dice(seed);
  Plan plan;
  insert_takes(plan);
  insert_counts(plan, {});
  return plan;
}

}  // namespace loopwright::find
