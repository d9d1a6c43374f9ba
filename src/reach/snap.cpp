// Snapping to the roads.
//   1. Candidate pieces come from the area's grid.
//   2. The nearest drivable one wins; plain service roads only when nothing else is near, since a
//      door is rather on the street than on the yard behind it.
//   3. Equal distances go to the lower piece number.
#include <algorithm>

#include "loopwright/reach/reach.hpp"

namespace loopwright::reach {

namespace {

bool can_start_on(const road::Roads& roads, PieceId piece) {
  return roads.drivable(StretchId(piece, false)) || roads.drivable(StretchId(piece, true));
}

bool is_service(const road::Roads& roads, PieceId piece) {
  return roads.pieces[piece.index()].road_class == road::RoadClass::service;
}

/// Nearest piece within max_m for which wanted(piece) holds.
template <class Wanted>
std::optional<Snap> nearest(const road::Roads& roads, Point at, double max_m, Wanted wanted) {
  std::optional<Snap> best;
  for (const PieceId piece : road::pieces_near(roads, at, max_m)) {
    if (!can_start_on(roads, piece) || !wanted(piece)) continue;
    const Foot foot = nearest_on_line(roads.shape_of(piece), at);
    if (foot.off_m > max_m || (best && foot.off_m >= best->off_m)) continue;
    const double along = std::clamp(foot.along_m, 0.0, roads.pieces[piece.index()].length_m);
    best = Snap{piece, along, foot.off_m, foot.at};
  }
  return best;
}

/// Metres driven on the stretch before the snapped place is reached.
double metres_before(const road::Roads& roads, StretchId stretch, const Snap& snap) {
  return stretch.against() ? roads.piece(stretch).length_m - snap.along_m : snap.along_m;
}

}  // namespace

std::optional<Snap> snap_home(const road::Roads& roads, Point at, double max_m) {
  if (auto street = nearest(roads, at, max_m, [&](PieceId p) { return !is_service(roads, p); }))
    return street;
  return nearest(roads, at, max_m, [](PieceId) { return true; });
}

std::optional<Snap> nearest_road(const road::Roads& roads, Point at) {
  for (const double radius_m : {500.0, 2000.0, 20000.0})
    if (auto found = nearest(roads, at, radius_m, [](PieceId) { return true; })) return found;
  return std::nullopt;
}

std::vector<Seed> leaving(const road::Roads& roads, const pace::Pace& pace, const Snap& snap) {
  std::vector<Seed> seeds;
  for (const bool against : {false, true}) {
    const StretchId s(snap.piece, against);
    if (!roads.drivable(s)) continue;
    const double from_m = metres_before(roads, s, snap);
    seeds.push_back(
        {StateId{s.index()}, pace.along_part(s, from_m, roads.piece(s).length_m).likely_ms});
  }
  return seeds;
}

std::vector<Seed> arriving(const road::Roads& roads, const pace::Pace& pace, const Snap& snap) {
  std::vector<Seed> seeds;
  for (const bool against : {false, true}) {
    const StretchId s(snap.piece, against);
    if (!roads.drivable(s)) continue;
    const std::int64_t ms = pace.along_part(s, 0, metres_before(roads, s, snap)).likely_ms;
    for (const StateId state : states_of(roads, s)) seeds.push_back({state, ms});
  }
  return seeds;
}

}  // namespace loopwright::reach
