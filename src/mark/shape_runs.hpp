// Runs of road told by shape, heights and what stands beside the road: each function gives the
// stretches that belong to one kind, in order, each once.
//
// Rules: private to mark. Need the piece facts. Service roads and rings belong to none.
#pragma once

#include <vector>

#include "loopwright/base/in_parts.hpp"
#include "run_kinds.hpp"

namespace loopwright::mark {

std::vector<RunMember> meeting_traffic_members(Draft& draft);
std::vector<RunMember> country_road_members(Draft& draft);
std::vector<RunMember> bends_members(Draft& draft);
std::vector<RunMember> brow_members(Draft& draft);
std::vector<RunMember> downhill_members(Draft& draft);

/// Sets piece_flag::winding; needs the limits only.
void mark_winding(Draft& draft);

/// The faster of both directions' limits under the newest law.
double limit_mps(const Draft& draft, PieceId piece);

/// True when the piece may belong to a run of these.
inline bool may_be_run(const road::Piece& piece) {
  const bool ring = (piece.flags & road::piece_flag::ring) != 0;
  return !ring && piece.road_class != road::RoadClass::service;
}

/// Calls f(piece) for each that may belong to a run of these, in order.
template <class F>
void for_each_road(const Draft& draft, F&& f) {
  for (std::size_t p = 0; p < draft.tables.pieces.size(); ++p)
    if (may_be_run(draft.tables.pieces[p])) f(PieceId{p});
}

/// Calls f(piece) for each of these for which holds(piece), in order; two threads ask holds.
template <class Holds, class F>
void for_each_road_that(const Draft& draft, const Holds& holds, const F& f) {
  const auto asked = [&](std::size_t row) {
    return static_cast<char>(may_be_run(draft.tables.pieces[row]) && holds(PieceId{row}));
  };
  each_in_order(draft.tables.pieces.size(), asked, [&](std::size_t row, char yes) {
    if (yes != 0) f(PieceId{row});
  });
}

/// Adds a fact of a stretch, when that may be driven.
inline void add_if_drivable(const Draft& draft, std::vector<RunMember>& members, RunMember fact) {
  const std::uint32_t flags = draft.tables.stretches[fact.stretch.index()].flags;
  if ((flags & road::stretch_flag::drivable) != 0) members.push_back(fact);
}

/// Adds a fact of a stretch and of the way back; the stretch given runs along the way.
inline void add_both_ways(const Draft& draft, std::vector<RunMember>& members, RunMember fact) {
  add_if_drivable(draft, members, fact);
  fact.stretch = fact.stretch.back();
  add_if_drivable(draft, members, fact);
}

}  // namespace loopwright::mark
