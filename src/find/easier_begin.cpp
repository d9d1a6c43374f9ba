// Method:
//   1. The roads about the door are cut into parts in which the learner can drive round and round (round_parts.hpp). One that
//      bears the minutes that are left beside the instructor's own drive there and back will do.
//   2. Of each such part the kerb that the instructor comes to and back from soonest; one on a quiet street may take longer.
//   3. The lesson is looked for from these, the soonest first; the first that is met is the answer.
//   4. If none is, the same with more drives over a quiet street.
#include "loopwright/find/easier_begin.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <vector>

#include "find/hunt.hpp"
#include "find/round_parts.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::find {

namespace {

// All ours. Farther than this nobody drives for an hour's lesson; nearer than that the kerb is at the door.
constexpr double least_off_m = 200, most_off_m = 10'000;
constexpr double apart_m = 150, room_m = 12, corner_m = 200;
constexpr std::int64_t quiet_worth_ms = 10 * ms_per_minute;
constexpr std::size_t most_tried = 6;
constexpr std::int64_t least_told_ms = 5 * ms_per_minute;

bool may_begin_elsewhere(const wish::Wish& wish) {
  return (wish.level_given || wish.hardest) && wish.minutes && !wish.drive_out &&
         !wish.drive_back && !wish.end && wish.takes.empty() && wish.through.empty();
}

BeginAsk ask_for(const wish::Wish& wish) {
  return {.door = wish.home,
          .from_m = least_off_m,
          .to_m = most_off_m,
          .room_m = room_m,
          .corner_m = corner_m,
          .apart_m = apart_m,
          .most = std::numeric_limits<std::size_t>::max(),
          .stay = {wish.start, wish.start.plus_seconds(std::int64_t{60} * *wish.minutes)}};
}

/// A part of the roads and its cheapest kerb.
struct PartBegin {
  BeginPlace place;
  std::int64_t bears_ms = 0;  ///< RoundParts
  std::int64_t away_ms = 0;   ///< of the instructor's drive there and back
  std::int64_t cost_ms = 0;   ///< the same, and what a busier street counts for
};

/// The instructor's ways from the door and back to it, over all roads that a car may use.
class OwnDrive {
 public:
  OwnDrive(const Ground& ground, std::int64_t limit_ms)
      : backwards_(ground.roads), out_(ground.roads), back_(ground.roads, &backwards_) {
    reach::Costs costs(ground.roads, ground.pace);
    ground.walls.apply(ground.roads, costs);
    costs.let_turn_round(reach::TurningRound::nowhere);
    out_.run(reach::leaving(ground.roads, ground.pace, ground.home), costs, limit_ms);
    back_.run_back(reach::arriving(ground.roads, ground.pace, ground.end), costs, limit_ms);
  }
  /// To a kerb and home from it, on the same side of the road; none when that takes too long.
  [[nodiscard]] std::optional<std::int64_t> there_and_back_ms(StretchId stretch) const {
    const StateId at{stretch.index()};
    if (!out_.reached(at) || !back_.reached(at)) return std::nullopt;
    return out_.ms(at) + back_.ms(at);
  }

