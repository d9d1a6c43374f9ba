// 1. Each place of the file is one of the area's on that stretch, on the part driven, on the near kerb, and
//    one may stop there for so long at that time; its words are the area's.
// 2. When to drive on: what is left of the minutes then is the likely rest of the drive, stops counted.
// 3. The list of what comes after hard passes names each of them, and of each the first place the area has
//    behind its end, or there is none within the time. A file of an older version has no list.
#include "loopwright/lanes/pull_up.hpp"
#include "loopwright/wish/stops.hpp"
#include "proof/kerbs.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

std::string at_pull_up(const Drive& drive, std::size_t k) {
  return at_loop(drive) + ", pull-up " + std::to_string(k) + " on stretch " +
         std::to_string(drive.loop.pull_ups[k].stretch);
}

bool in_order(const Drive& drive, std::size_t k, Claims& claims) {
  if (k == 0) return true;
  const wish::PullUp& before = drive.loop.pull_ups[k - 1];
  const wish::PullUp& place = drive.loop.pull_ups[k];
  const bool later = before.stretch < place.stretch ||
                     (before.stretch == place.stretch && before.at_m < place.at_m);
  return claims.hold(later,
                     [&] { return at_pull_up(drive, k) + ": it isn't behind the one before it"; });
}

bool place_holds(const Drive& drive, const Kerbs& kerbs, std::size_t k, Claims& claims) {
  const wish::PullUp& said = drive.loop.pull_ups[k];
  const Kerb* kerb = kerbs.of(k);
  if (!claims.hold(kerb != nullptr, [&] {
        return at_pull_up(drive, k) +
               ": the area has no place to pull up there, or not on this side";
      }))
    return false;
  const bool is_planned = !said.purpose.empty();
  if (!claims.hold(is_planned == (said.seconds > 0), [&] {
        return at_pull_up(drive, k) + ": it is planned for nothing, or for no time";
      }))
    return false;
  const double stay_s = is_planned ? said.seconds : wish::offered_stay_s;
  if (!claims.hold(kerbs.usable(*kerb, stay_s), [&] {
        return at_pull_up(drive, k) + ": stopping is forbidden then, or may be";
      }))
    return false;
  const Side side = drive.roads.info().region.side;
  return claims.agree(at_pull_up(drive, k) + ", side", said.left ? "left" : "right", name(side)) &&
         claims.agree(at_pull_up(drive, k), said.why, drive.roads.text(kerb->place->why)) &&
         claims.agree(at_pull_up(drive, k), said.check, lanes::what_to_check(*kerb->place));
}

bool leaving_holds(const Drive& drive, const Kerbs& kerbs, std::size_t k, Claims& claims) {
  const wish::PullUp& said = drive.loop.pull_ups[k];
  double own_s = 0;
  if (drive.wish.minutes) {
    const double most_s = 60.0 * (*drive.wish.minutes - drive.wish.reserve_minutes);
    const double rest_s =
        kerbs.row_s(drive.stretches.size()) - Kerbs::there_s(*kerbs.of(k)) - said.seconds;
    own_s = most_s - rest_s;
  }
  return claims.agree(at_pull_up(drive, k) + ", drive on by",
                      {said.leave_by_s, own_s, 2 * time_tolerance_s, "s"});
}

/// The next place the area has after a pass; null when there is none within the time.
const Kerb* next_after(const Kerbs& kerbs, const wish::Pass& pass) {
  const std::size_t from = wish::end_row(pass);
  for (const Kerb& kerb : kerbs.all()) {
    if (kerb.row < from) continue;
    if (Kerbs::there_s(kerb) - kerbs.row_s(from) > wish::stop_after_most_s) return nullptr;
    if (kerb.stay_s > 0 || kerbs.usable(kerb, wish::offered_stay_s)) return &kerb;
  }
  return nullptr;
}

bool after_holds(const Drive& drive, const Kerbs& kerbs, const wish::StopAfter& said,
                 Claims& claims) {
  const wish::Pass& pass = drive.loop.passes[said.pass];
  const std::string where = at_loop(drive) + ", after pass " + std::to_string(said.pass);
  const Kerb* next = next_after(kerbs, pass);
  if (!said.pull_up)
    return claims.hold(next == nullptr, [&] {
      return where + ": there is a place to pull up, on stretch " + std::to_string(next->row);
    });
  if (!claims.hold(next != nullptr && next->claimed == static_cast<int>(*said.pull_up), [&] {
        return where + ": pull-up " + std::to_string(*said.pull_up) + " isn't the next place";
      }))
    return false;
  const double own_s = Kerbs::there_s(*next) - kerbs.row_s(wish::end_row(pass));
  return claims.agree(where + ", time to pull-up",
                      {said.seconds, own_s, 2 * time_tolerance_s, "s"});
}

/// Each hard pass once, in the order of the passes.
bool all_are_told(const Drive& drive, Claims& claims) {
  std::vector<std::size_t> hard, told;
  for (std::size_t p = 0; p < drive.loop.passes.size(); ++p)
    if (drive.loop.passes[p].hardness >= wish::hard_pass) hard.push_back(p);
  for (const wish::StopAfter& said : drive.loop.stops_after) told.push_back(said.pass);
  return claims.hold(told == hard, [&] {
    return at_loop(drive) + ": places to pull up are told after " + std::to_string(told.size()) +
           " passes, not after each of its " + std::to_string(hard.size()) + " hard ones";
  });
}

}  // namespace

bool pull_ups_hold(const Drive& drive, Claims& claims) {
  const auto& places = drive.loop.pull_ups;
  if (places.empty() && drive.loop.stops_after.empty()) return true;
  const Kerbs kerbs(drive);
  for (std::size_t k = 0; k < places.size(); ++k)
    if (!in_order(drive, k, claims) || !place_holds(drive, kerbs, k, claims) ||
        !leaving_holds(drive, kerbs, k, claims))
      return false;
  if (drive.loop.stops_after.empty()) return true;
  if (!all_are_told(drive, claims)) return false;
  for (const wish::StopAfter& said : drive.loop.stops_after)
    if (!after_holds(drive, kerbs, said, claims)) return false;
  return true;
}

}  // namespace loopwright::proof
