// Where the limit changes on the road one follows.
//
// 1. A move counts when it goes on ahead (within 45 degrees) or is the only one there is. Turning
//    off into a street with another limit is the turn's lesson, not this one.
// 2. Both limits must come from a tag on the limit itself, and come to different numbers under the
//    newest law we know: a sign of 60 and the national limit are the same to a driver, while an old
//    30 of a Welsh street and a signed 30 are not.
// 3. Rings and service roads are left out. Each node is one place.
#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string_view>

#include "law_days.hpp"
#include "loopwright/mark/rules.hpp"
#include "loopwright/road/kind_table.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::LimitFact;
using road::Movement;

constexpr int ahead_within_deg = 45;

class LimitChanges {
 public:
  explicit LimitChanges(Draft& draft) : draft_(draft), roads_(draft.roads()) {}
  void find();

 private:
  struct Change {
    StretchId from, to;
    auto operator<=>(const Change&) const = default;
  };
  void look_at(StateId state);
  [[nodiscard]] bool counts(StretchId stretch) const;
  [[nodiscard]] bool comes_from_tag(const LimitFact& fact) const;
  [[nodiscard]] bool differ(const LimitFact& a, const LimitFact& b) const;
  PlaceId place_of(const Change& change);
  void add(const Change& change);

  Draft& draft_;
  road::Roads roads_;
  std::set<Change> changes_;
  std::map<NodeId, PlaceId> places_;
};

bool LimitChanges::counts(StretchId stretch) const {
  const road::Piece& piece = roads_.piece(stretch);
  return roads_.drivable(stretch) && (piece.flags & road::piece_flag::ring) == 0 &&
         piece.road_class != road::RoadClass::service &&
         comes_from_tag(roads_.stretch(stretch).limit);
}

bool LimitChanges::comes_from_tag(const LimitFact& fact) const {
  const std::string_view source = roads_.text(fact.source);
  return source.starts_with("maxspeed") || source.starts_with("source:maxspeed") ||
         source.starts_with("zone:maxspeed");
}

bool LimitChanges::differ(const LimitFact& a, const LimitFact& b) const {
  return draft_.law.on(a, newest_day) != draft_.law.on(b, newest_day);
}

void LimitChanges::look_at(StateId state) {
  const StretchId from = roads_.stretch_of(state);
  if (!counts(from)) return;
  const auto goes_on = [&](const road::Turn& turn) {
    return roads_.stretch_of(turn.to) != from.back();
  };
  const auto turns = roads_.turns_from(state);
  const bool only_one = std::ranges::count_if(turns, goes_on) == 1;
  for (const road::Turn& turn : turns) {
    const StretchId to = roads_.stretch_of(turn.to);
    if (!goes_on(turn) || !counts(to)) continue;
    if (!only_one && std::abs(turn.angle_deg) > ahead_within_deg) continue;
    if (differ(roads_.stretch(from).limit, roads_.stretch(to).limit)) changes_.insert({from, to});
  }
}

PlaceId LimitChanges::place_of(const Change& change) {
  const NodeId node = roads_.to_node(change.from);
  PlaceId& place = places_[node];
  if (place.known()) return place;
  road::Place row;
  row.kind = Kind::limit_change;
  row.source = {roads_.nodes[node.index()].osm_id, ObjectType::node, {}};
  row.at = roads_.nodes[node.index()].at;
  row.name = roads_.piece(change.to).name;
  place = draft_.add_place(row, std::span(&node, 1), {});
  return place;
}

void LimitChanges::add(const Change& change) {
  const LimitFact& before = roads_.stretch(change.from).limit;
  const LimitFact& after = roads_.stretch(change.to).limit;
  const auto is_certain = [](const LimitFact& fact) {
    return fact.confidence == road::LimitConfidence::certain;
  };
  road::Chance chance;
  chance.place = place_of(change);
  chance.entry = change.from, chance.exit = change.to;
  chance.kind = Kind::limit_change;
  chance.hardness =
      static_cast<std::uint8_t>(road::hardness_of(Kind::limit_change, Movement::none));
  if (!is_certain(before) || !is_certain(after)) chance.confidence = road::Confidence::inferred;
  chance.tag = after.source;
  chance.source = {roads_.piece(change.to).way, ObjectType::way, {}};
  draft_.add_chance(chance, std::array{change.from, change.to});
}

void LimitChanges::find() {
  for (std::size_t s = 0; s < roads_.state_count(); ++s) look_at(StateId{s});
  for (const Change& change : changes_) add(change);
  draft_.report.count("limit changes", static_cast<std::int64_t>(places_.size()));
}

}  // namespace

void mark_limit_changes(Draft& draft) {
  LimitChanges(draft).find();
}

}  // namespace loopwright::mark
