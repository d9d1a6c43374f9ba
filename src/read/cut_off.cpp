// 1. Find the strongly connected components of the states.
// 2. Measure each by the road in it, one way of a piece counted once.
// 3. The longest stays, and every other of at least 20 km (an island with roads of its own is a
//    town to somebody). What belongs to none of these is legal to drive but leads to no lesson:
//    one couldn't get in, or not get home.
// 4. Turns from and into what was shut are dropped, and each way that lost something is reported.
#include "cut_off.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "components.hpp"

namespace loopwright::read {
namespace {

constexpr double least_island_m = 20'000;  // our choice: half an hour's driving without repeats

std::vector<double> road_in_each(const road::Roads& roads,
                                 const std::vector<std::uint32_t>& component) {
  std::vector<std::pair<std::uint32_t, PieceId>> parts;
  for (std::size_t s = 0; s < roads.state_count(); ++s) {
    const StretchId stretch = roads.stretch_of(StateId{s});
    if (roads.drivable(stretch)) parts.emplace_back(component[s], stretch.piece());
  }
  std::ranges::sort(parts);
  parts.erase(std::unique(parts.begin(), parts.end()), parts.end());
  std::vector<double> metres;
  for (const auto& [number, piece] : parts) {
    metres.resize(std::max<std::size_t>(metres.size(), number + 1U));
    metres[number] += roads.pieces[piece.index()].length_m;
  }
  return metres;
}

void drop_turns_of_shut(road::Tables& tables, const road::Roads& roads) {
  std::vector<road::Turn> turns;
  std::vector<std::uint32_t> first{0};
  for (std::size_t s = 0; s < roads.state_count(); ++s) {
    const StateId state{s};
    for (const road::Turn& turn : roads.turns_from(state)) {
      if (roads.drivable(roads.stretch_of(state)) && roads.drivable(roads.stretch_of(turn.to))) {
        turns.push_back(turn);
      }
    }
    first.push_back(static_cast<std::uint32_t>(turns.size()));
  }
  tables.turns = std::move(turns);
  tables.turn_first = std::move(first);
}

/// One oddity for each way of which something was cut off, with how much.
void report_cut_off(mark::Draft& draft) {
  const std::vector<road::Piece>& pieces = draft.tables.pieces;
  for (std::size_t begin = 0, end = 0; begin < pieces.size(); begin = end) {
    double cut_m = 0;
    for (end = begin; end < pieces.size() && pieces[end].way == pieces[begin].way; ++end)
      for (const bool against : {false, true}) {
        const StretchId s(PieceId{end}, against);
        if ((draft.tables.stretches[s.index()].flags & road::stretch_flag::cut_off) != 0)
          cut_m += pieces[end].length_m;
      }
    if (cut_m > 0)
      draft.report.odd({pieces[begin].way, ObjectType::way}, "road can't be driven into and out of",
                       std::to_string(std::lround(cut_m)) + " m, each direction counted");
  }
}

}  // namespace

void shut_cut_off(mark::Draft& draft) {
  const road::Roads roads = draft.roads();
  const std::vector<std::uint32_t> component = strong_components(roads);
  const std::vector<double> metres = road_in_each(roads, component);
  if (metres.empty()) return;
  const double longest = *std::ranges::max_element(metres);
  std::vector<bool> stays(roads.stretch_count(), false);
  for (std::size_t s = 0; s < roads.state_count(); ++s) {
    const double road_m = component[s] < metres.size() ? metres[component[s]] : 0;
    if (road_m >= std::min(longest, least_island_m)) {
      stays[roads.stretch_of(StateId{s}).index()] = true;
    }
  }
  for (std::size_t s = 0; s < stays.size(); ++s) {
    std::uint32_t& flags = draft.tables.stretches[s].flags;
    if (stays[s] || (flags & road::stretch_flag::drivable) == 0) continue;
    flags = (flags & ~road::stretch_flag::drivable) | road::stretch_flag::cut_off;
    draft.report.count("directions cut off: can't be driven into and out of");
  }
  drop_turns_of_shut(draft.tables, roads);
  report_cut_off(draft);
}

}  // namespace loopwright::read
