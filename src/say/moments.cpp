// Method: one walk over the joints.
// 1. A pass of a roundabout, mini, lights or crossroads that begins at a joint owns it and every
//    joint up to its exit; roundabouts and minis are always spoken of, the others unless the way
//    goes without saying.
// 2. A level crossing always has a moment; zebras and crossings with lights when they were asked
//    for.
// 3. Any other joint is a junction by its arms: silent when it goes without saying, unless it looks as if the road
//    divided and one waits for such a place. Two junctions over both halves of a dual carriageway are one, and so
//    are bends to one side right behind each other.
// 4. Before all of it the setting off, after it the pulling up.
#include "say/moments.hpp"

#include <algorithm>

#include "loopwright/wish/asked.hpp"
#include "say/layout.hpp"

namespace loopwright::say {
namespace {

using road::Kind;

/// Which of the passes that begin at one joint says what kind of junction it is; the least first.
std::optional<RowKind> owner_kind(Kind kind) {
  if (road::meets(kind, Kind::roundabout)) return RowKind::roundabout;
  if (road::meets(kind, Kind::mini_roundabout)) return RowKind::mini;
  if (kind == Kind::signals) return RowKind::lights;
  if (kind == Kind::crossroads) return RowKind::crossroads;
  return std::nullopt;
}

class MomentFinder {
 public:
  explicit MomentFinder(const Drive& drive) : drive_(drive) {}

  std::vector<Moment> find() {
    moments_.push_back({.kind = RowKind::leave});
    for (std::size_t i = 0; i + 1 < drive_.size();) i = look_at_joint(i);
    drop_silent();
    drop_further_bends();
    join_carriageways();
    const std::size_t last = drive_.size() - 1;
    moments_.push_back({.kind = RowKind::pull_up, .entry = drive_.last_joint(), .exit = last});
    return std::move(moments_);
  }

 private:
  /// Adds what is due at joint i; the next joint to look at.
  std::size_t look_at_joint(std::size_t i) {
    add_warnings(i);
    const wish::Pass* pass = owner_at(i);
    if (pass == nullptr || !is_one_move(*pass)) {
      add_plain(i);
      return i + 1;
    }
    add_place(*pass);
    return pass->last;
  }

  void add_warnings(std::size_t i) {
    for (const wish::Pass& pass : drive_.loop().passes) {
      if (pass.first != i) continue;
      const bool crossing = pass.kind == Kind::zebra || pass.kind == Kind::signal_crossing;
      if (pass.kind == Kind::level_crossing || (crossing && wanted(pass)))
        moments_.push_back({RowKind::warn, i, pass.last, &pass, {}});
    }
  }

  [[nodiscard]] const wish::Pass* owner_at(std::size_t i) const {
    const wish::Pass* owner = nullptr;
    for (const wish::Pass& pass : drive_.loop().passes) {
      const auto kind = owner_kind(pass.kind);
      if (pass.first != i || pass.last <= i || pass.last >= drive_.size() || !kind) continue;
      if (owner == nullptr || *kind < *owner_kind(owner->kind)) owner = &pass;
    }
    return owner;
  }

  void add_place(const wish::Pass& pass) {
    Moment moment{*owner_kind(pass.kind), pass.first, pass.last, &pass, {}};
    if (moment.kind == RowKind::lights || moment.kind == RowKind::crossroads) {
      moment.junction = junction_of(pass);
    }
    const bool marked = pass.confidence == road::Confidence::certain &&
                        moment.kind == RowKind::crossroads && gives_way(moment.junction);
    const bool silent = moment.junction.exit.known() && !wanted(pass) && !marked &&
                        !leaves_bend(pass) && !divides_inside(pass) &&
                        goes_without_saying(drive_.roads(), moment.junction);
    add(std::move(moment), silent);
    for (std::size_t i = pass.first + 1; i < pass.last; ++i) add_warnings(i);
  }

