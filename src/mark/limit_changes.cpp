// Where the limit changes on the road one follows.
//
// 1. A move counts when it goes on ahead (within 45 degrees) or no other road goes on. Turning off into
//    a street with another limit is the turn's lesson, not this one, also where signs ban all else: who
//    crosses a divided road a few metres askew doesn't change to its limit and back.
// 2. Both limits must come from a tag on the limit itself, and come to different numbers under the
//    newest law we know: a sign of 60 and the national limit are the same to a driver, while an old
//    30 of a Welsh street and a signed 30 are not. A bare 30 beside a 30 mph is no change: where
//    signs are in mph it is nearly always a slip for that (speed_limits.cpp).
// 3. Rings and service roads are left out. Each node is one place.
#include "limit_changes.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <string_view>

#include "law_days.hpp"
#include "loopwright/mark/rules.hpp"
#include "loopwright/road/kind_table.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;
using road::LimitConfidence;
using road::LimitFact;
using road::Movement;

constexpr int ahead_within_deg = 45;

/// Step 2; an instructor's note is as good as a tag.
bool is_told(const road::Roads& roads, const LimitFact& fact) {
  const std::string_view source = roads.text(fact.source);
  return fact.confidence == LimitConfidence::noted || source.starts_with("maxspeed") ||
         source.starts_with("source:maxspeed") || source.starts_with("zone:maxspeed");
}

bool counts(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  return roads.drivable(stretch) && (piece.flags & road::piece_flag::ring) == 0 &&
         piece.road_class != road::RoadClass::service &&
         is_told(roads, roads.stretch(stretch).limit);
}

/// Step 2, of limits on one day.
bool differ(const road::LimitOnDay& before, const road::LimitOnDay& after) {
  const bool doubtful_unit =
      before.confidence == LimitConfidence::check || after.confidence == LimitConfidence::check;
  return doubtful_unit ? before.value != after.value : before != after;
}

Confidence confidence_of(const LimitFact& fact) {
  if (fact.confidence == LimitConfidence::certain) return Confidence::certain;
  return fact.confidence == LimitConfidence::noted ? Confidence::noted : Confidence::inferred;
}

/// How many roads one may drive on into at the end of a stretch.
std::ptrdiff_t roads_on(const road::Roads& roads, StretchId from) {
  return std::ranges::count_if(roads.leaving(roads.to_node(from)), [&](StretchId to) {
    return to != from.back() && roads.drivable(to);
  });
}

}  // namespace

std::set<LimitChange> limit_changes_from(const road::Roads& roads, const road::LimitLaw& law,
                                         std::span<const StateId> states) {
  std::set<LimitChange> changes;
  for (const StateId state : states) {
    const StretchId from = roads.stretch_of(state);
    if (!counts(roads, from)) continue;
    const bool only_one = roads_on(roads, from) == 1;
    for (const road::Turn& turn : roads.turns_from(state)) {
      const StretchId to = roads.stretch_of(turn.to);
      if (to == from.back() || !counts(roads, to)) continue;
      if (!only_one && std::abs(turn.angle_deg) > ahead_within_deg) continue;
      const auto limit = [&](StretchId s) { return law.on(roads.stretch(s).limit, newest_day); };
      if (differ(limit(from), limit(to))) changes.insert({from, to});
    }
  }
  return changes;
}

road::Place place_of(const road::Roads& roads, const LimitChange& change) {
  const road::Node& node = roads.nodes[roads.to_node(change.from).index()];
  road::Place place;
  place.kind = Kind::limit_change;
  place.source = {node.osm_id, ObjectType::node, {}};
  place.at = node.at;
  place.name = roads.piece(change.to).name;
  return place;
}

road::Chance chance_of(const road::Roads& roads, const LimitChange& change) {
  const LimitFact& before = roads.stretch(change.from).limit;
  const LimitFact& after = roads.stretch(change.to).limit;
  road::Chance chance;
  chance.entry = change.from, chance.exit = change.to;
  chance.kind = Kind::limit_change;
  chance.hardness =
      static_cast<std::uint8_t>(road::hardness_of(Kind::limit_change, Movement::none));
  chance.confidence = road::less_sure(confidence_of(before), confidence_of(after));
  chance.tag =
      after.confidence == LimitConfidence::noted || before.confidence != LimitConfidence::noted
          ? after.source
          : before.source;
  chance.source = {roads.piece(change.to).way, ObjectType::way, {}};
  return chance;
}

void mark_limit_changes(Draft& draft) {
  const road::Roads roads = draft.roads();
  std::vector<StateId> states(roads.state_count());
  for (std::size_t s = 0; s < states.size(); ++s) states[s] = StateId{s};
  std::map<NodeId, PlaceId> places;
  for (const LimitChange& change : limit_changes_from(roads, draft.law, states)) {
    const NodeId node = roads.to_node(change.from);
    PlaceId& place = places[node];
    if (!place.known()) {
      place = draft.add_place(place_of(roads, change), std::span(&node, 1), {});
    }
    road::Chance chance = chance_of(roads, change);
    chance.place = place;
    draft.add_chance(chance, std::array{change.from, change.to});
  }
  draft.report.count("limit changes", static_cast<std::int64_t>(places.size()));
}

}  // namespace loopwright::mark
