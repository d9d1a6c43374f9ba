// Method: each unmet want is looked up again without a time limit.
//   1. Some chance can be driven to and home from: it is named with its minutes.
//   2. None can, but could without the avoids and the hardness limit: those are the reason.
//   3. None can, or too few, and the clock is why: what it shuts is named, and better starts.
//   4. A bus lane asked for at its hours: what holds on those in reach, and when it is otherwise.
//   5. None at all: the map has none, or none on roads that can be reached.
#include "find/shortfall.hpp"

#include <algorithm>
#include <cstdio>

#include "find/bans.hpp"
#include "find/by_the_hour.hpp"
#include "find/joined.hpp"
#include "find/lane_shortfall.hpp"
#include "find/least_needed.hpp"
#include "find/reached_chances.hpp"
#include "find/take_shortfall.hpp"
#include "find/worths.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/wish/not_taken.hpp"

namespace loopwright::find {

namespace {

constexpr int any_hardness = 5;

std::string minutes_text(double minutes) {
  char text[32];
  std::snprintf(text, sizeof text, "%.0f", minutes);
  return text;
}

/// "once", "2 times"
std::string times_text(int times) {
  return times == 1 ? "once" : std::to_string(times) + " times";
}

/// The want without its count: "roundabout:right".
std::string bare(wish::Want want) {
  want.count = 1;
  const std::string text = wish::write_want(want);
  return text.substr(0, text.find('='));
}

/// hardest: count only those no harder.
bool area_has(const road::Roads& roads, const wish::Want& want, int hardest) {
  return std::any_of(roads.chances.begin(), roads.chances.end(), [&](const road::Chance& c) {
    return c.hardness <= hardest && wish::counts_for(c.kind, c.movement, want) &&
           (!want.into || !joined_ways(roads, c, *want.into).empty());
  });
}

/// What a road may be that the wish doesn't let be driven: "avoided or too hard for the level".
std::string limits_of(const wish::Wish& wish) {
  std::string limits = "avoided";
  if (!wish.keep_offs.empty()) limits += ", kept off";
  if (!wish.street_use.empty()) limits += ", driven often enough by the ledger";
  return limits + " or too hard" + (wish.hardest ? "" : " for the level");
}

wish::Wish without_limits(wish::Wish wish) {
  wish.avoids.clear();
  wish.keep_offs.clear();
  wish.street_use.clear();
  wish.hardest.reset();
  wish.level_given = false;
  return wish;
}

bool is_wanted_and_avoided(const wish::Wish& wish, const wish::Want& want) {
  return std::any_of(wish.avoids.begin(), wish.avoids.end(), [&](const wish::Avoid& avoid) {
    return wish::is_avoided(avoid, want.kind, want.movement);
  });
}

/// "; at level 3 some can be reached": the least level, or the least hardness allowed, at which one could; empty when
/// none could, or it isn't the level or that hardness alone which is in the way.
std::string reached_when_harder(const Ground& ground, const wish::Want& want) {
  const wish::Wish& wish = ground.wish;
  if (wish.level_given == wish.hardest.has_value()) return {};
  const int now = wish.hardest.value_or(wish.level);
  for (int more = now + 1; more < any_hardness; ++more) {
    wish::Wish bolder = wish;
    if (wish.hardest)
      bolder.hardest = more;
    else
      bolder.level = more;
    const Ground open(ground.roads, bolder, ground.setting, ground.walls);
    if (!reached_chances(open, want, longest_ms).empty())
      return std::string("; ") + (wish.hardest ? "with hardness " : "at level ") +
             std::to_string(more) + " some can be reached";
  }
  return {};
}

/// What the map hardly ever has by tags alone.
bool comes_from_heights(road::Kind kind) {
  return kind == road::Kind::uphill_start || kind == road::Kind::downhill ||
         kind == road::Kind::brow;
}

std::string why_unreachable(const Ground& ground, const wish::Want& want, ByTheHour& clock) {
  if (is_wanted_and_avoided(ground.wish, want))
    return bare(want) + " is wanted and avoided by the same wish";
  if (const auto without = built_without(ground.roads.info(), want.kind); !without.empty())
    return without;
  if (!area_has(ground.roads, want, any_hardness)) {
    wish::Want at_any_hour = want;
    at_any_hour.verdict.reset();
    return "the map has no " + bare(at_any_hour) + " in this area" +
           (comes_from_heights(want.kind)
                ? "; few gradients are mapped: build it with --heights to have them"
                : "");
  }
  if (const auto hardest = ground.wish.hardest; hardest && !area_has(ground.roads, want, *hardest))
    return "every " + bare(want) + " in this area is harder than " + std::to_string(*hardest) +
           ", the hardest that is allowed";
  const wish::Wish free = without_limits(ground.wish);
  const Ground open(ground.roads, free, ground.setting, ground.walls);
  if (!reached_chances(open, want, longest_ms).empty())
    return "every way to " + bare(want) + " passes something that is " + limits_of(ground.wish) +
           reached_when_harder(ground, want);
  const std::string shut = clock.blame(places_within(want, longest_ms, 1));
  return "no road leads to " + bare(want) + " and home again" +
         (shut.empty() ? "" : " at that time: " + shut);
}

/// "; more can't be reached at that time: …" when the clock keeps some away that are within the
/// minutes, and these would help.
std::string kept_away(const Ground& ground, const wish::Want& want, ByTheHour& clock) {
  const int asked = want.count.value_or(0);
  const std::int64_t most_ms = most_ms_of(ground.wish);
  const int now = places_within(want, most_ms, asked)(ground);
  if (now >= asked) return "";
  const std::string shut = clock.blame(places_within(want, most_ms, now + 1));
  if (shut.empty()) return "";
  return std::string("; ") + (now == 0 ? "nearer ones" : "more") +
         " can't be reached at that time: " + shut;
}

wish::Missing missing_of(const Ground& ground, const wish::Want& want, int got, ByTheHour& clock) {
  wish::Missing missing{want, got, {}, {}, {}, {}};
  const auto reached = reached_chances(ground, want, longest_ms);
  if (reached.empty()) {
    missing.why = why_unreachable(ground, want, clock);
    return missing;
  }
  const auto least =
      std::min_element(reached.begin(), reached.end(),
                       [](const auto& a, const auto& b) { return a.loop_ms < b.loop_ms; });
  missing.nearest = ground.roads.chances[reached.front().chance.index()].source;
  missing.nearest_minutes = minutes_of(reached.front().there_ms);
  missing.needs_minutes = minutes_of(least->loop_ms);
  const int minutes = ground.wish.minutes.value_or(0) - ground.wish.reserve_minutes;
  const bool too_far = *missing.needs_minutes > minutes && ground.wish.minutes;
  if (too_far)
    missing.why = "the nearest " + bare(want) + " is " + minutes_text(*missing.nearest_minutes) +
                  " minutes away; there and home takes " + minutes_text(*missing.needs_minutes) +
                  " of " + std::to_string(minutes) + " minutes";
  else
    missing.why =
        std::to_string(got) + " of " + std::to_string(want.count.value_or(0)) + " " + bare(want) +
        " found" +
        (ground.wish.minutes ? " that fit into the minutes, no quiet street driven more than " +
                                   times_text(ground.caps.quiet_passes)
                             : "");
  if (want.verdict && !too_far) {
    const std::string lanes = lanes_at_that_time(ground, want, reached, clock);
    missing.why = lanes.empty() ? missing.why +
                                      "; a bus lane counts only when it is so in all the "
                                      "minutes in which you may be there"
                                : lanes;
  }
  missing.why += kept_away(ground, want, clock);
  return missing;
}

/// Room for a lesson between home and end.
Worth room_of(const Ground& ground) {
  const std::int64_t most_ms = most_ms_of(ground.wish);
  const auto least_ms =
      static_cast<std::int64_t>(ground.caps.window_share * static_cast<double>(most_ms));
  return room_for(ground.wish.minutes ? least_ms : 0, most_ms);
}

/// "; only 4 % of the roads within the minutes may be driven: …" when what the wish keeps off leaves less than half of them.
std::string few_roads(const Ground& ground) {
  const wish::Wish free = without_limits(ground.wish);
  const Ground open(ground.roads, free, ground.setting, ground.walls);
  const std::int64_t most_ms = most_ms_of(ground.wish);
  const std::int64_t left = road_within(ground, most_ms), all = road_within(open, most_ms);
  if (2 * left >= all) return {};
  const std::string share =
      100 * left < all ? "less than 1 %" : "only " + std::to_string(100 * left / all) + " %";
  return "; " + share + " of the roads within the minutes may be driven: the others are " +
         limits_of(ground.wish) + ", or lie behind such";
}

std::string why_no_loop(const Ground& ground, const Nearest& nearest, ByTheHour& clock) {
  const int minutes = ground.wish.minutes.value_or(0) - ground.wish.reserve_minutes;
  const std::string window = "no loop of " + minutes_text(ground.caps.window_share * minutes) +
                             " to " + std::to_string(minutes) + " minutes was found";
  if (const std::string shut = clock.blame(room_of(ground)); !shut.empty())
    return window + ": home has too few roads around it at that time: " + shut;
  if (nearest.wears_out_streets)
    return window + " that drives no quiet residential street more than " +
           times_text(ground.caps.quiet_passes) + few_roads(ground);
  if (nearest.longest_minutes)
    return window + "; the nearest to it takes " + minutes_text(*nearest.longest_minutes) +
           few_roads(ground);
  return window + few_roads(ground);
}

/// Of each that isn't, in the wish's order.
std::string why_not_taken(const Ground& ground, const std::vector<std::string>& names,
                          ByTheHour& clock) {
  std::string why;
  for (const std::string& name : names) {
    const auto take = std::ranges::find(ground.wish.takes, name, &wish::Take::name);
    why += (why.empty() ? "" : "; ") + why_not_taken(ground, *take, clock);
  }
  return std::string(wish::not_taken_because) + why;
}

}  // namespace

wish::Shortfall explain(const Ground& ground, const Nearest& nearest) {
  wish::Shortfall shortfall;
  shortfall.least_minutes = nearest.least_minutes;
  ByTheHour clock(ground);
  const auto& wants = ground.wish.wants;
  for (std::size_t w = 0; w < wants.size(); ++w)
    if (!nearest.lacks_room && nearest.got[w] < wants[w].count.value_or(0))
      shortfall.missing.push_back(missing_of(ground, wants[w], nearest.got[w], clock));
  shortfall.not_taken = nearest.not_taken;
  if (!shortfall.missing.empty())
    shortfall.why = shortfall.missing.front().why;
  else if (shortfall.not_taken.empty())
    shortfall.why = why_no_loop(ground, nearest, clock);
  if (!shortfall.not_taken.empty())
    shortfall.why +=
        (shortfall.why.empty() ? "" : "; ") + why_not_taken(ground, shortfall.not_taken, clock);
  // Minutes that leave out what isn't taken would promise too much.
  if (ground.wish.minutes && shortfall.not_taken.empty()) {
    LeastNeeded needed = least_needed(ground);
    shortfall.at_least_minutes = needed.at_least_minutes;
    shortfall.costs = std::move(needed.costs);
  }
  clock.give_starts(shortfall);
  return shortfall;
}

wish::Shortfall explain_out_of_reach(const Ground& ground) {
  wish::Shortfall shortfall;
  ByTheHour clock(ground);
  const std::string shut = clock.blame(end_within(most_ms_of(ground.wish)));
  if (const auto least_ms = least_ms_to_end(ground)) {
    shortfall.least_minutes = minutes_of(*least_ms);
    shortfall.why = "the drive to the end alone takes " + minutes_text(*shortfall.least_minutes) +
                    " minutes" +
                    (shut.empty() ? "" : "; a shorter way can't be driven at that time: " + shut);
  } else {
    shortfall.why = shut.empty()
                        ? "every way to the end passes something that is " + limits_of(ground.wish)
                        : "no way to the end at that time: " + shut;
  }
  clock.give_starts(shortfall);
  return shortfall;
}

wish::Shortfall explain_shut(const lanes::Breach& breach) {
  wish::Shortfall shortfall;
  shortfall.why = "no way within this wish at that time: " + breach.why;
  return shortfall;
}

wish::Shortfall explain_shut_in(const Ground& ground, const Length& length) {
  const road::Roads& roads = ground.roads;
  const bool home = ground.starts.empty();
  wish::Shortfall shortfall;
  shortfall.why = std::string("the road at the ") + (home ? "home" : "end") +
                  " can't be driven within this wish";
  ByTheHour clock(ground, length);
  if (const std::string shut = clock.blame(room_of(ground)); !shut.empty()) {
    shortfall.why += ": " + shut;
    clock.give_starts(shortfall);
    return shortfall;
  }
  const PieceId piece = home ? ground.home.piece : ground.end.piece;
  for (const bool against : {false, true})
    for (const road::RunFact& fact : roads.run_facts_of(StretchId(piece, against)))
      if (is_unwanted(ground.wish, ground.caps, fact)) {
        shortfall.why += ": it is itself a " + std::string(road::name(fact.kind)) + ", which is " +
                         limits_of(ground.wish);
        return shortfall;
      }
  return shortfall;
}

std::string built_without(const road::AreaInfo& info, road::Kind kind) {
  if (kind == road::Kind::motorway && !info.motorways)
    return "this area was built without motorways; build it with --motorways";
  if (kind == road::Kind::ford && !info.fords)
    return "this area was built without fords; build it with --fords";
  return "";
}

}  // namespace loopwright::find
