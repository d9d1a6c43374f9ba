// 1. Each lane within the minutes is asked at every minute at which the lesson may be there.
// 2. The first minute of the next day and night at which one has the verdict is told.
// 3. A better start: gone to by the shortest way, slow or fast, some lane has the verdict.
#include "find/lane_shortfall.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <set>

#include "find/worths.hpp"

namespace loopwright::find {
namespace {

using wish::Verdict;

constexpr std::int64_t minute_ms = 60000;
constexpr int most_minutes_ahead = 24 * 60;
constexpr std::size_t most_lanes = 60;  // ours: the nearest tell enough
// Ours: nine drives in ten take so many tenths of the likely time.
constexpr std::int64_t fast_tenths = 8, slow_tenths = 13;

StretchId lane_of(const Ground& ground, const ReachedChance& reached) {
  return ground.roads.chances[reached.chance.index()].entry;
}

Verdict at(const Ground& ground, const ReachedChance& reached, std::int64_t from_ms,
           std::int64_t to_ms) {
  const Instant start = ground.wish.start;
  return ground.lane_verdicts.on(
      lane_of(ground, reached),
      {start.plus_seconds(from_ms / 1000), start.plus_seconds((to_ms + 999) / 1000)});
}

/// Who sets off so much later and drives there by the shortest way finds the verdict.
bool is_on_going_there(const Ground& ground, const ReachedChance& reached, Verdict verdict,
                       std::int64_t later_ms = 0) {
  const std::int64_t along_ms = ground.costs.along_ms(lane_of(ground, reached));
  return at(ground, reached, later_ms + reached.there_ms * fast_tenths / 10,
            later_ms + (reached.there_ms + along_ms) * slow_tenths / 10) == verdict;
}

/// What holds all through a lesson on one lane: the plate, when it isn't one thing.
struct Meanwhile {
  Verdict all = Verdict::check_the_plate;
  bool wanted_at_some_minute = false;
};

Meanwhile meanwhile(const Ground& ground, const ReachedChance& reached, Verdict wanted) {
  const std::int64_t latest_ms = std::min<std::int64_t>(
      reached.there_ms + most_ms_of(ground.wish) - reached.loop_ms, most_minutes_ahead * minute_ms);
  Meanwhile found;
  for (std::int64_t ms = reached.there_ms; ms <= latest_ms; ms += minute_ms) {
    const Verdict now = at(ground, reached, ms, ms);
    if (ms == reached.there_ms) found.all = now;
    if (now != found.all) found.all = Verdict::check_the_plate;
    found.wanted_at_some_minute = found.wanted_at_some_minute || now == wanted;
  }
  return found;
}

/// Each piece of road with a lane once; only those within the minutes.
std::vector<ReachedChance> lanes_within(const Ground& ground,
                                        std::span<const ReachedChance> reached) {
  std::vector<ReachedChance> lanes;
  std::set<StretchId> told;
  for (const ReachedChance& one : reached) {
    if (one.loop_ms > most_ms_of(ground.wish) || lanes.size() == most_lanes) continue;
    if (told.insert(lane_of(ground, one)).second) lanes.push_back(one);
  }
  return lanes;
}

/// "; from 10:00 one is usable", within a day; else empty.
/// runs: how many the lanes are.
std::string next_words(const Ground& ground, std::span<const ReachedChance> lanes, Verdict wanted,
                       std::size_t runs) {
  for (std::int64_t minute = 1; minute <= most_minutes_ahead; ++minute) {
    const bool some = std::ranges::any_of(lanes, [&](const ReachedChance& lane) {
      return at(ground, lane, minute * minute_ms, minute * minute_ms) == wanted;
    });
    if (!some) continue;
    const Instant then = ground.setting.on_clock(ground.wish.start.plus_seconds(60 * minute));
    const bool today = then.civil().date == ground.wish.start.civil().date;
    return "; from " + write_clock(then) + (today ? "" : " the next day") +
           (runs == 1 ? " it is " : " one is ") + std::string(wish::name(wanted));
  }
  return "";
}

std::string count_words(std::size_t count, Verdict verdict) {
  if (verdict == Verdict::check_the_plate)
    return "of " + std::to_string(count) + " the map can't tell, check the plate";
  return std::to_string(count) + (count == 1 ? " is " : " are ") +
         std::string(wish::name(verdict)) + " all through";
}

std::string holds_words(const std::map<Verdict, std::size_t>& counts, std::size_t lanes) {
  const std::string in_reach = lanes == 1 ? "the only bus lane in reach" : "the bus lanes in reach";
  if (counts.size() > 1) {
    std::string text = "of " + std::to_string(lanes) + " bus lanes in reach ";
    const char* between = "";
    for (const auto& [verdict, count] : counts) {
      text += between + count_words(count, verdict);
      between = "; ";
    }
    return text;
  }
  const Verdict all = counts.begin()->first;
  if (all == Verdict::check_the_plate)
    return "the map can't tell of " + in_reach + " when " + (lanes == 1 ? "it" : "they") +
           " may be used: check the plate";
  return in_reach + (lanes == 1 ? " is " : " are ") + std::string(wish::name(all)) + " all through";
}

/// 1 when some lane within the minutes has the verdict for who drives straight there.
Worth lane_on_going_there(const wish::Want& want, std::int64_t most_ms) {
  return [=](const Ground& ground) {
    const auto within = chances_within(ground, {&want, 1}, most_ms);
    return std::ranges::any_of(within,
                               [&](const ReachedChance& lane) {
                                 return is_on_going_there(ground, lane, *want.verdict);
                               })
               ? 1
               : 0;
  };
}

/// Starts at which some lane has the verdict for who drives straight there are better ones.
void put_off(const Ground& ground, const wish::Want& want, const std::vector<ReachedChance>& lanes,
             ByTheHour& clock) {
  const Verdict wanted = *want.verdict;
  clock.put_off(lane_on_going_there(want, most_ms_of(ground.wish)),
                [&ground, lanes, wanted](const Instant& start) {
                  const std::int64_t later_ms = 1000 * (start.unix_s - ground.wish.start.unix_s);
                  return std::ranges::any_of(lanes, [&](const ReachedChance& lane) {
                    return is_on_going_there(ground, lane, wanted, later_ms);
                  });
                });
}

}  // namespace

std::string lanes_at_that_time(const Ground& ground, const wish::Want& want,
                               std::span<const ReachedChance> reached, ByTheHour& clock) {
  const Verdict wanted = *want.verdict;
  const std::vector<ReachedChance> lanes = lanes_within(ground, reached);
  if (lanes.empty()) return "";
  // A run of lanes with ways into it between them is one, as long as the same holds on them.
  std::set<std::pair<Verdict, PlaceId>> runs;
  for (const ReachedChance& lane : lanes) {
    const Meanwhile holds = meanwhile(ground, lane, wanted);
    if (holds.wanted_at_some_minute) return "";
    runs.emplace(holds.all, ground.roads.chances[lane.chance.index()].place);
  }
  std::map<Verdict, std::size_t> counts;
  for (const auto& [verdict, place] : runs) ++counts[verdict];
  const std::string next = next_words(ground, lanes, wanted, runs.size());
  // Without a change to come there is nothing to wait for.
  if (!next.empty()) put_off(ground, want, lanes, clock);
  return holds_words(counts, runs.size()) + next;
}

}  // namespace loopwright::find
