// Method: the checks of checks.hpp in their order, for each loop and then for the loops together,
// until one finds a false claim.
#include "loopwright/proof/proof.hpp"

#include <deque>

#include "proof/checks.hpp"

namespace loopwright::proof {
namespace {

/// What all loops of one area are checked with.
struct Tools {
  Tools(const NotedArea& noted, const hours::Setting& in, const wish::Wish& wish)
      : area(noted), setting(in), bans(noted.roads), caps(caps_of(wish)) {}
  const NotedArea& area;
  const hours::Setting& setting;
  Bans bans;
  Caps caps;
};

bool drive_holds(Drive& drive, const Tools& tools, Claims& claims) {
  return names_hold(drive, claims) && parts_hold(drive, claims) &&
         connection_holds(drive, claims) && access_holds(drive, claims) &&
         turns_hold(drive, tools.bans, claims) && ends_hold(drive, claims) &&
         lengths_hold(drive, claims) && times_hold(drive, claims) &&
         hours_hold(drive, tools.bans, claims) && window_holds(drive, tools.caps, claims);
}

bool loop_holds(Drive& drive, const Tools& tools, Claims& claims) {
  if (!drive_holds(drive, tools, claims)) return false;
  find_passes(drive);
  judge_lanes(drive);
  return passes_hold(drive, claims) && bus_lanes_hold(drive, claims) &&
         notes_hold(drive, tools.area, claims) && practice_holds(drive, claims) &&
         pull_ups_hold(drive, claims) && planned_stops_hold(drive, claims) &&
         independent_holds(drive, claims) && ways_home_hold(drive, tools.bans, claims) &&
         counts_hold(drive, tools.caps, claims) && lesson_parts_hold(drive, tools.caps, claims) &&
         limits_of_wish_hold(drive, tools.caps, claims) &&
         certificate_holds(drive, tools.caps, claims);
}

void answer_holds(const NotedArea& area, const wish::Answer& answer, const hours::Setting& setting,
                  Claims& claims) {
  const road::Roads& roads = area.roads;
  if (!area_holds(roads, answer, claims) || !loops_hold(answer, claims)) return;
  const Tools tools(area, setting, answer.wish);
  std::vector<Drive> drives;
  std::deque<wish::Wish> wishes;  // of the drives, which keep pointing at them
  for (const wish::Loop& loop : answer.loops) {
    const auto wish = wish_of_loop(answer, loop, tools.caps);
    if (!loop.variant.empty() && !claims.hold(wish.has_value(), [&] {
          return "loop " + std::to_string(loop.id) + ": nothing is " + loop.variant +
                 " than the first loop";
        }))
      return;
    wishes.push_back(*wish);
    drives.push_back({roads, wishes.back(), loop, setting, {}, {}, {}, {}, 0});
    if (!loop_holds(drives.back(), tools, claims)) return;
  }
  if (variants_hold(answer, claims) && alternatives_hold(drives, tools.caps, claims) &&
      stops_are_told(drives, answer, claims) && takes_are_told(drives, answer, claims) &&
      independent_is_told(drives, answer, claims) &&
      ramp_is_told(drives, answer, tools.caps, claims))
    shortfall_holds(roads, answer, claims);
}

}  // namespace

Proof prove(const road::Roads& roads, const wish::Answer& answer, const hours::Setting& setting) {
  return prove({roads, roads, {}}, answer, setting);
}

Proof prove(const NotedArea& area, const wish::Answer& answer, const hours::Setting& setting) {
  Claims claims;
  answer_holds(area, answer, setting, claims);
  return {claims.false_claim(), static_cast<std::int64_t>(answer.loops.size()), claims.count()};
}

}  // namespace loopwright::proof
