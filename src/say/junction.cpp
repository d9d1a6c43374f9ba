// Method:
// 1. Every stretch that leaves the junction's nodes is an arm, but for the way back, the way taken
//    and what lies inside the place. Its angle is the change of heading from the entry's last
//    metres to its own first ones.
// 2. An arm is a road unless it is private or service (not counted), or can't be entered this way. A
//    service road that isn't private is a small road: a road to who drives on one, or into one.
// 3. The rules of "ahead" compare angles and classes, which is what a driver sees of a junction:
//    where the roads lie and how big they are.
#include "say/junction.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::say {
namespace {

namespace flag = road::piece_flag;

/// A way counts as ahead up to this change of heading (the rule of all movements: DEVELOPERS.md).
constexpr double ahead_deg = 45;
/// The way taken is plain when every other road bends off at least this much more. Our judgement.
constexpr double plain_by_deg = 30;
/// The main road one is on goes on by itself when it bends no more than this, and what leaves it bends off this much more:
/// a slip road, or a road of a smaller class. Our judgement: nobody who is told nothing leaves a main road for these.
constexpr double straight_deg = 15, slips_off_by_deg = 4, smaller_off_by_deg = 10;

bool is_private(const road::Roads& roads, StretchId stretch) {
  return (roads.piece(stretch).flags & (flag::no_access | flag::minor_service)) != 0;
}

/// On a small road, and at the mouth of the one that is taken, small roads are roads like others.
Seen seen(const road::Roads& roads, StretchId leaving, const Junction& junction) {
  const bool among_small =
      is_small_road(roads, junction.entry) || is_small_road(roads, junction.exit);
  const bool counted = is_small_road(roads, leaving)
                           ? among_small
                           : !is_service(roads, leaving) && !is_private(roads, leaving);
  if (!counted) return Seen::not_counted;
  return may_enter(roads, leaving) ? Seen::road : Seen::no_entry;
}

road::Control control_between(const road::Roads& roads, StretchId entry, StretchId exit) {
  for (const road::Turn& turn : roads.turns_from(StateId{entry.index()}))
    if (roads.stretch_of(turn.to) == exit) return turn.control;
  return road::Control::none;
}

/// The same road, or one drawn over it by mistake: the same ends, as long, and leaving the same way.
bool are_one_road(const road::Roads& roads, StretchId a, StretchId b) {
  constexpr double alike_m = 1, alike_deg = 2;
  if (a == b) return true;
  if (roads.from_node(a) != roads.from_node(b) || roads.to_node(a) != roads.to_node(b))
    return false;
  const double turned =
      heading_change_deg(road::bearing_out_deg(roads, a), road::bearing_out_deg(roads, b));
  return std::abs(turned) < alike_deg &&
         std::abs(roads.piece(a).length_m - roads.piece(b).length_m) < alike_m;
}

int class_rank(const road::Roads& roads, StretchId stretch) {
  return road::rank(roads.piece(stretch).road_class);
}

/// The arms at some nodes, without the pieces inside and the ways in and out.
void add_arms(const road::Roads& roads, NodeId node, std::span<const PieceId> inside,
              Junction& junction) {
  const double heading = road::bearing_in_deg(roads, junction.entry);
  for (const StretchId leaving : roads.leaving(node)) {
    const bool is_inside = std::find(inside.begin(), inside.end(), leaving.piece()) != inside.end();
    if (is_inside || are_one_road(roads, leaving, junction.exit) ||
        are_one_road(roads, leaving, junction.entry.back()))
      continue;
    const bool drawn_twice =
        std::any_of(junction.others.begin(), junction.others.end(),
                    [&](const Arm& arm) { return are_one_road(roads, arm.leaving, leaving); });
    if (drawn_twice) continue;
    const double angle = heading_change_deg(heading, road::bearing_out_deg(roads, leaving));
    junction.others.push_back({leaving, angle, seen(roads, leaving, junction)});
  }
}

/// A main road that goes straight on under its name or number, as big as it was.
bool is_main_road_on(const road::Roads& roads, const Junction& junction) {
  const road::Piece& from = roads.piece(junction.entry);
  const road::Piece& on = roads.piece(junction.exit);
  const auto same = [&](TextId a, TextId b) {
    return !roads.text(a).empty() && roads.text(a) == roads.text(b);
  };
  return from.road_class == on.road_class && on.road_class <= road::RoadClass::tertiary &&
         (same(from.ref, on.ref) || same(from.name, on.name)) &&
         std::abs(junction.angle_deg) <= straight_deg;
}

/// Arrows on the road before it: the lane must be chosen, so it is spoken of.
bool has_arrows(const road::Roads& roads, StretchId entry) {
  const auto marks = roads.lane_marks_of(entry);
  return std::any_of(marks.begin(), marks.end(),
                     [&](const road::LaneMarks& lane) { return !roads.text(lane.arrows).empty(); });
}

/// A road that leaves the main road one is on, and is plainly not it.
bool leaves_main_road(const road::Roads& roads, const Junction& junction, const Arm& arm) {
  const double more_deg = std::abs(arm.angle_deg) - std::abs(junction.angle_deg);
  if (is_link(roads, arm.leaving)) return more_deg >= slips_off_by_deg;
  return class_rank(roads, arm.leaving) > class_rank(roads, junction.exit) &&
         more_deg >= smaller_off_by_deg;
}

Junction without_arms(const road::Roads& roads, StretchId entry, StretchId exit) {
  Junction junction;
  junction.entry = entry, junction.exit = exit;
  junction.angle_deg =
      heading_change_deg(road::bearing_in_deg(roads, entry), road::bearing_out_deg(roads, exit));
  junction.control = control_between(roads, entry, exit);
  return junction;
}

}  // namespace