 private:
  reach::Backwards backwards_;
  reach::Sweep out_, back_;
};

std::int64_t whole_ms_of(const wish::Wish& wish) {
  return ms_per_minute * (*wish.minutes - wish.reserve_minutes);
}

/// One of each part whose kerbs are come to and back from in half of the minutes; the cheapest first.
std::vector<PartBegin> begins_of(const Ground& ground) {
  const road::Roads& roads = ground.roads;
  const std::int64_t most_away_ms = whole_ms_of(ground.wish) / 2;
  const RoundParts parts(ground, most_off_m);
  const OwnDrive own(ground, most_away_ms);
  std::map<std::uint32_t, PartBegin> cheapest;
  for (BeginPlace& place : places_to_begin(roads, ask_for(ground.wish), ground.setting)) {
    const StretchId side = place.alongside.front();
    const std::uint32_t part = parts.of(side);
    const auto away_ms = own.there_and_back_ms(side);
    if (part == RoundParts::none || !away_ms || *away_ms > most_away_ms) continue;
    const bool quiet = (roads.piece(side).flags & road::piece_flag::quiet) != 0;
    PartBegin begin{std::move(place), parts.bears_ms(part), *away_ms,
                    *away_ms + (quiet ? 0 : quiet_worth_ms)};
    const auto known = cheapest.find(part);
    if (known == cheapest.end())
      cheapest.emplace(part, std::move(begin));
    else if (begin.cost_ms < known->second.cost_ms)
      known->second = std::move(begin);
  }
  std::vector<PartBegin> begins;
  for (auto& [part, begin] : cheapest) begins.push_back(std::move(begin));
  std::stable_sort(begins.begin(), begins.end(),
                   [](const PartBegin& a, const PartBegin& b) { return a.cost_ms < b.cost_ms; });
  return begins;
}

/// As begins_of, of a wish that names no ground yet.
std::vector<PartBegin> begins_for(const road::Roads& roads, const wish::Wish& wish,
                                  const hours::Setting& setting) {
  const ClockWalls walls(roads, wish, setting);
  return begins_of(Ground(roads, wish, setting, walls));
}

bool bears_the_rest(const PartBegin& begin, const wish::Wish& wish) {
  return begin.bears_ms >= whole_ms_of(wish) - begin.away_ms;
}

/// With as many drives over a quiet street as the ledger lets it have in a day; none when the wish allows as many.
std::optional<wish::Wish> with_more_passes(wish::Wish wish) {
  const Caps caps = caps_of(wish);
  if (caps.quiet_passes >= caps.day_passes) return std::nullopt;
  wish.street_passes = caps.day_passes;
  return wish;
}

const PartBegin* longest_of(const std::vector<PartBegin>& begins) {
  const auto longest = std::max_element(
      begins.begin(), begins.end(),
      [](const PartBegin& a, const PartBegin& b) { return a.bears_ms < b.bears_ms; });
  return longest == begins.end() ? nullptr : &*longest;
}

std::optional<EasierBegin> begun_at(const road::Roads& roads, wish::Wish wish,
                                    const BeginPlace& place, const hours::Setting& setting) {
  wish.drive_out = wish.drive_back = place.at;
  wish.alternatives = 1;
  const FindResult found = find_loops(roads, wish, setting);
  if (found.loops.empty() || found.shortfall) return std::nullopt;
  const wish::Loop& loop = found.loops.front();
  const wish::RowSpan own = wish::practice_of(loop);
  EasierBegin begin{place, 0, 0};
  if (own.first > 0) begin.there_minutes = wish::driven_s(loop, {0, own.first - 1}) / 60;
  if (own.last + 1 < loop.stretches.size())
    begin.back_minutes = wish::driven_s(loop, {own.last + 1, loop.stretches.size() - 1}) / 60;
  return begin;
}

std::optional<EasierBegin> begun_within_caps(const road::Roads& roads, const wish::Wish& wish,
                                             const hours::Setting& setting) {
  std::vector<PartBegin> begins = begins_for(roads, wish, setting);
  std::erase_if(begins, [&](const PartBegin& one) { return !bears_the_rest(one, wish); });
  if (begins.size() > most_tried) begins.resize(most_tried);
  for (const PartBegin& one : begins)
    if (auto begin = begun_at(roads, wish, one.place, setting)) return begin;
  return std::nullopt;
}

}  // namespace

std::optional<EasierBegin> easier_begin(const road::Roads& roads, const wish::Wish& wish,
                                        const hours::Setting& setting) {
  if (!may_begin_elsewhere(wish)) return std::nullopt;
  if (auto begin = begun_within_caps(roads, wish, setting)) return begin;
  const std::optional<wish::Wish> round_again = with_more_passes(wish);
  if (!round_again) return std::nullopt;
  auto begin = begun_within_caps(roads, *round_again, setting);
  if (begin) begin->street_passes = round_again->street_passes;
  return begin;
}

std::optional<LongestRound> longest_round(const road::Roads& roads, const wish::Wish& wish,
                                          const hours::Setting& setting) {
  if (!may_begin_elsewhere(wish)) return std::nullopt;
  const std::vector<PartBegin> begins = begins_for(roads, wish, setting);
  const PartBegin* longest = longest_of(begins);
  if (longest == nullptr || longest->bears_ms < least_told_ms || bears_the_rest(*longest, wish))
    return std::nullopt;
  LongestRound round{longest->place, minutes_of(longest->away_ms), minutes_of(longest->bears_ms), 0,
                     0};
  const std::optional<wish::Wish> round_again = with_more_passes(wish);
  if (!round_again) return round;
  round.street_passes = *round_again->street_passes;
  for (const PartBegin& one : begins_for(roads, *round_again, setting))
    if (one.place.at == longest->place.at) round.most_minutes = minutes_of(one.bears_ms);
  return round;
}

}  // namespace loopwright::find
