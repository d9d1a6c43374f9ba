// The ban on waiting at a stretch's near kerb, and its pull-up places: side, part, why, what to check,
// and whether one may stop there at the moment one looks, for as long as a talk takes.
#include <array>
#include <ostream>

#include "command/facts.hpp"
#include "command/look_facts.hpp"
#include "command/print.hpp"
#include "loopwright/lanes/door_kerb.hpp"
#include "loopwright/lanes/stopping.hpp"

namespace loopwright::command {
namespace {

constexpr std::int64_t talk_s = 240;  // ours: a short talk

/// What is known of the place that an instructor should look at.
std::string to_check(const road::PullUp& place) {
  namespace flag = road::pull_up_flag;
  constexpr std::array<std::pair<std::uint16_t, std::string_view>, 6> words{{
      {flag::residents, "bays for permit holders"},
      {flag::fee, "ticket or disc"},
      {flag::parked, "parked cars"},
      {flag::lane, "a lane along the kerb"},
      {flag::hill, "on a hill"},
      {flag::lay_by, "a lay-by or bays"},
  }};
  std::string text = "check lines, signs and drives";
  for (const auto& [bit, word] : words)
    if ((place.flags & bit) != 0) text.append(", ").append(word);
  return text;
}

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
        << to_check(place) << '\n';
    const std::string_view hours = here.roads.text(place.hours);
    if (hours.empty()) continue;
    const lanes::Stay stay{here.start, here.start.plus_seconds(talk_s)};
    const auto judged = lanes::may_stop(here.roads, place, stay, here.setting);
    out << "      " << lanes::name(judged.verdict) << ": " << judged.why << '\n';
  }
}

}  // namespace loopwright::command
