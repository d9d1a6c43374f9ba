// The ways to the roads that a part of a lesson keeps to, and home from them.
//
//   for (const Link& link : links_from(net, state)) drive(link.states);
//
// Rules: a link drives none of the part's own roads and lasts at most the caps' minutes.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "loopwright/reach/reach.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::find {

/// What may be driven in a section, with the roads it doesn't keep to and without.
struct SectionNet {
  const road::Roads& roads;
  const reach::Backwards& backwards;
  wish::RoadsAllowed keeps_to = wish::RoadsAllowed::any;
  reach::Costs open;   ///< all roads
  reach::Costs costs;  ///< its own
  [[nodiscard]] bool is_own(StateId state) const;
};

/// Turns that may be made from a state, with the likely time of the wait and the stretch they lead into.
struct Move {
  StateId to;
  std::int64_t ms = 0;
};
std::vector<Move> moves_from(const road::Roads& roads, const reach::Costs& costs, StateId from);

/// A way that isn't a section's own, in driving order.
struct Link {
  std::vector<StateId> states;  ///< before its own roads, or behind them
  std::int64_t ms = 0;          ///< of all of these
};

/// From the end of a state to where a road of its own begins, the quickest first; an empty one where one is next.
std::vector<Link> links_from(const SectionNet& net, StateId from, std::int64_t most_ms);
/// The same from the door: seeds as reach::leaving gives them. None when the door lies on a road of its own.
std::vector<Link> links_from(const SectionNet& net, std::span<const reach::Seed> door,
                             std::int64_t most_ms);

/// Where a section leaves its own roads for a goal: the last state on them and the link behind it.
struct LinkBack {
  StateId last;
  Link link;
};
/// To the goals (as reach::arriving gives them), the quickest first.
std::vector<LinkBack> links_to(const SectionNet& net, std::span<const reach::Seed> goals,
                               std::int64_t most_ms);

}  // namespace loopwright::find
