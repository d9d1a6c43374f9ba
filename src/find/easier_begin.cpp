// Method: the kerbs around the door, ring by ring. Where the learner's roads around one hold as many minutes as the drive
// has, each direction once, the lesson is looked for from there; the first that is met is the answer.
#include "loopwright/find/easier_begin.hpp"

#include <array>
#include <vector>

#include "find/hunt.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::find {

namespace {

// Ours, tried on the county: a ring is asked when the one inside it has nothing.
constexpr std::array<double, 4> ring_m = {200, 2000, 5000, 10'000};
constexpr std::size_t most_of_ring = 12, most_tried = 2;
constexpr double apart_m = 400, room_m = 12, corner_m = 200;

bool may_begin_elsewhere(const wish::Wish& wish) {
  return (wish.level_given || wish.hardest) && wish.minutes && !wish.drive_out &&
         !wish.drive_back && !wish.end && wish.takes.empty() && wish.through.empty();
}

BeginAsk ask_for(const wish::Wish& wish, double from_m, double to_m) {
  return {.door = wish.home,
          .from_m = from_m,
          .to_m = to_m,
          .room_m = room_m,
          .corner_m = corner_m,
          .apart_m = apart_m,
          .most = most_of_ring,
          .stay = {wish.start, wish.start.plus_seconds(std::int64_t{60} * *wish.minutes)}};
}

/// The learner's road around a place is long enough to fill the minutes.
bool has_road(const road::Roads& roads, wish::Wish wish, Point at, const hours::Setting& setting) {
  wish.home = at;
  const ClockWalls walls(roads, wish, setting);
  const Ground ground(roads, wish, setting, walls);
  const std::int64_t drive_ms = 60'000LL * (*wish.minutes - wish.reserve_minutes);
  return road_within(ground, drive_ms) >= drive_ms;
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

}  // namespace

std::optional<EasierBegin> easier_begin(const road::Roads& roads, const wish::Wish& wish,
                                        const hours::Setting& setting) {
  if (!may_begin_elsewhere(wish)) return std::nullopt;
  for (std::size_t ring = 0; ring + 1 < ring_m.size(); ++ring) {
    std::size_t tried = 0;
    for (const BeginPlace& place :
         places_to_begin(roads, ask_for(wish, ring_m[ring], ring_m[ring + 1]), setting)) {
      if (tried == most_tried) break;
      if (!has_road(roads, wish, place.at, setting)) continue;
      ++tried;
      if (auto begin = begun_at(roads, wish, place, setting)) return begin;
    }
  }
  return std::nullopt;
}

}  // namespace loopwright::find
