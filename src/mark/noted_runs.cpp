// 1. Of each family, the runs of the map that hold a changed stretch or share a node with it are
//    taken up again: their facts are members, as when the map was read.
// 2. Members that are taken go; those that are noted come, instead of a guess of ours. A
//    fact that a tag is sure of stays, and so does a special form (a single track is narrow too).
// 3. Their old facts and chances go, and the runs are found anew (runs.cpp); of bus lanes also where
//    only a plate gives them other hours.
#include "noted_runs.hpp"

#include <algorithm>
#include <set>

#include "lane_runs.hpp"
#include "runs.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;

class FamilyAnew {
 public:
  FamilyAnew(Overlay& over, Kind kind) : over_(over), kind_(kind) {}

  void take_up(StretchId changed);
  void add(const RunMember& member);
  void take(StretchId stretch) { members_.erase(stretch); }
  void find();

 private:
  void take_up_place(PlaceId place);
  void add_found(const RunFamily& family);
  [[nodiscard]] std::uint64_t mask() const { return road::with_special_forms(kind_); }

  Overlay& over_;
  Kind kind_;
  std::set<PlaceId> places_;
  std::set<StretchId> before_;  // stretches that had a fact
  std::map<StretchId, RunMember> members_;
};

/// Step 1, for the runs at both ends of a stretch and on it.
void FamilyAnew::take_up(StretchId changed) {
  const road::Roads& base = over_.base();
  for (const NodeId node : {base.from_node(changed), base.to_node(changed)}) {
    for (const StretchId away : base.leaving(node)) {
      for (const StretchId s : {away, away.back()}) {
        for (const road::RunFact& fact : base.run_facts_of(s)) {
          if ((road::bit(fact.kind) & mask()) != 0) take_up_place(fact.place);
        }
      }
    }
  }
}

void FamilyAnew::take_up_place(PlaceId place) {
  if (!places_.insert(place).second) return;
  const road::Roads& base = over_.base();
  for (const PieceId piece : base.pieces_of(place)) {
    for (const StretchId s : {StretchId{piece, false}, StretchId{piece, true}}) {
      for (const road::RunFact& fact : base.run_facts_of(s)) {
        if ((road::bit(fact.kind) & mask()) == 0) continue;
        before_.insert(s);
        members_[s] = {s, fact.kind, fact.confidence, fact.tag};
        take_up_place(fact.place);
      }
    }
  }
}

/// Step 2.
void FamilyAnew::add(const RunMember& member) {
  const auto [at, is_new] = members_.try_emplace(member.stretch, member);
  if (is_new || at->second.confidence == Confidence::certain) return;
  const bool is_special =
      at->second.kind != member.kind && road::meets(at->second.kind, member.kind);
  if (!is_special) at->second = member;
}

/// Step 3.
void FamilyAnew::find() {
  const road::Roads& base = over_.base();
  for (const StretchId s : before_) {
    over_.take_facts(s, mask());
    for (const road::Chance& chance : base.chances_from(s)) {
      if (places_.contains(chance.place)) over_.take_chance(chance);
    }
  }
  std::vector<RunMember> members;
  for (const auto& [stretch, member] : members_) members.push_back(member);
  if (kind_ != Kind::bus_lane) return add_found({kind_, std::move(members), {}});
  for (const RunFamily& family : parted_by_lanes(over_.roads(), members)) add_found(family);
}

void FamilyAnew::add_found(const RunFamily& family) {
  const FoundRuns found = runs_of(over_.roads(), family);
  std::vector<PlaceId> ids;
  for (const FoundRuns::Run& run : found.places) {
    ids.push_back(over_.add_place(run.row, {}, run.pieces));
  }
  for (road::RunFact fact : found.facts) {
    fact.place = ids[fact.place.index()];
    over_.add_fact(fact);
  }
  for (const FoundRuns::WayIn& way_in : found.ways_in) {
    road::Chance chance = way_in.chance;
    chance.place = ids[chance.place.index()];
    over_.add_chance(chance, way_in.path);
  }
}

void change_family(Overlay& over, Kind kind, const RunChanges& changes) {
  FamilyAnew family(over, kind);
  for (const RunMember& member : changes.added) family.take_up(member.stretch);
  for (const StretchId s : changes.taken) family.take_up(s);
  for (const StretchId s : changes.other_lanes) family.take_up(s);
  for (const RunMember& member : changes.added) family.add(member);
  for (const StretchId s : changes.taken) family.take(s);
  family.find();
}

}  // namespace

Kind family_of(Kind kind) {
  for (const Kind wider : road::all_kinds()) {
    if (wider != kind && road::is_stretch_like(wider) && road::meets(kind, wider)) return wider;
  }
  return kind;
}

void change_runs(Overlay& over, const ChangesByFamily& changes) {
  for (const auto& [kind, own] : changes) change_family(over, kind, own);
}

}  // namespace loopwright::mark
