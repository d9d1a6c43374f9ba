// Why: a road in a town, with no lamps and no limit mapped, is guessed at the national limit by its
// tags alone. Nobody drives 60 there, and a card must not suggest it.
//
// 1. A road in doubt: no service road nor motorway, up to 400 m from junction to junction (ours), its limit
//    a guess by class alone.
// 2. Streets of a town are those with a limit of at most 30 mph or 50 km/h, told or inferred. The
//    road is one too when many of them lie round it: at least 8 km to the square kilometre in the 3
//    by 3 cells of road_density.hpp (ours: Newport has 8 to 20, the villages round it in their
//    middle too, docks and lanes less); or when at each end that isn't a dead end it meets one. A road above
//    secondary, whether divided or not, only when both hold: many of these keep a higher limit through a town.
// 3. It then gets the town's rule, "check", and the reason says that neighbours told it. What was
//    settled counts as a street at the ends of others in the next round, a few rounds long, so that a
//    road cut into pieces by its junctions is followed.
// Source: Highway Code rule 124: the limit of built-up areas holds where there are street lights. That
// a town lights its streets is our guess, so the limit stays one to be checked.
#include <algorithm>
#include <vector>

#include "law_days.hpp"
#include "limits_among_streets.hpp"
#include "road_density.hpp"

namespace loopwright::mark {
namespace {

using road::LimitRule;

constexpr double longest_m = 400;
constexpr int rounds = 4;
constexpr int reach = 1;
constexpr double amid_streets_m_per_km2 = 8000;
constexpr int town_mph = 30, town_kmh = 50;

bool is_guess_by_class(const Draft& draft, const road::LimitFact& fact) {
  const bool rural = fact.rule == LimitRule::national_single ||
                     fact.rule == LimitRule::national_dual || fact.rule == LimitRule::rural ||
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

bool is_in_doubt(const Draft& draft, const road::Roads& roads, PieceId piece) {
  const road::Piece& row = roads.pieces[piece.index()];
  const bool may_be = row.road_class != road::RoadClass::service && row.length_m <= longest_m &&
                      road::rank(row.road_class) > road::rank(road::RoadClass::motorway);
  return may_be && is_guess_by_class(draft, roads.stretch(StretchId(piece, false)).limit);
}

bool lies_between_streets(const Draft& draft, const road::Roads& roads, PieceId piece) {
  const road::Piece& row = roads.pieces[piece.index()];
  return is_town_end(draft, roads, row.a, piece) && is_town_end(draft, roads, row.b, piece);
}

bool is_town_road(const Draft& draft, const road::Roads& roads, PieceId piece,
                  const RoadDensity& streets) {
  const bool amid = streets.m_per_km2(piece) >= amid_streets_m_per_km2;
  const bool between = lies_between_streets(draft, roads, piece);
  const bool is_main =
      road::rank(roads.pieces[piece.index()].road_class) < road::rank(road::RoadClass::secondary);
  return is_main ? amid && between : amid || between;
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
  const road::Roads before = draft.roads();
  const RoadDensity streets(before, reach, [&](PieceId piece) {
    return is_town_street(draft, before, StretchId(piece, false));
  });
  for (int round = 0; round < rounds; ++round) {
    const road::Roads roads = draft.roads();
    std::vector<PieceId> settled;
    for (std::size_t row = 0; row < roads.pieces.size(); ++row) {
      const PieceId piece{row};
      if (is_in_doubt(draft, roads, piece) && is_town_road(draft, roads, piece, streets))
        settled.push_back(piece);
    }
    if (settled.empty()) return;
    for (const PieceId piece : settled) settle(draft, piece);
  }
}

}  // namespace loopwright::mark
