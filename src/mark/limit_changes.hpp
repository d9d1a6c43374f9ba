// Moves over which the limit changes, found for all roads or only where a note changed a limit.
//
// Rules: private to mark.
#pragma once

#include <compare>
#include <set>
#include <span>

#include "loopwright/road/roads.hpp"

namespace loopwright::mark {

struct LimitChange {
  StretchId from, to;
  auto operator<=>(const LimitChange&) const = default;
};

/// Of the moves out of these states.
std::set<LimitChange> limit_changes_from(const road::Roads& roads, const road::LimitLaw& law,
                                         std::span<const StateId> states);

/// The node it happens at, as a place.
road::Place place_of(const road::Roads& roads, const LimitChange& change);

/// What it is worth; its place is left to the caller.
road::Chance chance_of(const road::Roads& roads, const LimitChange& change);

}  // namespace loopwright::mark
