// Who gives way at a junction without lights: by its signs, else by what its roads look like.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "arms.hpp"

namespace loopwright::mark {

enum class Yield : std::uint8_t {
  unknown,    ///< neither signs nor shape tell
  keeps,      ///< has priority
  gives_way,  ///< give way line, mapped or inferred
  stops       ///< stop line
};

/// What one arm does, and how we know.
struct ArmRule {
  Yield yield = Yield::unknown;
  road::Confidence confidence = road::Confidence::inferred;
  std::string tag;
  OsmObject source;

  [[nodiscard]] bool yields() const { return yield == Yield::gives_way || yield == Yield::stops; }
};

/// A rule for each arm, in the order given.
std::vector<ArmRule> priorities(const Draft& draft, const road::Roads& roads, NodeId node,
                                const std::vector<JunctionArm>& arms);

/// The one arm that gives way to all others; empty when none or several do.
std::optional<std::size_t> only_minor(const std::vector<ArmRule>& rules);

}  // namespace loopwright::mark