// On a one-way road that isn't driven at all (a motorway's slip road) the way's own direction is taken
// for that of traffic.
bool may_enter(const road::Roads& roads, StretchId leaving) {
  const bool one_way = (roads.piece(leaving).flags & flag::one_way) != 0;
  const auto legal = [&](StretchId s) {
    return (roads.stretch(s).flags &
            (road::stretch_flag::drivable | road::stretch_flag::cut_off)) != 0;
  };
  if (!one_way || legal(leaving)) return true;
  return !legal(leaving.back()) && !leaving.against();
}

Junction junction_between(const road::Roads& roads, StretchId entry, StretchId exit) {
  Junction junction = without_arms(roads, entry, exit);
  add_arms(roads, roads.to_node(entry), {}, junction);
  return junction;
}

Junction junction_of_place(const road::Roads& roads, StretchId entry, StretchId exit,
                           PlaceId place) {
  Junction junction = without_arms(roads, entry, exit);
  for (const NodeId node : roads.nodes_of(place))
    add_arms(roads, node, roads.pieces_of(place), junction);
  return junction;
}

bool is_link(const road::Roads& roads, StretchId stretch) {
  using road::RoadClass;
  const RoadClass road_class = roads.piece(stretch).road_class;
  return road_class >= RoadClass::motorway_link && road_class <= RoadClass::tertiary_link;
}

bool is_service(const road::Roads& roads, StretchId stretch) {
  return roads.piece(stretch).road_class == road::RoadClass::service;
}

bool is_small_road(const road::Roads& roads, StretchId stretch) {
  return is_service(roads, stretch) && !is_private(roads, stretch);
}

road::Movement movement_of(double angle_deg) {
  if (angle_deg < -ahead_deg) return road::Movement::left;
  return angle_deg > ahead_deg ? road::Movement::right : road::Movement::ahead;
}

