// Method: each drivable stretch is asked, kind by kind. Service roads and rings belong to none, and
// only a bus lane may lie on a slip road.
// 1. Narrow or single-track by its widths (widths.cpp), the special form only. 2. A 20 zone by a
//    zone sign's tag; a 20 limit by a plain 20 mph. Neither on a Welsh default 20, which has no
//    signs of its own; a plain 20 there without maxspeed:type=sign may be that default: inferred.
// 3. Dual carriageway by tag, or inferred by its partner; motorways are a kind of their own.
// 4. One-way: no dual carriageway, and no way under 25 m (ours: the lanes round an island; pieces may
//    be shorter, side roads and humps cut them).
// 5. Beside a bus lane whose buses go our way, or nobody knows which way; lanes that differ in what a
//    verdict hangs on are families of their own (lane_runs.cpp).
// The other kinds have a file of their own each (run_rules.hpp, shape_runs.hpp).
#include "run_kinds.hpp"

#include <algorithm>

#include "dual_carriageways.hpp"
#include "lane_runs.hpp"
#include "loopwright/road/by_id.hpp"
#include "one_way_hours.hpp"
#include "piece_widths.hpp"
#include "run_rules.hpp"
#include "shape_runs.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::piece_flag;
using road::Confidence;
using road::Kind;
using road::LaneDirection;
using road::LimitConfidence;
using road::LimitRule;
using road::RoadClass;

constexpr double least_one_way_m = 25;

class RunKinds {
 public:
  explicit RunKinds(Draft& draft) : draft_(draft), widths_(draft) {}
  std::vector<RunFamily> find();
  std::vector<RunFamily> find_bus_lanes();

 private:
  void ask_piece(PieceId id);
  [[nodiscard]] bool is_one_way_street(PieceId id) const;
  [[nodiscard]] double way_length_m(PieceId of_way) const;
  void ask_limit(StretchId stretch);
  void ask_bus_lanes();
  [[nodiscard]] bool drivable(StretchId stretch) const {
    return (draft_.tables.stretches[stretch.index()].flags & road::stretch_flag::drivable) != 0;
  }
  [[nodiscard]] const road::Piece& row(PieceId id) const {
    return draft_.tables.pieces[id.index()];
  }
  /// Both directions that may be driven.
  void add(std::vector<RunMember>& family, PieceId id, const RunMember& fact);

  Draft& draft_;
  PieceWidths widths_;
  std::vector<RunMember> narrow_, zones_, limits_, duals_, motorways_, one_ways_, bus_lanes_;
};

Confidence certain_if(bool certain) {
  return certain ? Confidence::certain : Confidence::inferred;
}

bool is_link(RoadClass road_class) {
  return road::name(road_class).ends_with("_link");
}

void RunKinds::add(std::vector<RunMember>& family, PieceId id, const RunMember& fact) {
  for (const bool against : {false, true}) {
    const StretchId stretch{id, against};
    if (drivable(stretch)) family.push_back({stretch, fact.kind, fact.confidence, fact.tag});
  }
}

void RunKinds::ask_limit(StretchId stretch) {
  if (!drivable(stretch)) return;
  const road::LimitFact& limit = draft_.tables.stretches[stretch.index()].limit;
  if (limit.rule == LimitRule::zone_twenty) {
    zones_.push_back({stretch, Kind::twenty_zone, Confidence::certain, limit.source});
  }
  const bool twenty =
      limit.rule == LimitRule::signed_value && limit.value == 20 && limit.unit == SpeedUnit::mph;
  if (!twenty) return;
  const bool maybe_default = draft_.info.region.code == "GB-WLS" &&
                             !draft_.way_tags(stretch.piece()).is("maxspeed:type", "sign");
  const bool certain = limit.confidence == LimitConfidence::certain && !maybe_default;
  limits_.push_back({stretch, Kind::twenty_limit, certain_if(certain), limit.source});
}

