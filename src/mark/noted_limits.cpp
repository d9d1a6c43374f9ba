// 1. Every chance of a limit change from or to a changed stretch goes.
// 2. The moves into and out of these stretches are looked at as when the map was read
//    (limit_changes.cpp); each node where one remains is a new place.
#include "noted_limits.hpp"

#include <algorithm>
#include <array>
#include <map>

#include "limit_changes.hpp"

namespace loopwright::mark {
namespace {

/// The changed stretches and those that lead to them, in order.
std::vector<StateId> states_round(const road::Roads& roads, std::span<const StretchId> changed) {
  std::vector<StateId> states;
  for (const StretchId s : changed) {
    states.push_back(StateId{s.index()});
    for (const StretchId away : roads.leaving(roads.from_node(s))) {
      states.push_back(StateId{away.back().index()});
    }
  }
  std::ranges::sort(states);
  states.erase(std::unique(states.begin(), states.end()), states.end());
  return states;
}

}  // namespace

void change_limit_changes(Overlay& over, const road::LimitLaw& law,
                          std::span<const StretchId> changed) {
  const auto is_changed = [&](StretchId s) { return std::ranges::binary_search(changed, s); };
  const std::vector<StateId> states = states_round(over.base(), changed);
  for (const StateId state : states) {
    for (const road::Chance& chance : over.base().chances_from(StretchId{state.index()})) {
      if (chance.kind != road::Kind::limit_change) continue;
      if (is_changed(chance.entry) || is_changed(chance.exit)) over.take_chance(chance);
    }
  }
  std::map<NodeId, PlaceId> places;
  for (const LimitChange& change : limit_changes_from(over.roads(), law, states)) {
    if (!is_changed(change.from) && !is_changed(change.to)) continue;
    const NodeId node = over.base().to_node(change.from);
    PlaceId& place = places[node];
    if (!place.known()) {
      place = over.add_place(place_of(over.roads(), change), std::span(&node, 1), {});
    }
    road::Chance chance = chance_of(over.roads(), change);
    chance.place = place;
    over.add_chance(chance, std::array{change.from, change.to});
  }
}

}  // namespace loopwright::mark
