// The ban on waiting at a stretch's near kerb, and its pull-up places: side, part, why, what to check,
// and whether one may stop there at the moment one looks, for as long as a talk takes.
#include <ostream>

#include "command/facts.hpp"
#include "command/look_facts.hpp"
#include "command/print.hpp"
#include "loopwright/lanes/door_kerb.hpp"
#include "loopwright/lanes/pull_up.hpp"
#include "loopwright/lanes/stopping.hpp"

namespace loopwright::command {
namespace {

constexpr std::int64_t talk_s = 240;  // ours: a short talk

}  // namespace

void print_kerb_ban(std::ostream& out, const Here& here, StretchId stretch) {
  const Side side = here.roads.info().region.side;
  for (const road::KerbBan& ban : here.roads.kerb_bans_of(stretch)) {
    const auto judged =
        lanes::judge_ban(here.roads, ban, {here.start, here.start}, here.start, here.setting);
    out << "    kerb on the " << name(side) << ": " << lanes::ban_words(here.roads, ban) << "; "
        << judged.state << in_brackets(here.roads.text(ban.source)) << '\n';
  }
}

void print_pull_ups(std::ostream& out, const Here& here, StretchId stretch) {
  const Side side = here.roads.info().region.side;
  for (const road::PullUp& place : here.roads.pull_ups_of(stretch)) {
    out << "    pull-up on the " << name(side) << ", " << fixed(place.from_m, 0) << " to "
        << fixed(place.to_m, 0) << " m along: " << here.roads.text(place.why) << "; "
        << lanes::what_to_check(place) << '\n';
    const std::string_view hours = here.roads.text(place.hours);
    if (hours.empty()) continue;
    const lanes::Stay stay{here.start, here.start.plus_seconds(talk_s)};
    const auto judged = lanes::may_stop(here.roads, place, stay, here.setting);
    out << "      " << lanes::name(judged.verdict) << ": " << judged.why << '\n';
  }
}

}  // namespace loopwright::command
