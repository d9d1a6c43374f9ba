// Runs of road: narrow roads, 20 zones, one-way streets, dual carriageways, bus lanes …
//
// 1. The members of each family of kinds (run_kinds.cpp) hang together where pieces share a node;
//    a group with less road than the kind needs for a pass keeps nothing.
// 2. Each other group is a place, and each member a fact with that place. Narrow and single-track
//    roads are one run; it goes by single-track when that much of it is.
// 3. A chance is a way into a run: a legal turn from a stretch outside it to one inside, and then
//    the straightest way on inside until it is long enough. When the straightest ends too soon, the
//    next straightest is tried; a stretch is tried once. One chance for each first stretch.
#include "runs.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <unordered_map>

#include "loopwright/road/kind_table.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::Movement;

std::uint8_t hardness_byte(Kind kind) {
  return static_cast<std::uint8_t>(road::hardness_of(kind, Movement::none));
}

const RunMember* find_member(std::span<const RunMember> members, StretchId stretch) {
  const auto at = std::ranges::lower_bound(members, stretch, {}, &RunMember::stretch);
  return at != members.end() && at->stretch == stretch ? &*at : nullptr;
}

/// Of equals the first stands first. Put in one by one: there are few, and a stable sort asks for memory.
std::vector<road::Turn> straightest_first(std::span<const road::Turn> turns) {
  const auto bend = [](const road::Turn& turn) { return std::abs(turn.angle_deg); };
  std::vector<road::Turn> sorted;
  sorted.reserve(turns.size());
  for (const road::Turn& turn : turns)
    sorted.insert(std::ranges::upper_bound(sorted, bend(turn), {}, bend), turn);
  return sorted;
}

/// The runs of one family: places and facts first, then the ways into them.
class Runs {
 public:
  Runs(const road::Roads& roads, const RunFamily& family) : roads_(roads), family_(family) {}
  FoundRuns find() {
    find_places();
    find_ways_in();
    return std::move(found_);
  }

 private:
  [[nodiscard]] std::vector<PieceId> pieces() const;
  [[nodiscard]] double length_of(const PieceGroup& group, Kind kind) const;
  void find_places();
  [[nodiscard]] road::Place place_of(const PieceGroup& group) const;
  [[nodiscard]] bool inside(StretchId stretch) const {
    return find_member(kept_, stretch) != nullptr;
  }
  [[nodiscard]] std::vector<StateId> states_before() const;
  [[nodiscard]] bool go_on(StateId state, double length_m);
  [[nodiscard]] double least_m() const { return road::least_run_m(family_.kind); }
  void add_chance();
  void find_ways_in();

  const road::Roads& roads_;
  const RunFamily& family_;
  FoundRuns found_;
  std::unordered_map<PieceId, PlaceId> place_by_piece_;
  std::vector<RunMember> kept_;  // of a group that is long enough, by stretch
  std::vector<StretchId> path_;  // of the chance being looked for
  std::set<StretchId> tried_;    // while looking for it
};

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
    const RunMember* along = find_member(family_.members, {piece, false});
    const RunMember* any = along ? along : find_member(family_.members, {piece, true});
    if (any->kind == kind) sum += roads_.pieces[piece.index()].length_m;
  }
  return sum;
}

road::Place Runs::place_of(const PieceGroup& group) const {
  const PieceId middle = group[group.size() / 2];
  const road::Piece& row = roads_.pieces[middle.index()];
  road::Place place;
  place.kind = family_.kind;
  if (place.kind == Kind::narrow_road && length_of(group, Kind::single_track) >= least_m()) {
    place.kind = Kind::single_track;
  }
  place.source = {roads_.pieces[group.front().index()].way, ObjectType::way, {}};
  place.at = point_along(roads_.shape_of(middle), row.length_m / 2);
  place.name = family_.name.known() ? family_.name : row.name;
  place.length_m = static_cast<float>(length_of_group(roads_, group));
  return place;
}

void Runs::find_places() {
  for (PieceGroup& group : connected_groups(roads_, pieces())) {
    if (length_of_group(roads_, group) < least_m()) continue;
    const PlaceId id{found_.places.size()};
    for (const PieceId piece : group) place_by_piece_[piece] = id;
    const road::Place row = place_of(group);
    found_.places.push_back({row, std::move(group)});
  }
  for (const RunMember& m : family_.members) {
    const auto place = place_by_piece_.find(m.stretch.piece());
    if (place == place_by_piece_.end()) continue;
    kept_.push_back(m);
    found_.facts.push_back(
        {m.stretch, place->second, m.tag, m.kind, m.confidence, hardness_byte(m.kind), 0});
  }
}