  /// A place can be spoken of as one when its way through doesn't turn left and right, nor by a small
  /// road: lights over two staggered side roads are two moves. Four roads of which two lie to one side are no
  /// crossroads to a driver.
  [[nodiscard]] bool is_one_move(const wish::Pass& pass) const {
    const RowKind kind = *owner_kind(pass.kind);
    if (kind == RowKind::mini) return true;
    // A slip road beside the ring never enters it.
    if (kind == RowKind::roundabout) return drive_.on_ring(pass.first + 1);
    const Junction whole = junction_of(pass);
    if (kind == RowKind::crossroads && !is_plain_cross(whole)) return false;
    for (std::size_t i = pass.first; i < pass.last; ++i) {
      if (i > pass.first && is_service(drive_.roads(), drive_.at(i))) return false;
      const road::Movement inner =
          movement_of(junction_between(drive_.roads(), drive_.at(i), drive_.at(i + 1)).angle_deg);
      if (inner != road::Movement::ahead && inner != movement_of(whole.angle_deg)) return false;
    }
    return true;
  }

  /// Somewhere inside, the road driven bends away from the way taken.
  [[nodiscard]] bool leaves_bend(const wish::Pass& pass) const {
    for (std::size_t i = pass.first; i < pass.last; ++i)
      if (bends_away(drive_.roads(),
                     junction_between(drive_.roads(), drive_.at(i), drive_.at(i + 1))))
        return true;
    return false;
  }

  void add(Moment moment, bool silent) {
    if (silent && !looks_like_dividing(moment.junction)) return;
    moment.goes_without_saying = silent;
    moments_.push_back(std::move(moment));
  }

  /// True when the next moment says that the road divides, and is spoken before this one is passed, or so near to it that
  /// one can't tell.
  [[nodiscard]] bool is_taken_for(const Moment& moment, const Moment& next) const {
    constexpr double near_m = 40;  // as for what is counted (approach.cpp)
    return next.kind == RowKind::junction &&
           layout_of(drive_.roads(), next.junction).shape == Shape::divides &&
           drive_.position_m(moment.entry) > drive_.speak_from_m(next.entry) - near_m;
  }

  /// Who follows the road round to one side goes on round, as in a circle at the end of a street.
  void drop_further_bends() {
    constexpr double goes_on_m = 30;  // ours
    const auto goes_on = [this](const Moment& round, const Moment& next) {
      if (round.kind != RowKind::junction || next.kind != RowKind::junction) return false;
      const Layout a = layout_of(drive_.roads(), round.junction);
      const Layout b = layout_of(drive_.roads(), next.junction);
      return a.shape == Shape::bends && b.shape == Shape::bends && a.side == b.side &&
             drive_.position_m(next.entry) - drive_.position_m(round.exit) < goes_on_m;
    };
    std::vector<Moment> kept;
    const Moment* last = nullptr;
    for (Moment& moment : moments_) {
      const bool further = last != nullptr && goes_on(*last, moment);
      last = &moment;
      if (!further) kept.push_back(moment);
    }
    moments_ = std::move(kept);
  }

  /// From the last to the first, so that what stays is there to be looked at.
  void drop_silent() {
    for (std::size_t k = moments_.size(); k-- > 0;) {
      if (!moments_[k].goes_without_saying) continue;
      const bool stays = k + 1 < moments_.size() && is_taken_for(moments_[k], moments_[k + 1]);
      moments_[k].goes_without_saying = false;
      if (!stays) moments_.erase(moments_.begin() + static_cast<std::ptrdiff_t>(k));
    }
  }

  /// Somewhere inside, a lane of its own for those who turn leads off nearly ahead.
  [[nodiscard]] bool divides_inside(const wish::Pass& pass) const {
    for (std::size_t i = pass.first; i < pass.last; ++i)
      if (looks_like_dividing(junction_between(drive_.roads(), drive_.at(i), drive_.at(i + 1))))
        return true;
    return false;
  }

