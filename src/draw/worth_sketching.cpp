// Passes of the kinds that need a picture, by entry and exit; of several at one place the first that
// begins there. A way that was taken before is left out; a place inside another's way is, too.
#include <algorithm>
#include <array>
#include <set>

#include "loopwright/draw/sketch.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::draw {
namespace {

using road::Kind;

bool deserves_one(Kind kind) {
  constexpr std::array kinds{Kind::signals,        Kind::crossroads,  Kind::staggered_junction,
                             Kind::level_crossing, Kind::lanes_merge, Kind::slip_road};
  return road::meets(kind, Kind::roundabout) || road::meets(kind, Kind::mini_roundabout) ||
         std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

struct Worth {
  At at;
  int hardness = 0;
};

/// Where a slip road is to be planned for: where it leaves the main road, else where it joins one.
At slip_road_at(const road::Roads& roads, const wish::Loop& loop, std::size_t first) {
  const auto is_link = [&](std::size_t i) {
    const road::RoadClass road_class = roads.piece(loop.stretches[i].stretch).road_class;
    return road_class >= road::RoadClass::motorway_link &&
           road_class <= road::RoadClass::tertiary_link;
  };
  std::size_t last = first;
  while (last + 1 < loop.stretches.size() && is_link(last + 1)) ++last;
  const auto rank = [&](std::size_t i) {
    return road::rank(roads.piece(loop.stretches[i].stretch).road_class);
  };
  const bool leaves =
      last + 1 == loop.stretches.size() || (first > 0 && rank(first - 1) < rank(last + 1));
  if (leaves) return {first == 0 ? first : first - 1, first};
  return {last, last + 1};
}

std::vector<Worth> places_of(const road::Roads& roads, const wish::Loop& loop) {
  std::vector<Worth> all;
  for (const wish::Pass& pass : loop.passes) {
    const bool learners = wish::lies_in(pass, wish::practice_of(loop));
    if (!learners || !deserves_one(pass.kind) || pass.last >= loop.stretches.size()) continue;
    const bool slip = pass.kind == Kind::slip_road;
    const At at = slip ? slip_road_at(roads, loop, pass.first) : At{pass.first, pass.last};
    if (at.entry < at.exit) all.push_back({at, pass.hardness});
  }
  return all;
}

bool is_inside(At inner, At outer) {
  return outer.entry <= inner.entry && inner.exit <= outer.exit && !(inner == outer);
}

}  // namespace

std::vector<At> worth_sketching(const road::Roads& roads, const wish::Loop& loop) {
  std::vector<Worth> all = places_of(roads, loop), kept;
  std::stable_sort(all.begin(), all.end(),
                   [](const Worth& a, const Worth& b) { return a.at.entry < b.at.entry; });
  std::set<std::pair<StretchId, StretchId>> seen;
  for (const Worth& worth : all) {
    const bool inner = std::any_of(
        all.begin(), all.end(), [&](const Worth& other) { return is_inside(worth.at, other.at); });
    const auto way =
        std::pair(loop.stretches[worth.at.entry].stretch, loop.stretches[worth.at.exit].stretch);
    if (!inner && seen.insert(way).second) kept.push_back(worth);
  }
  std::stable_sort(kept.begin(), kept.end(),
                   [](const Worth& a, const Worth& b) { return a.hardness > b.hardness; });
  std::vector<At> places;
  for (const Worth& worth : kept) places.push_back(worth.at);
  return places;
}

}  // namespace loopwright::draw
