// Runs of road: narrow roads, 20 zones, one-way streets, dual carriageways, bus lanes …
//
// 1. The members of each family of kinds (run_kinds.cpp) hang together where pieces share a node;
//    a group with less road than the kind needs for a pass keeps nothing.
// 2. Each other group is a place, and each member a fact with that place. Narrow and single-track
//    roads are one run; it goes by single-track when that much of it is.
// 3. A chance is a way into a run: a legal turn from a stretch outside it to one inside, and then
//    the straightest way on inside until it is long enough. When the straightest ends too soon, the
//    next straightest is tried; a stretch is tried once. One chance for each first stretch.
#include <algorithm>
#include <cmath>
#include <set>
#include <unordered_map>

#include "connected.hpp"
#include "loopwright/road/kind_table.hpp"
#include "run_kinds.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;
using road::Movement;

std::uint8_t hardness_byte(Kind kind) {
  return static_cast<std::uint8_t>(road::hardness_of(kind, Movement::none));
}

/// The runs of one family: places and facts first, then the ways into them.
class Runs {
 public:
  Runs(Draft& draft, const RunFamily& family)
      : draft_(draft), family_(family), mask_(road::with_special_forms(family.kind)) {}
  void add_places();
  void add_chances();

 private:
  [[nodiscard]] std::vector<PieceId> pieces() const;
  [[nodiscard]] double length_of(const PieceGroup& group, Kind kind) const;
  void add_place(const PieceGroup& group);
  [[nodiscard]] const RunMember* member(StretchId stretch) const;
  [[nodiscard]] bool inside(StretchId stretch) const {
    return (draft_.tables.stretches[stretch.index()].runs & mask_) != 0;
  }
  [[nodiscard]] bool go_on(const road::Roads& roads, StateId state, double length_m);
  [[nodiscard]] double least_m() const { return road::least_run_m(family_.kind); }
  void add_chance(const road::Roads& roads);

  Draft& draft_;
  const RunFamily& family_;
  std::uint64_t mask_;
  std::unordered_map<PieceId, PlaceId> place_of_;
  std::vector<StretchId> path_;  // of the chance being looked for
  std::set<StretchId> tried_;    // while looking for it
};

const RunMember* Runs::member(StretchId stretch) const {
  const auto at = std::ranges::lower_bound(family_.members, stretch, {}, &RunMember::stretch);
  return at != family_.members.end() && at->stretch == stretch ? &*at : nullptr;
}

std::vector<PieceId> Runs::pieces() const {
  std::vector<PieceId> pieces;
  for (const RunMember& m : family_.members) {
    if (pieces.empty() || pieces.back() != m.stretch.piece()) pieces.push_back(m.stretch.piece());
  }
  return pieces;
}

/// Metres of a group that are of one kind, whichever way they are driven.
double Runs::length_of(const PieceGroup& group, Kind kind) const {
  double sum = 0;
  for (const PieceId piece : group) {
    const RunMember* along = member({piece, false});
    const RunMember* any = along ? along : member({piece, true});
    if (any->kind == kind) sum += draft_.tables.pieces[piece.index()].length_m;
  }
  return sum;
}

void Runs::add_place(const PieceGroup& group) {
  const PieceId middle = group[group.size() / 2];
  const road::Roads roads = draft_.roads();
  const road::Piece& row = roads.pieces[middle.index()];
  road::Place place;
  place.kind = family_.kind;
  if (place.kind == Kind::narrow_road && length_of(group, Kind::single_track) >= least_m()) {
    place.kind = Kind::single_track;
  }
  place.source = {roads.pieces[group.front().index()].way, ObjectType::way, {}};
  place.at = point_along(roads.shape_of(middle), row.length_m / 2);
  place.name = row.name;
  place.length_m = static_cast<float>(length_of_group(draft_.tables, group));
  const PlaceId id = draft_.add_place(place, {}, group);
  for (const PieceId piece : group) place_of_[piece] = id;
}

void Runs::add_places() {
  std::int64_t count = 0;
  for (const PieceGroup& group : connected_groups(draft_.tables, pieces())) {
    if (length_of_group(draft_.tables, group) < least_m()) continue;
    add_place(group);
    ++count;
  }
  for (const RunMember& m : family_.members) {
    const auto place = place_of_.find(m.stretch.piece());
    if (place == place_of_.end()) continue;
    draft_.add_run_fact(
        {m.stretch, place->second, m.tag, m.kind, m.confidence, hardness_byte(m.kind), 0});
  }
  draft_.report.count("runs: " + std::string(road::name(family_.kind)), count);
}

/// Step 3: true when path_, driven so far, is or becomes long enough.
bool Runs::go_on(const road::Roads& roads, StateId state, double length_m) {
  if (length_m >= least_m()) return true;
  std::vector<road::Turn> turns(roads.turns_from(state).begin(), roads.turns_from(state).end());
  std::ranges::stable_sort(turns, {}, [](const road::Turn& t) { return std::abs(t.angle_deg); });
  for (const road::Turn& turn : turns) {
    const StretchId next = roads.stretch_of(turn.to);
    if (!inside(next) || next == path_.back().back() || !tried_.insert(next).second) continue;
    path_.push_back(next);
    if (go_on(roads, turn.to, length_m + roads.piece(next).length_m)) return true;
    path_.pop_back();
  }
  return false;
}

/// The chance that path_ is.
void Runs::add_chance(const road::Roads& roads) {
  const RunMember& first = *member(path_.front());
  road::Chance chance;
  chance.place = place_of_.at(first.stretch.piece());
  chance.entry = path_.front(), chance.exit = path_.back();
  chance.kind = family_.kind;
  chance.tag = first.tag;
  chance.source = {roads.piece(first.stretch).way, ObjectType::way, {}};
  double single_m = 0;
  for (const StretchId stretch : path_) {
    const RunMember& fact = *member(stretch);
    if (fact.kind == Kind::single_track) single_m += roads.piece(stretch).length_m;
    if (fact.confidence != Confidence::certain) chance.confidence = Confidence::inferred;
    chance.hardness = std::max(chance.hardness, hardness_byte(fact.kind));
  }
  if (single_m > 0 && single_m >= least_m()) chance.kind = Kind::single_track;
  draft_.add_chance(chance, path_);
}

void Runs::add_chances() {
  const road::Roads roads = draft_.roads();
  std::set<StretchId> entered;
  for (std::size_t s = 0; s < roads.state_count(); ++s) {
    if (inside(roads.stretch_of(StateId{s}))) continue;
    for (const road::Turn& turn : roads.turns_from(StateId{s})) {
      const StretchId entry = roads.stretch_of(turn.to);
      if (!inside(entry) || !entered.insert(entry).second) continue;
      path_ = {entry};
      tried_ = {entry};
      if (go_on(roads, turn.to, roads.piece(entry).length_m)) add_chance(roads);
    }
  }
}

}  // namespace

void mark_runs(Draft& draft) {
  for (const RunFamily& family : run_families(draft)) {
    Runs runs(draft, family);
    runs.add_places();
    runs.add_chances();
  }
}

}  // namespace loopwright::mark
