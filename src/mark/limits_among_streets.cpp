// Why: a short unclassified road in a town centre, with no lamps and no limit mapped, is guessed at
// the national limit by its tags alone. Nobody drives 60 there, and a card must not suggest it.
//
// 1. A road in doubt: not a service road nor above secondary, its limit a guess by class alone.
// 2. It is short (up to 400 m, ours), and at each end that isn't a dead end meets a street of a
//    town: one with a limit of at most 30 mph or 50 km/h.
// 3. It then gets the town's rule, "check", and the reason says that neighbours told it. What was
//    settled counts as a street in the next round, a few rounds long, so that a road cut into
//    pieces by its junctions is followed.
#include <algorithm>
#include <vector>

#include "law_days.hpp"
#include "limits_among_streets.hpp"

namespace loopwright::mark {
namespace {

using road::LimitRule;

constexpr double longest_m = 400;
constexpr int rounds = 4;
constexpr int town_mph = 30, town_kmh = 50;

bool is_guess_by_class(const Draft& draft, const road::LimitFact& fact) {
  const bool rural = fact.rule == LimitRule::national_single || fact.rule == LimitRule::rural ||
                     fact.rule == LimitRule::rural_minor;
  return rural && fact.confidence == road::LimitConfidence::check &&
         draft.text(fact.source).starts_with("highway=");
}

bool is_town_street(const Draft& draft, const road::Roads& roads, StretchId s) {
  if (roads.piece(s).road_class == road::RoadClass::service) return false;
  const road::LimitFact& fact = roads.stretch(s).limit;
  if (fact.rule == LimitRule::unknown) return false;
  const road::LimitOnDay limit = draft.law.on(fact, newest_day);
  const int most = limit.unit == SpeedUnit::mph ? town_mph : town_kmh;
  return limit.value > 0 && limit.value <= most;
}

/// True when the node is a street's, or the road ends there.
bool is_town_end(const Draft& draft, const road::Roads& roads, NodeId node, PieceId piece) {
  const auto leaving = roads.leaving(node);
  bool other = false;
  for (const StretchId s : leaving) {
    if (s.piece() == piece) continue;
    if (is_town_street(draft, roads, s)) return true;
    other = true;
  }
  return !other;
}

bool may_be_town(const Draft& draft, const road::Roads& roads, PieceId piece) {
  const road::Piece& row = roads.pieces[piece.index()];
  const int rank = road::rank(row.road_class);
  if (row.road_class == road::RoadClass::service || row.length_m > longest_m ||
      rank < road::rank(road::RoadClass::secondary)) {
    return false;
  }
  if (!is_guess_by_class(draft, roads.stretch(StretchId(piece, false)).limit)) return false;
  return is_town_end(draft, roads, row.a, piece) && is_town_end(draft, roads, row.b, piece);
}

void settle(Draft& draft, PieceId piece) {
  const bool british = draft.info.region.code.starts_with("GB-");
  for (const bool against : {false, true}) {
    road::LimitFact& fact = draft.tables.stretches[StretchId(piece, against).index()].limit;
    fact.rule = british ? LimitRule::restricted : LimitRule::urban;
    fact.source = draft.text(std::string(draft.text(fact.source)) + " among streets of a town");
  }
}

}  // namespace

void settle_limits_among_streets(Draft& draft) {
  for (int round = 0; round < rounds; ++round) {
    const road::Roads roads = draft.roads();
    std::vector<PieceId> settled;
    for (std::size_t row = 0; row < roads.pieces.size(); ++row)
      if (may_be_town(draft, roads, PieceId{row})) settled.emplace_back(row);
    if (settled.empty()) return;
    for (const PieceId piece : settled) settle(draft, piece);
  }
}

}  // namespace loopwright::mark
