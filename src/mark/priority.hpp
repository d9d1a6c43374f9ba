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

/// What tells who gives way.
enum class Telling : std::uint8_t {
  nothing,
  stop_sign,
  give_way_sign,
  better_road,     ///< the other road is of a better class
  straight_road,   ///< it ends at one that runs straight through
  four_roads_meet  ///< at a crossroads without signs
};

/// What one arm does, and how we know. Small: a country's junctions are in memory at once.
struct ArmRule {
  Yield yield = Yield::unknown;
  road::Confidence confidence = road::Confidence::inferred;
  Telling telling = Telling::nothing;
  road::RoadClass own = road::RoadClass::road;  ///< of a road that gives way by its class or shape
  road::RoadClass other = road::RoadClass::road;  ///< the better one's
  OsmObject source;

  /// "highway=give_way", "highway=service meets highway=primary"; empty when nothing tells.
  [[nodiscard]] std::string tag() const;

  [[nodiscard]] bool yields() const { return yield == Yield::gives_way || yield == Yield::stops; }
};

/// A rule for each arm, in the order given.
std::vector<ArmRule> priorities(const Draft& draft, const road::Roads& roads, NodeId node,
                                const std::vector<JunctionArm>& arms);

/// The one arm that gives way to all others; empty when none or several do.
std::optional<std::size_t> only_minor(const std::vector<ArmRule>& rules);

}  // namespace loopwright::mark