  /// Crossing a dual carriageway is one thing to say, though it is two junctions.
  void join_carriageways() {
    constexpr double widest_m = 40;  // two carriageways and the reserve between; our judgement
    for (std::size_t k = 0; k + 1 < moments_.size();) {
      const Moment& first = moments_[k];
      const Moment& second = moments_[k + 1];
      const bool both =
          first.kind == RowKind::junction && second.kind == RowKind::junction &&
          movement_of(first.junction.angle_deg) == road::Movement::ahead &&
          drive_.position_m(second.entry) - drive_.position_m(first.entry) < widest_m &&
          crosses_carriageway(first) && crosses_carriageway(second);
      if (!both) {
        ++k;
        continue;
      }
      const bool on = movement_of(second.junction.angle_deg) == road::Movement::ahead;
      moments_.erase(moments_.begin() + static_cast<std::ptrdiff_t>(on ? k + 1 : k));
    }
  }

  /// One half of a bigger road meets the way here: its traffic comes from one side only.
  [[nodiscard]] bool crosses_carriageway(const Moment& moment) const {
    const road::Roads& roads = drive_.roads();
    const auto rank = [&](StretchId s) { return road::rank(roads.piece(s).road_class); };
    const auto& others = moment.junction.others;
    const bool shut = std::any_of(others.begin(), others.end(), [&](const Arm& arm) {
      return arm.seen == Seen::no_entry && rank(arm.leaving) < rank(moment.junction.entry);
    });
    return shut && (rank(moment.junction.exit) < rank(moment.junction.entry) ||
                    meets_bigger(roads, moment.junction));
  }

  [[nodiscard]] Junction junction_of(const wish::Pass& pass) const {
    const StretchId entry = drive_.at(pass.first);
    const StretchId exit = drive_.at(pass.last);
    for (const road::Chance& chance : drive_.roads().chances_from(entry))
      if (chance.kind == pass.kind && chance.exit == exit)
        return junction_of_place(drive_.roads(), entry, exit, chance.place);
    return junction_between(drive_.roads(), entry, exit);
  }

  void add_plain(std::size_t i) {
    const StretchId entry = drive_.at(i);
    const StretchId exit = drive_.at(i + 1);
    if (exit == entry.back()) {
      moments_.push_back({RowKind::turn_round, i, i + 1, nullptr, {}});
    } else if (drive_.on_ring(i) || drive_.on_ring(i + 1)) {
      // A drive that begins or ends on a ring has one without a pass, and so have some odd rings.
      if (drive_.on_ring(i)) leave_ring(i);
    } else {
      Moment moment{RowKind::junction, i, i + 1, nullptr,
                    junction_between(drive_.roads(), entry, exit)};
      const bool silent = goes_without_saying(drive_.roads(), moment.junction);
      add(std::move(moment), silent);
    }
  }

  /// Off a ring at a joint: due where one comes onto it, or where the drive begins.
  void leave_ring(std::size_t joint) {
    if (drive_.on_ring(joint + 1)) return;
    std::size_t entry = joint;
    while (entry > 0 && drive_.on_ring(entry)) --entry;
    const bool begins_on_it = drive_.on_ring(entry);
    moments_.push_back({RowKind::ring_leave, begins_on_it ? joint : entry, joint + 1, nullptr, {}});
  }

  [[nodiscard]] bool wanted(const wish::Pass& pass) const {
    const std::vector<wish::Pass>& passes = drive_.loop().passes;
    const auto number = static_cast<std::size_t>(&pass - passes.data());
    const auto& met = drive_.loop().met;
    return std::any_of(met.begin(), met.end(), [&](const wish::Met& m) {
      return wish::counts_for(number, passes, m.want);
    });
  }

  const Drive& drive_;
  std::vector<Moment> moments_;
};

}  // namespace

std::vector<Moment> moments_of(const Drive& drive) {
  return MomentFinder(drive).find();
}

}  // namespace loopwright::say
