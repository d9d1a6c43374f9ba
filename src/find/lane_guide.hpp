// Bus lanes that a wish asks for at their hours, while a plan is being made: what the plan may become
// when time is still to be filled.
//
//   LaneGuide guide(hunt);
//   unmet(hunt, guide.hoped(plan));           // what the plan still needs
//   guide.leeway(plan).most_ms[leg];          // that may be put into a leg
//
// Rules: without such wants it costs nothing. A guide only: whether a finished drive has the verdicts is
// told by its own times (score).
// Why: whatever is put in before a lane makes the drive come later to it.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

#include "find/plan.hpp"

namespace loopwright::find {

/// How far the stops of a plan may be put off, each kept at the verdict it is there for.
struct Leeway {
  std::vector<std::int64_t> begins_ms;  ///< by leg: when it begins, likely
  std::vector<std::int64_t> most_ms;    ///< by leg: what may be put into it
  /// The first stop that comes too early: more must be put into a leg before it.
  std::optional<std::size_t> early_stop;
  std::int64_t room_ms = 0;  ///< what is left of the minutes
};

class LaneGuide {
 public:
  explicit LaneGuide(const Hunt& hunt) : hunt_(hunt) {}
  [[nodiscard]] bool idle() const { return !hunt_.with_verdicts; }

  /// The passes of a plan; one of a stop that may still come to its verdict has it already.
  [[nodiscard]] std::vector<PlacePass> hoped(const Plan& plan) const;
  /// Rules: not idle.
  [[nodiscard]] Leeway leeway(const Plan& plan) const;

 private:
  const Hunt& hunt_;
};

}  // namespace loopwright::find
