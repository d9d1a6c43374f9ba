// Method:
// 1. The place to speak is so many seconds before the joint (Drive::speak_from_m), but not before
//    the last moment is done; if that comes first, both are spoken together.
// 2. What could be taken for the one meant is listed by its position between the two moments: arms
//    to one side of the way driven, lights, crossroads.
// 3. A thing met close to the place to speak might be counted or missed, so the place is moved back
//    until none is near it; lights last from their first line to their last. What is met after it is
//    counted; where something there may be counted or not and no name helps, it is spoken behind that,
//    if there is still time.
#include "say/approach.hpp"

#include <algorithm>
#include <cmath>
#include <ranges>

namespace loopwright::say {
namespace {

/// Nothing that is counted lies so near the place to speak: two car lengths of doubt about where
/// one is, and the rounding of distances on the sheet (25 yd). Our judgement.
constexpr double clear_m = 40;

/// Arms this close in direction to the way driven aren't told apart from it at a glance.
constexpr double blurred_deg = 15;
/// Of roads that leave a main road within this, one may count them or not: they leave it as slip roads do.
constexpr double unsure_deg = 30;

}  // namespace

Approach::Approach(const Drive& drive, const Moment& before, const Moment& due)
    : drive_(drive),
      due_joint_(due.entry),
      due_m_(drive.position_m(due.entry)),
      stands_before_(before.kind == RowKind::turn_round) {
  const bool parked = before.kind == RowKind::leave;
  first_joint_ = parked ? 0 : end_joint(before) + 1;
  floor_m_ = parked ? 0 : drive.position_m(end_joint(before));
  const double from_m = drive.speak_from_m(due_joint_);
  joined_ = from_m < floor_m_;
  // The way home may end well after the last corner; how far is not for the sheet to tell.
  if (due.kind == RowKind::pull_up) {
    const double on_m = drive.loop().stretches.back().metres;
    joined_ = from_m + on_m < floor_m_;
  }
  from_m_ = std::max(from_m, floor_m_);
}

Counted Approach::count() {
  counts_ = !met_.empty();
  std::sort(met_.begin(), met_.end(), [](const Met& a, const Met& b) { return a.at_m < b.at_m; });
  for (const Met& met : std::ranges::reverse_view(met_))
    if (from_m_ > met.at_m - clear_m && from_m_ < met.at_m + met.lasts_m + clear_m)
      from_m_ = std::max(floor_m_, met.at_m - clear_m);
  // Right behind the last thing done nobody could tell what is counted: it is said with that one.
  const bool unclear = std::any_of(met_.begin(), met_.end(), [&](const Met& m) {
    return from_m_ <= floor_m_ && m.at_m < floor_m_ + told_within_m;
  });
  if (unclear) joined_ = true;
  std::erase_if(met_, [&](const Met& m) { return m.at_m < from_m_; });
  Counted counted;
  counted.alongside = true;
  for (const Met& m : met_) {
    m.sure ? void(++counted.before) : void(counted.doubtful = true);
    if (!m.sure && !m.alongside) counted.alongside = false;
    if (m.arm.known()) counted.arms.push_back(m.arm);
  }
  return counted;
}

void Approach::meet_roads(road::Movement side, bool small) {
  met_.clear();
  for (std::size_t joint = first_joint_; joint < due_joint_; ++joint) {
    const Junction passed =
        junction_between(drive_.roads(), drive_.at(joint), drive_.at(joint + 1));
    // Our own way, where it bends to that side off a road seen ahead, may be taken for one.
    const bool bends = std::any_of(passed.others.begin(), passed.others.end(), [&](const Arm& arm) {
      return arm.seen != Seen::not_counted &&
             std::abs(arm.angle_deg) + blurred_deg < std::abs(passed.angle_deg) &&
             (passed.angle_deg < 0) == (side == road::Movement::left);
    });
    if (bends && !small)
      met_.push_back({drive_.position_m(joint), false, drive_.at(joint + 1), false});
    for (const Arm& arm : passed.others) {
      const double from_way = arm.angle_deg - passed.angle_deg;
      if ((from_way < 0) != (side == road::Movement::left)) continue;
      const bool is_small = is_small_road(drive_.roads(), arm.leaving);
      if (small && !is_service(drive_.roads(), arm.leaving)) continue;
      const bool counted =
          small ? is_small && may_enter(drive_.roads(), arm.leaving) : arm.seen == Seen::road;
      const bool alongside = counted && std::abs(from_way) <= blurred_deg;
      const bool sure = counted && !alongside && (small || std::abs(from_way) >= unsure_deg);
      met_.push_back({drive_.position_m(joint), sure, arm.leaving, alongside});
    }
  }
}

Counted Approach::side_roads(road::Movement side) {
  meet_roads(side, false);
  return count();
}

Counted Approach::small_roads(road::Movement side) {
  meet_roads(side, true);
  return count();
}

Counted Approach::slip_roads(road::Movement side) {
  meet_roads(side, false);
  std::erase_if(met_, [&](const Met& m) { return !is_link(drive_.roads(), m.arm); });
  return count();
}

Counted Approach::lights() {
  met_.clear();
  namespace flag = road::node_flag;
  const road::Roads& roads = drive_.roads();
  const PlaceId due = drive_.lights_at(due_joint_);
  // What one is amidst when the last thing is done isn't met any more.
  PlaceId last = first_joint_ > 0 ? drive_.lights_at(first_joint_ - 1) : drive_.lights_before();
  for (std::size_t joint = first_joint_; joint < due_joint_; ++joint) {
    const PlaceId place = drive_.lights_at(joint);
    const std::uint32_t flags = roads.nodes[roads.to_node(drive_.at(joint)).index()].flags;
    const bool met = place.known() && place != last && place != due;
    if (met) met_.push_back({drive_.position_m(joint), true, {}, false});
    if (place.known() && place == last && place != due && !met_.empty())
      met_.back().lasts_m = drive_.position_m(joint) - met_.back().at_m;
    if (!place.known() && (flags & flag::signal_crossing) != 0)
      met_.push_back({drive_.position_m(joint), false, {}, false});
    last = place;
  }
  return count();
}

Counted Approach::crossroads() {
  met_.clear();
  for (std::size_t joint = first_joint_; joint < due_joint_; ++joint) {
    const Junction passed =
        junction_between(drive_.roads(), drive_.at(joint), drive_.at(joint + 1));
    const auto arms = std::count_if(passed.others.begin(), passed.others.end(),
                                    [](const Arm& arm) { return arm.seen != Seen::not_counted; });
    if (arms >= 2) met_.push_back({drive_.position_m(joint), arms == 2, {}, false});
  }
  return count();
}

bool Approach::speak_behind(const Met& met, double next_m) {
  const double behind_m = met.at_m + met.lasts_m;
  const double between_m = std::min((behind_m + next_m) / 2, behind_m + clear_m);
  const bool clear = between_m - behind_m > told_within_m && next_m - between_m > told_within_m;
  if (!clear || between_m > drive_.latest_to_speak_m(due_joint_)) return false;
  from_m_ = std::max(from_m_, between_m);
  joined_ = false;
  return true;
}

int Approach::speak_after_all_but(int keep) {
  int kept = 0;
  double next_m = due_m_;
  for (const Met& met : std::ranges::reverse_view(met_)) {
    if (met.sure && kept >= keep && speak_behind(met, next_m)) return kept;
    next_m = met.at_m;
    kept += met.sure ? 1 : 0;
  }
  return kept;
}

std::optional<int> Approach::speak_after_doubtful() {
  int kept = 0;
  double next_m = due_m_;
  for (const Met& met : std::ranges::reverse_view(met_)) {
    if (!met.sure) return speak_behind(met, next_m) ? std::optional(kept) : std::nullopt;
    next_m = met.at_m;
    ++kept;
  }
  return std::nullopt;
}

}  // namespace loopwright::say