/// Step 3: true when path_, driven so far, is or becomes long enough.
bool Runs::go_on(StateId state, double length_m) {
  if (length_m >= least_m()) return true;
  for (const road::Turn& turn : straightest_first(roads_.turns_from(state))) {
    const StretchId next = roads_.stretch_of(turn.to);
    if (!inside(next) || next == path_.back().back() || !tried_.insert(next).second) continue;
    path_.push_back(next);
    if (go_on(turn.to, length_m + roads_.piece(next).length_m)) return true;
    path_.pop_back();
  }
  return false;
}

/// The chance that path_ is.
void Runs::add_chance() {
  const RunMember& first = *find_member(kept_, path_.front());
  road::Chance chance;
  chance.place = place_by_piece_.at(first.stretch.piece());
  chance.entry = path_.front(), chance.exit = path_.back();
  chance.kind = family_.kind;
  chance.tag = first.tag;
  chance.source = {roads_.piece(first.stretch).way, ObjectType::way, {}};
  double single_m = 0;
  for (const StretchId stretch : path_) {
    const RunMember& fact = *find_member(kept_, stretch);
    if (fact.kind == Kind::single_track) single_m += roads_.piece(stretch).length_m;
    chance.confidence = road::less_sure(chance.confidence, fact.confidence);
    chance.hardness = std::max(chance.hardness, hardness_byte(fact.kind));
  }
  if (single_m > 0 && single_m >= least_m()) chance.kind = Kind::single_track;
  found_.ways_in.push_back({chance, path_});
}

/// Every state at whose end a stretch of a run begins, in order.
std::vector<StateId> Runs::states_before() const {
  std::vector<StateId> states;
  for (const RunMember& m : kept_) {
    for (const StretchId away : roads_.leaving(roads_.from_node(m.stretch))) {
      states.push_back(StateId{away.back().index()});
    }
  }
  std::ranges::sort(states);
  states.erase(std::unique(states.begin(), states.end()), states.end());
  const std::size_t plain = states.size();
  for (std::size_t copy = 0; copy < roads_.copies.size(); ++copy) {
    const StateId of{roads_.copies[copy].index()};
    if (std::binary_search(states.begin(), states.begin() + static_cast<std::ptrdiff_t>(plain), of))
      states.push_back(StateId{roads_.stretch_count() + copy});
  }
  return states;
}

void Runs::find_ways_in() {
  std::set<StretchId> entered;
  for (const StateId state : states_before()) {
    if (inside(roads_.stretch_of(state))) continue;
    for (const road::Turn& turn : roads_.turns_from(state)) {
      const StretchId entry = roads_.stretch_of(turn.to);
      if (!inside(entry) || !entered.insert(entry).second) continue;
      path_ = {entry};
      tried_ = {entry};
      if (go_on(turn.to, roads_.piece(entry).length_m)) add_chance();
    }
  }
}

void add_to(Draft& draft, FoundRuns found) {
  std::vector<PlaceId> ids;
  for (const FoundRuns::Run& run : found.places) {
    ids.push_back(draft.add_place(run.row, {}, run.pieces));
  }
  for (road::RunFact& fact : found.facts) {
    fact.place = ids[fact.place.index()];
    draft.add_run_fact(fact);
  }
  for (FoundRuns::WayIn& way_in : found.ways_in) {
    way_in.chance.place = ids[way_in.chance.place.index()];
    draft.add_chance(way_in.chance, way_in.path);
  }
}

}  // namespace

FoundRuns runs_of(const road::Roads& roads, const RunFamily& family) {
  return Runs(roads, family).find();
}

void mark_runs(Draft& draft) {
  for (const RunFamily& family : run_families(draft)) {
    FoundRuns found = runs_of(draft.roads(), family);
    draft.report.count("runs: " + std::string(road::name(family.kind)),
                       static_cast<std::int64_t>(found.places.size()));
    add_to(draft, std::move(found));
  }
}

}  // namespace loopwright::mark
