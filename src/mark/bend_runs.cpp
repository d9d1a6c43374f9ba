// Bends that don't let one drive at the limit.
//
// 1. Asked of roads limited to 40 mph or 60 km/h at least: below, corners are those of a town. Not
//    of slip roads and of one-way roads round islands, which bend by design; where the limit is a
//    mere guess, only in open country (open_country.cpp).
// 2. A piece belongs when at least half of it lies in bends too sharp for its limit (bends.cpp). A
//    single bend of a long straight road makes no run.
// 3. It is winding besides, which caps the speed the times reckon with, when the same holds of
//    bends that can't be driven faster than that cap: 37 mph (src/rules/pace.txt).
// Inferred always: a drawn line is no survey. Figures of steps 1 and 2 are ours.
#include <algorithm>
#include <string>

#include "bends.hpp"
#include "law_days.hpp"
#include "open_country.hpp"
#include "shape_runs.hpp"
#include "units.hpp"

namespace loopwright::mark {
namespace {

constexpr double least_mph = 40, least_kmh = 60, winding_mph = 37;
constexpr double least_share = 0.5, rounding = 0.99;

bool is_fast(const Draft& draft, double mps) {
  const bool miles = draft.info.region.unit == SpeedUnit::mph;
  return mps >= rounding * (miles ? least_mph * mps_per_mph : least_kmh * mps_per_kmh);
}

/// Slip roads, and roads round islands.
bool bends_by_design(const road::Piece& piece) {
  constexpr std::uint32_t either_side = road::piece_flag::dual | road::piece_flag::dual_inferred;
  const bool one_way = (piece.flags & road::piece_flag::one_way) != 0;
  return (one_way && (piece.flags & either_side) == 0) ||
         road::name(piece.road_class).ends_with("_link");
}

bool is_guessed(const Draft& draft, PieceId id) {
  const auto& fact = draft.tables.stretches[StretchId{id, false}.index()].limit;
  return fact.confidence == road::LimitConfidence::check;
}

bool bends_too_much(const Draft& draft, const road::Roads& roads, PieceId id, double mps) {
  const double radius = least_radius_m(mps);
  const RoadLine line = road_line(draft, roads, id, lengthening_for_bends(radius));
  return share_bending(line, radius) >= least_share;
}

}  // namespace

double limit_mps(const Draft& draft, PieceId id) {
  double fastest = 0;
  for (const bool against : {false, true}) {
    const auto& fact = draft.tables.stretches[StretchId{id, against}.index()].limit;
    fastest = std::max(fastest, draft.law.on(fact, newest_day).metres_per_second());
  }
  return fastest;
}

std::vector<RunMember> bends_members(Draft& draft) {
  const road::Roads roads = draft.roads();
  const OpenCountry country(roads);
  const TextId text = draft.text("bends sharper than the limit allows");
  std::vector<RunMember> members;
  const auto bends = [&](PieceId id) {
    const double limit = limit_mps(draft, id);
    if (!is_fast(draft, limit) || bends_by_design(roads.pieces[id.index()])) return false;
    if (is_guessed(draft, id) && !country.holds(id)) return false;
    return bends_too_much(draft, roads, id, limit);
  };
  for_each_road_that(draft, bends, [&](PieceId id) {
    add_both_ways(draft, members,
                  {{id, false}, road::Kind::bends, road::Confidence::inferred, text});
  });
  return members;
}

void mark_winding(Draft& draft) {
  const road::Roads roads = draft.roads();
  const auto winds = [&](PieceId id) {
    return is_fast(draft, limit_mps(draft, id)) &&
           bends_too_much(draft, roads, id, winding_mph * mps_per_mph);
  };
  for_each_road_that(draft, winds, [&](PieceId id) {
    draft.tables.pieces[id.index()].flags |= road::piece_flag::winding;
  });
}

}  // namespace loopwright::mark
