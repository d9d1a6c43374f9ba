// Method: one bounded sweep over all roads. What it settles first is nearest; a state that isn't the section's
// own, beside one that is, ends a link when its way there drives none that is.
#include "find/part_links.hpp"

#include <algorithm>

#include "loopwright/wish/parts.hpp"

namespace loopwright::find {

namespace {

/// Links that are tried of each beginning; ours.
constexpr std::size_t most_links = 2;

bool leads_to_own(const SectionNet& net, StateId state) {
  const std::vector<Move> moves = moves_from(net.roads, net.costs, state);
  return std::ranges::any_of(moves, [&](const Move& move) { return net.is_own(move.to); });
}

bool drives_own(const SectionNet& net, std::span<const StateId> states) {
  return std::ranges::any_of(states, [&](StateId state) { return net.is_own(state); });
}

std::vector<Link> links_over(const SectionNet& net, std::span<const reach::Seed> seeds,
                             std::int64_t most_ms) {
  reach::Sweep sweep(net.roads);
  sweep.run(seeds, net.open, most_ms);
  std::vector<Link> links;
  for (const std::uint32_t row : sweep.settled()) {
    const StateId state{row};
    if (net.is_own(state) || !leads_to_own(net, state)) continue;
    Link link{sweep.path(state), sweep.ms(state)};
    if (drives_own(net, link.states)) continue;
    links.push_back(std::move(link));
    if (links.size() == most_links) break;
  }
  return links;
}

}  // namespace

bool SectionNet::is_own(StateId state) const {
  return wish::allows(keeps_to, roads.piece(roads.stretch_of(state)).flags);
}

std::vector<Move> moves_from(const road::Roads& roads, const reach::Costs& costs, StateId from) {
  std::vector<Move> moves;
  for (const road::Turn& turn : roads.turns_from(from)) {
    const auto row = static_cast<std::size_t>(&turn - roads.turns.data());
    const std::int32_t along = costs.along_ms(roads.stretch_of(turn.to));
    if (along < 0 || costs.is_banned(row)) continue;
    moves.push_back({turn.to, along + costs.wait_ms(turn.control)});
  }
  return moves;
}

std::vector<Link> links_from(const SectionNet& net, StateId from, std::int64_t most_ms) {
  if (leads_to_own(net, from)) return {Link{}};
  std::vector<reach::Seed> seeds;
  for (const Move& move : moves_from(net.roads, net.open, from))
    seeds.push_back({move.to, move.ms});
  return links_over(net, seeds, most_ms);
}

std::vector<Link> links_from(const SectionNet& net, std::span<const reach::Seed> door,
                             std::int64_t most_ms) {
  const bool on_own =
      std::ranges::any_of(door, [&](const reach::Seed& seed) { return net.is_own(seed.state); });
  return on_own ? std::vector<Link>{} : links_over(net, door, most_ms);
}

std::vector<LinkBack> links_to(const SectionNet& net, std::span<const reach::Seed> goals,
                               std::int64_t most_ms) {
  reach::Sweep sweep(net.roads, &net.backwards);
  sweep.run_back(goals, net.open, most_ms);
  std::vector<LinkBack> links;
  for (const std::uint32_t row : sweep.settled()) {
    const StateId state{row};
    if (net.is_own(state)) continue;
    for (const reach::Backwards::Move& move : net.backwards.into(state)) {
      const bool banned = net.costs.is_banned(move.turn);
      const bool shut = !net.costs.may_drive(net.roads.stretch_of(move.from));
      if (banned || shut || !net.is_own(move.from)) continue;
      const std::int64_t wait_ms = net.open.wait_ms(net.roads.turns[move.turn].control);
      LinkBack link{move.from, {sweep.path(state), sweep.ms(state) + wait_ms}};
      if (drives_own(net, link.link.states)) continue;
      links.push_back(std::move(link));
      if (links.size() == 2 * most_links) return links;
    }
  }
  return links;
}

}  // namespace loopwright::find