std::vector<Arm> rivals_of(const Junction& junction) {
  // Beyond this an arm leads back the way one came: the other half of a dual carriageway, say.
  constexpr double back_deg = 165;
  std::vector<Arm> rivals;
  for (const Arm& arm : junction.others)
    if (arm.seen == Seen::road && std::abs(arm.angle_deg) < back_deg &&
        movement_of(arm.angle_deg) == movement_of(junction.angle_deg))
      rivals.push_back(arm);
  return rivals;
}

bool gives_way(const Junction& junction) {
  using road::Control;
  return junction.control == Control::give_way_near || junction.control == Control::give_way_far ||
         junction.control == Control::stop_near || junction.control == Control::stop_far;
}

bool goes_without_saying(const road::Roads& roads, const Junction& junction) {
  const double taken = std::abs(junction.angle_deg);
  // Nobody goes into a small road untold where a bigger one leads off.
  const bool into_small =
      is_small_road(roads, junction.exit) && !is_small_road(roads, junction.entry);
  if (into_small &&
      std::any_of(junction.others.begin(), junction.others.end(), [&](const Arm& arm) {
        return arm.seen != Seen::not_counted && !is_service(roads, arm.leaving);
      }))
    return false;
  if (taken > ahead_deg) {
    // Told nothing, a driver goes round a bend, unless some other road is there to be seen: one
    // that may not be entered, or a private one that lies more nearly ahead, looks like a way on.
    return std::all_of(junction.others.begin(), junction.others.end(), [&](const Arm& arm) {
      return arm.seen == Seen::not_counted && std::abs(arm.angle_deg) >= taken;
    });
  }
  const bool alone = std::none_of(junction.others.begin(), junction.others.end(),
                                  [](const Arm& arm) { return arm.seen == Seen::road; });
  if (alone) return true;
  // Giving way to a road no bigger than ours isn't the end of ours.
  const bool joins_bigger = class_rank(roads, junction.exit) < class_rank(roads, junction.entry);
  if (gives_way(junction) && (joins_bigger || meets_bigger(roads, junction))) return false;
  if (bends_away(roads, junction)) return false;
  const bool stays_on_main = is_main_road_on(roads, junction) && !has_arrows(roads, junction.entry);
  return std::all_of(junction.others.begin(), junction.others.end(), [&](const Arm& arm) {
    return arm.seen != Seen::road || std::abs(arm.angle_deg) >= taken + plain_by_deg ||
           (stays_on_main && leaves_main_road(roads, junction, arm));
  });
}

bool looks_like_dividing(const Junction& junction) {
  const double taken = std::abs(junction.angle_deg);
  return std::any_of(junction.others.begin(), junction.others.end(), [&](const Arm& arm) {
    return arm.seen == Seen::road && std::abs(arm.angle_deg) < taken + plain_by_deg;
  });
}

bool meets_bigger(const road::Roads& roads, const Junction& junction) {
  const int taken_rank = class_rank(roads, junction.exit);
  return std::any_of(junction.others.begin(), junction.others.end(), [&](const Arm& arm) {
    return arm.seen == Seen::road && class_rank(roads, arm.leaving) < taken_rank;
  });
}

bool bends_away(const road::Roads& roads, const Junction& junction) {
  const int taken_rank = class_rank(roads, junction.exit);
  const int entry_rank = class_rank(roads, junction.entry);
  return std::any_of(junction.others.begin(), junction.others.end(), [&](const Arm& arm) {
    const int rank = class_rank(roads, arm.leaving);
    return arm.seen == Seen::road && rank < taken_rank && rank == entry_rank &&
           std::abs(arm.angle_deg) < 180 - ahead_deg;
  });
}

bool follows_main_road(const road::Roads& roads, const Junction& junction) {
  const int rank = class_rank(roads, junction.exit);
  if (gives_way(junction) || rank != class_rank(roads, junction.entry)) return false;
  return std::all_of(junction.others.begin(), junction.others.end(), [&](const Arm& arm) {
    return arm.seen != Seen::road || class_rank(roads, arm.leaving) > rank;
  });
}

}  // namespace loopwright::say
