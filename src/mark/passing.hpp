// The ways through a junction-like place, and what each is worth as practice.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

/// A place while it is looked at. Both ordered, each once.
struct Spot {
  std::vector<NodeId> nodes;
  std::vector<PieceId> inside;

  void tidy();                   ///< brings both in order
  void take(const Spot& other);  ///< adds another's, in order
  [[nodiscard]] bool holds(NodeId node) const;
  [[nodiscard]] bool holds(PieceId piece) const;
};

using Path = std::vector<StretchId>;

/// The turn from a state into a stretch; null when there is none.
const road::Turn* turn_into(const road::Roads& roads, StateId from, StretchId to);

/// True when all stretches may be driven and each turn is legal.
bool is_legal(const road::Roads& roads, std::span<const StretchId> path);

/// Every legal way through: an entry from outside, stretches inside, an exit that isn't the entry
/// driven back. The shortest for each entry and exit, ordered by them.
std::vector<Path> ways_through(const road::Roads& roads, const Spot& spot);

/// True when at least two ends of road that is no service road meet at a place's nodes.
bool is_on_road(const road::Roads& roads, const Spot& spot);

/// True when a part of the way is a service road.
bool on_service_road(const road::Roads& roads, std::span<const StretchId> path);

/// What one chance says beside its path.
struct Claim {
  road::Movement movement = road::Movement::none;
  int exit_number = 0;
  road::Confidence confidence = road::Confidence::certain;
  std::string_view tag;
  OsmObject source;
  std::optional<road::Kind> kind = {};  ///< a special form of the place's kind; else its own
};

/// Adds the chance of a place for one way through it.
void add_passing(Draft& draft, PlaceId place, const Path& path, const Claim& claim);

OsmObject node_object(const road::Roads& roads, NodeId node);
OsmObject way_object(std::int64_t id);

/// The mean of the nodes' positions.
Point middle_of(const road::Roads& roads, std::span<const NodeId> nodes);

/// The movement that is as hard where one drives on the left as this one is on the given side.
road::Movement as_on_the_left(road::Movement movement, Side side);

/// Left or right for a sharp turn too: a junction isn't a place to turn back.
road::Movement turn_movement(double heading_change_deg);

}  // namespace loopwright::mark