void RunKinds::ask_piece(PieceId id) {
  const road::Piece& piece = row(id);
  const Tags& tags = draft_.way_tags(id);
  const bool is_dual = (piece.flags & (flag::dual | flag::dual_inferred)) != 0;
  if (const Widths& widths = widths_.of(id); widths.narrow) {
    const Kind kind = widths.single_track ? Kind::single_track : Kind::narrow_road;
    add(narrow_, id, {{}, kind, certain_if(widths.certain), draft_.text(widths.tag)});
  }
  if (piece.road_class == RoadClass::motorway) {
    add(motorways_, id, {{}, Kind::motorway, Confidence::certain, draft_.text("highway=motorway")});
  } else if (is_dual) {
    const std::string tag = dual_tag(tags);
    const TextId text = draft_.text(tag.empty() ? "oneway=yes beside its opposite" : tag);
    add(duals_, id, {{}, Kind::dual_carriageway, certain_if(!tag.empty()), text});
  } else if (is_one_way_street(id)) {
    const OneWay one_way = one_way_of(tags, piece.road_class);
    add(one_ways_, id, {{}, Kind::one_way, Confidence::certain, draft_.text(one_way.tag)});
  }
  ask_limit({id, false});
  ask_limit({id, true});
}

/// One-way at all hours: by the hour, whoever drives it may meet others, and it is none.
bool RunKinds::is_one_way_street(PieceId id) const {
  const road::Piece& piece = draft_.tables.pieces[id.index()];
  if ((piece.flags & flag::one_way) == 0) return false;
  const OneWayHours hours = one_way_hours(draft_.way_tags(id), piece.road_class);
  const bool changes = !hours.along.clauses.empty() || !hours.against.clauses.empty();
  return !changes && hours.along.base != hours.against.base && way_length_m(id) >= least_one_way_m;
}

/// Of all pieces of an OSM way.
double RunKinds::way_length_m(PieceId of_way) const {
  double metres = 0;
  for (const road::Piece& piece : road::whole_way(draft_.tables.pieces, of_way))
    metres += piece.length_m;
  return metres;
}

void RunKinds::ask_bus_lanes() {
  for (const road::BusLane& lane : draft_.tables.bus_lanes) {
    for (const bool against : {false, true}) {
      const StretchId stretch{lane.piece, against};
      const LaneDirection ours = against ? LaneDirection::against : LaneDirection::along;
      if (!drivable(stretch)) continue;
      if (lane.direction != ours && lane.direction != LaneDirection::unknown) continue;
      const bool certain = lane.direction == ours && lane.doubtful == 0;
      bus_lanes_.push_back({stretch, Kind::bus_lane, certain_if(certain), lane.source});
    }
  }
}

/// One fact a stretch: the first said.
std::vector<RunMember> once_each(std::vector<RunMember> members) {
  std::ranges::stable_sort(members, {}, &RunMember::stretch);
  const auto same = [](const RunMember& a, const RunMember& b) { return a.stretch == b.stretch; };
  members.erase(std::unique(members.begin(), members.end(), same), members.end());
  return members;
}

std::vector<RunFamily> RunKinds::find() {
  for (std::size_t p = 0; p < draft_.tables.pieces.size(); ++p) {
    const road::Piece& piece = row(PieceId{p});
    const bool left_out = piece.road_class == RoadClass::service || is_link(piece.road_class) ||
                          (piece.flags & flag::ring) != 0;
    if (!left_out) ask_piece(PieceId{p});
  }
  return {{Kind::narrow_road, once_each(std::move(narrow_))},
          {Kind::twenty_zone, once_each(std::move(zones_))},
          {Kind::twenty_limit, once_each(std::move(limits_))},
          {Kind::dual_carriageway, once_each(std::move(duals_))},
          {Kind::motorway, once_each(std::move(motorways_))},
          {Kind::one_way, once_each(std::move(one_ways_))}};
}

std::vector<RunFamily> RunKinds::find_bus_lanes() {
  ask_bus_lanes();
  return parted_by_lanes(draft_.roads(), once_each(std::move(bus_lanes_)));
}

}  // namespace

std::vector<RunFamily> run_families(Draft& draft) {
  RunKinds kinds(draft);
  std::vector<RunFamily> families = kinds.find();
  for (RunFamily& family : kinds.find_bus_lanes()) families.push_back(std::move(family));
  families.push_back(slip_road_runs(draft));
  families.push_back(cycle_lane_runs(draft));
  families.push_back(tram_runs(draft));
  for (auto* runs : {school_runs, independent_runs}) {
    for (RunFamily& family : runs(draft)) families.push_back(std::move(family));
  }
  families.push_back({Kind::meeting_traffic, meeting_traffic_members(draft)});
  families.push_back({Kind::country_road, country_road_members(draft)});
  families.push_back({Kind::bends, bends_members(draft)});
  families.push_back({Kind::brow, brow_members(draft)});
  families.push_back({Kind::downhill, downhill_members(draft)});
  std::ranges::stable_sort(families, {}, &RunFamily::kind);
  return families;
}

}  // namespace loopwright::mark
