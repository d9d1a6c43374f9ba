// The value of a drive (defined once, DEVELOPERS.md, "Value of a loop"):
//   1. Nothing wanted as "max", nothing welcome: minus the metres driven twice (a kilometre is 1000
//      milli-units).
//   2. Else what the passes are worth (counting.cpp), less the kilometres of quiet street driven twice.
#include "find/plan.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "find/counting.hpp"
#include "find/describe.hpp"
#include "find/stops.hpp"

namespace loopwright::find {

namespace {

// Milli-units, so metres driven twice; ours. Who asks for three doesn't want ten, and a sheet with
// fewer rows is easier to speak from.
constexpr std::int64_t surplus_weight = 60;
constexpr std::int64_t corner_weight = 10;
/// Metres. Round the smallest block of terraces is longer; ours.
constexpr double tiny_round_m = 200;

void append(std::vector<Vertex>& all, std::span<const Vertex> more) {
  if (!all.empty() && !more.empty() && all.back() == more.front()) more = more.subspan(1);
  all.insert(all.end(), more.begin(), more.end());
}

}  // namespace

void Circlings::take(const road::Roads& roads, StretchId stretch) {
  if ((roads.piece(stretch).flags & road::piece_flag::ring) != 0) {
    take_on_ring(stretch);
    lately_.clear(), lately_m_ = 0;
  } else {
    onto_ = StretchId{};
    take_off_ring(roads, stretch);
  }
}

void Circlings::take_on_ring(StretchId stretch) {
  if (!onto_.known())
    onto_ = stretch;
  else if (stretch == onto_)
    ++on_rings_;
}

void Circlings::take_off_ring(const road::Roads& roads, StretchId stretch) {
  if (std::ranges::find(lately_, stretch) != lately_.end()) {
    ++elsewhere_;
    lately_.clear(), lately_m_ = 0;
  }
  lately_.push_back(stretch);
  lately_m_ += roads.piece(stretch).length_m;
  auto first = lately_.begin();
  for (; lately_m_ > tiny_round_m; ++first) lately_m_ -= roads.piece(*first).length_m;
  lately_.erase(lately_.begin(), first);
}

std::vector<Vertex> Plan::vertices() const {
  std::vector<Vertex> all = legs.front();
  for (std::size_t i = 0; i < stops.size(); ++i) {
    append(all, stops[i].path);
    append(all, legs[i + 1]);
  }
  return all;
}

std::vector<std::size_t> Plan::rows_of_stops() const {
  std::vector<Vertex> all = legs.front();
  std::vector<std::size_t> rows;
  for (std::size_t i = 0; i < stops.size(); ++i) {
    const std::vector<Vertex>& path = stops[i].path;
    const bool shared = !all.empty() && all.back() == path.front();
    rows.push_back(all.size() - (shared ? 1 : 0));
    append(all, path);
    append(all, legs[i + 1]);
  }
  return rows;
}

std::int64_t leg_ms(const Hunt& hunt, const Plan& plan, std::size_t leg) {
  const std::vector<Vertex>& path = plan.legs[leg];
  if (path.empty()) return 0;
  std::int64_t ms = 0;
  if (leg == 0)
    for (const reach::LocalSeed& seed : hunt.starts)
      if (seed.vertex == path.front()) ms = seed.ms;
  for (std::size_t i = 1; i < path.size(); ++i)
    ms += hunt.graph.arc_between(path[i - 1], path[i])->turn_ms + hunt.graph.along_ms(path[i]);
  if (leg + 1 == plan.legs.size())
    for (const reach::LocalSeed& goal : hunt.goals)
      if (goal.vertex == path.back()) ms += goal.ms - hunt.graph.along_ms(path.back());
  return ms;
}

std::int64_t plan_ms(const Hunt& hunt, const Plan& plan) {
  std::int64_t ms = 0;
  for (std::size_t leg = 0; leg < plan.legs.size(); ++leg) ms += leg_ms(hunt, plan, leg);
  for (const Stop& stop : plan.stops)
    for (std::size_t i = 1; i < stop.path.size(); ++i)
      ms += hunt.graph.arc_between(stop.path[i - 1], stop.path[i])->turn_ms +
            hunt.graph.along_ms(stop.path[i]);
  return ms;
}

std::int64_t away_ms(const Hunt& hunt, const Plan& plan) {
  const std::int64_t driving_ms = plan_ms(hunt, plan);
  if (!hunt.with_stops) return driving_ms;
  const std::vector<Vertex> vertices = plan.vertices();
  return vertices.empty() ? driving_ms
                          : driving_ms + stops_ms(hunt.ground.roads, hunt.drive_of(vertices));
}

std::vector<reach::LocalSeed> seeds_before(const Hunt& hunt, const Plan& plan, std::size_t leg) {
  if (leg == 0) return hunt.starts;
  return {{plan.stops[leg - 1].path.back(), 0}};
}

std::vector<reach::LocalSeed> seeds_after(const Hunt& hunt, const Plan& plan, std::size_t leg) {
  if (leg == plan.stops.size()) return hunt.goals;
  const Vertex v = plan.stops[leg].path.front();
  return {{v, hunt.graph.along_ms(v)}};
}

std::int64_t Score::rating() const {
  return value - turning_weight * turnings - circling_weight * circlings -
         tiny_round_weight * tiny_rounds;
}

bool Score::better_than(const Score& other) const {
  const auto liking = [](const Score& s) {
    return s.rating() - surplus_weight * s.surplus - corner_weight * s.corners;
  };
  return std::tuple(over_caps, off_window_ms, missing, unplaced, -liking(*this)) <
         std::tuple(other.over_caps, other.off_window_ms, other.missing, other.unplaced,
                    -liking(other));
}

int corners_on(const Hunt& hunt, std::span<const Vertex> path) {
  int corners = 0;
  for (std::size_t i = 1; i < path.size(); ++i)
    if (std::abs(hunt.graph.arc_between(path[i - 1], path[i])->angle_deg) > 45) ++corners;
  return corners;
}

int turnings_on(const Hunt& hunt, std::span<const Vertex> path) {
  int turnings = 0;
  for (std::size_t i = 1; i < path.size(); ++i)
    if (hunt.graph.stretch(path[i]) == hunt.graph.stretch(path[i - 1]).back()) ++turnings;
  return turnings;
}

Circlings circlings_on(const Hunt& hunt, std::span<const Vertex> path) {
  Circlings circlings;
  for (const Vertex v : path) circlings.take(hunt.ground.roads, hunt.graph.stretch(v));
  return circlings;
}

std::vector<int> unmet(const Hunt& hunt, std::span<const PlacePass> passes) {
  std::vector<int> needs;
  for (const wish::Want& want : hunt.ground.wish.wants) {
    const auto got = static_cast<int>(counting(hunt.ground, passes, want).size());
    needs.push_back(std::max(0, want.count.value_or(0) - got));
  }
  return needs;
}

std::vector<int> drives_of_pieces(const Hunt& hunt, std::span<const Vertex> vertices) {
  std::vector<int> drives(hunt.piece_m.size(), 0);
  for (const Vertex v : vertices) ++drives[hunt.piece_of[v]];
  return drives;
}

std::vector<PlacePass> passes_on(const Hunt& hunt, const Drive& drive) {
  std::vector<PlacePass> passes = passes_of(hunt.ground.roads, drive);
  if (hunt.with_verdicts) judge_lanes(hunt.ground, timed(hunt.ground, drive), passes);
  if (counts_worth(hunt.ground.wish) || is_spaced(hunt.ground.wish))
    time_passes(hunt.ground, drive, passes);
  return passes;
}

Score score(const Hunt& hunt, std::span<const Vertex> vertices) {
  Score result;
  const Drive drive = hunt.drive_of(vertices);
  const std::vector<PlacePass> passes = passes_on(hunt, drive);
  const bool has_worth = counts_worth(hunt.ground.wish);
  for (const wish::Want& want : hunt.ground.wish.wants) {
    if (!want.count) continue;
    const auto got = static_cast<int>(counting(hunt.ground, passes, want).size());
    result.missing += std::max(0, *want.count - got);
    result.surplus += std::max(0, got - *want.count);
  }
  result.missing += not_taken(hunt.takes, vertices);
  const std::vector<int> drives = drives_of_pieces(hunt, vertices);
  for (std::size_t piece = 0; piece < drives.size(); ++piece)
    if (hunt.piece_quiet[piece] != 0)
      result.over_caps += std::max(0, drives[piece] - hunt.piece_most[piece]);
  result.unplaced = drive.unplaced;
  result.turnings = turnings_on(hunt, vertices);
  const Circlings circlings = circlings_on(hunt, vertices);
  result.circlings = circlings.on_rings(), result.tiny_rounds = circlings.elsewhere();
  result.corners = corners_on(hunt, vertices);
  result.ms = hunt.drive_ms(vertices) + stops_ms(hunt.ground.roads, drive);
  result.off_window_ms =
      std::max({std::int64_t{0}, hunt.low_ms - result.ms, result.ms - hunt.high_ms});
  const std::uint32_t twice_flags = has_worth ? road::piece_flag::quiet : 0;
  result.value = -std::llround(metres_twice(hunt.ground.roads, drive, twice_flags));
  if (has_worth) result.value += worth_of(hunt.ground, passes);
  return result;
}

Score score(const Hunt& hunt, const Plan& plan) {
  const std::vector<Vertex> vertices = plan.vertices();
  if (!vertices.empty()) return score(hunt, vertices);
  Score nothing;
  for (const int needs : unmet(hunt, std::span<const PlacePass>{})) nothing.missing += needs;
  nothing.missing += not_taken(hunt.takes, {});
  nothing.off_window_ms = hunt.low_ms;
  return nothing;
}

}  // namespace loopwright::find
