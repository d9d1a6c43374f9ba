// The instructor's own drive: least time through points in order, by layers.
//   1. Layer 0 holds the ways of leaving home. The next layer searches on from every way in which
//      the last point was passed, and keeps each direction in which the next one is reached.
//   2. A point further along the same stretch is passed without a search.
//   3. The last layer ends at the end; the cheapest way is followed back through the layers.
#include <algorithm>
#include <cmath>
#include <map>

#include <span>

#include "find/by_the_hour.hpp"
#include "find/describe.hpp"
#include "find/independent.hpp"
#include "find/pull_ups.hpp"
#include "find/reached_chances.hpp"
#include "find/shortfall.hpp"
#include "find/stops.hpp"
#include "find/ways_home.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/find/find.hpp"

namespace loopwright::find {

namespace {

/// One way in which a point is passed: on a state, whose end is reached at `ms`.
struct Passing {
  StateId state;
  std::int64_t ms = 0;
  bool direct = false;  ///< on the same stretch as the point before, without a search
};

struct Layer {
  reach::Snap point;
  std::vector<Passing> passings;
  std::map<StateId, StateId> came_from;  ///< seed of this layer's search -> passing before it
  std::optional<reach::Sweep> sweep;
};

double entered_m(const road::Roads& roads, const reach::Snap& snap, StretchId s) {
  return s.against() ? roads.piece(s).length_m - snap.along_m : snap.along_m;
}

class ThroughSearch {
 public:
  explicit ThroughSearch(const Ground& ground) : ground_(ground) {
    layers_.push_back({ground.home, {}, {}, {}});
    for (const reach::Seed& seed : ground.starts)
      layers_.front().passings.push_back({seed.state, seed.ms, false});
  }

  /// False when the point can't be reached from the one before.
  bool go_on_to(const reach::Snap& point) {
    Layer layer{point, {}, {}, std::nullopt};
    layer.sweep.emplace(ground_.roads);
    layer.sweep->run(seeds_after(layers_.back(), layer.came_from), ground_.costs, longest_ms);
    collect(layer);
    layers_.push_back(std::move(layer));
    return !layers_.back().passings.empty();
  }

  /// The whole drive, ending in the last point.
  [[nodiscard]] Drive drive() const {
    const Layer& last = layers_.back();
    const auto best = std::min_element(
        last.passings.begin(), last.passings.end(), [&](const Passing& a, const Passing& b) {
          return std::pair(time_at_end(a), a.state) < std::pair(time_at_end(b), b.state);
        });
    Drive drive;
    follow_back(*best, drive.states);
    const StretchId first = ground_.roads.stretch_of(drive.states.front());
    drive.start_m = entered_m(ground_.roads, layers_.front().point, first);
    drive.end_m = entered_m(ground_.roads, last.point, ground_.roads.stretch_of(best->state));
    return drive;
  }

 private:
  /// States one turn beyond the passings of a layer, each at its least time.
  std::vector<reach::Seed> seeds_after(const Layer& layer,
                                       std::map<StateId, StateId>& came_from) const {
    std::map<StateId, std::int64_t> least;
    for (const Passing& passing : layer.passings)
      for (const road::Turn& turn : ground_.roads.turns_from(passing.state)) {
        const std::int64_t ms = time_over(passing, turn);
        if (ms < 0) continue;
        const auto it = least.find(turn.to);
        if (it != least.end() && it->second <= ms) continue;
        least[turn.to] = ms;
        came_from[turn.to] = passing.state;
      }
    std::vector<reach::Seed> seeds;
    for (const auto& [state, ms] : least) seeds.push_back({state, ms});
    return seeds;
  }

  [[nodiscard]] std::int64_t time_over(const Passing& passing, const road::Turn& turn) const {
    const auto row = static_cast<std::size_t>(&turn - ground_.roads.turns.data());
    const std::int64_t along = ground_.costs.along_ms(ground_.roads.stretch_of(turn.to));
    if (along < 0 || ground_.costs.is_banned(row)) return -1;
    return passing.ms + ground_.costs.wait_ms(turn.control) + along;
  }

  void collect(Layer& layer) const {
    for (const Passing& before : layers_.back().passings) {
      const StretchId s = ground_.roads.stretch_of(before.state);
      if (s.piece() == layer.point.piece && entered_m(ground_.roads, layer.point, s) >=
                                                entered_m(ground_.roads, layers_.back().point, s))
        layer.passings.push_back({before.state, before.ms, true});
    }
    for (const bool against : {false, true})
      for (const StateId s : reach::states_of(ground_.roads, StretchId(layer.point.piece, against)))
        if (layer.sweep->reached(s) && !passed(layer, s))
          layer.passings.push_back({s, layer.sweep->ms(s), false});
  }

  static bool passed(const Layer& layer, StateId s) {
    return std::any_of(layer.passings.begin(), layer.passings.end(),
                       [&](const Passing& p) { return p.state == s; });
  }

  [[nodiscard]] std::int64_t time_at_end(const Passing& passing) const {
    const StretchId s = ground_.roads.stretch_of(passing.state);
    const double beyond_from = entered_m(ground_.roads, layers_.back().point, s);
    return passing.ms -
           ground_.pace.along_part(s, beyond_from, ground_.roads.piece(s).length_m).likely_ms;
  }

  void follow_back(Passing passing, std::vector<StateId>& states) const {
    std::vector<StateId> backwards{passing.state};
    for (std::size_t layer = layers_.size() - 1; layer > 0; --layer) {
      StateId before = passing.state;
      if (!passing.direct) {
        const std::vector<StateId> path = layers_[layer].sweep->path(passing.state);
        for (std::size_t i = path.size() - 1; i-- > 0;) backwards.push_back(path[i]);
        before = layers_[layer].came_from.at(path.front());
        backwards.push_back(before);
      }
      const auto& earlier = layers_[layer - 1].passings;
      passing = *std::find_if(earlier.begin(), earlier.end(),
                              [&](const Passing& p) { return p.state == before; });
    }
    states.assign(backwards.rbegin(), backwards.rend());
  }

  const Ground& ground_;
  std::vector<Layer> layers_;
};

/// The points of the drive on the roads, the end the last.
std::vector<reach::Snap> points_of(const Ground& ground) {
  std::vector<reach::Snap> points;
  for (const Point& point : ground.wish.through) {
    const auto snap = reach::snap_home(ground.roads, point);
    if (!snap)
      throw UsageError("point " + std::to_string(points.size() + 1) +
                       " of --through is over 150 m from any road a learner may use");
    points.push_back(*snap);
  }
  points.push_back(ground.end);
  return points;
}

/// How many of these points are reached, one after the other.
std::size_t reached_of(ThroughSearch& search, std::span<const reach::Snap> points) {
  std::size_t reached = 0;
  while (reached < points.size() && search.go_on_to(points[reached])) ++reached;
  return reached;
}

/// The drive's likely minutes, its stops counted; empty when some point can't be reached.
std::optional<int> minutes_of(const Ground& ground, std::span<const reach::Snap> points) {
  if (ground.starts.empty() || ground.goals.empty()) return std::nullopt;
  ThroughSearch search(ground);
  if (reached_of(search, points) < points.size()) return std::nullopt;
  Drive drive = search.drive();
  plan_stops(ground, drive);
  const wish::Loop loop = describe(ground, drive);
  return static_cast<int>(std::ceil((loop.seconds.likely + loop.stop_seconds) / 60));
}

/// points: of the drive; reached: as many as were.
wish::Shortfall not_through(const Ground& ground, std::span<const reach::Snap> points,
                            std::size_t reached) {
  const auto name = [&](std::size_t k) {
    return k == points.size() ? "the end" : "point " + std::to_string(k);
  };
  wish::Shortfall shortfall;
  shortfall.why = "no way from " + (reached == 0 ? std::string("home") : name(reached)) + " to " +
                  name(reached + 1) + " that a learner may drive within this wish";
  ByTheHour clock(ground, [points](const Ground& open) { return minutes_of(open, points); });
  const std::string shut = clock.blame([points](const Ground& open) {
    if (open.starts.empty() || open.goals.empty()) return 0;
    ThroughSearch search(open);
    return 1 + static_cast<int>(reached_of(search, points));
  });
  if (!shut.empty()) shortfall.why += "; at that time " + shut;
  clock.give_starts(shortfall);
  return shortfall;
}

/// What the drive leaves unmet of the wish, when anything.
std::optional<wish::Shortfall> shortfall_of(const Ground& ground, const wish::Loop& loop) {
  Nearest nearest;
  bool short_of = false;
  for (const wish::Met& met : loop.met) {
    nearest.got.push_back(met.got);
    short_of = short_of || met.got < met.want.count.value_or(0);
  }
  const double minutes = (loop.seconds.likely + loop.stop_seconds) / 60;
  nearest.longest_minutes = minutes;
  if (short_of) return explain(ground, nearest);
  if (!ground.wish.minutes || minutes <= *ground.wish.minutes - ground.wish.reserve_minutes)
    return std::nullopt;
  wish::Shortfall too_long;
  too_long.why = "this drive takes longer than the minutes allow";
  too_long.least_minutes = minutes;
  return too_long;
}

FindResult route_once(const Ground& ground) {
  const std::vector<reach::Snap> points = points_of(ground);
  if (ground.starts.empty() || ground.goals.empty()) {
    const auto length = [&](const Ground& open) { return minutes_of(open, points); };
    return {{}, explain_shut_in(ground, length), {}};
  }
  ThroughSearch search(ground);
  const std::size_t reached = reached_of(search, points);
  if (reached < points.size()) return {{}, not_through(ground, points, reached), {}};
  Drive drive = search.drive();
  plan_stops(ground, drive);
  wish::Loop loop = describe(ground, drive);
  loop.certificate.value = -std::llround(loop.metres_twice);
  add_pull_ups(ground, drive, loop);
  WaysHome(ground, states_before_end(ground, away_ms(ground, drive)), away_ms(ground, drive))
      .add_to(drive, loop);
  FindResult result;
  result.shortfall = shortfall_of(ground, loop);
  tell_without_place(ground, drive, loop, result.shortfall);
  add_independent(ground.roads, ground.wish, loop, result.shortfall);
  result.loops.push_back(std::move(loop));
  return result;
}

}  // namespace

FindResult route_through(const road::Roads& roads, const wish::Wish& wish,
                         const hours::Setting& setting) {
  ClockWalls walls(roads, wish, setting);
  for (;;) {
    FindResult result = route_once(Ground(roads, wish, setting, walls));
    if (result.loops.empty()) return result;
    const auto breaches = lanes::breaches_on(roads, result.loops.front(), setting);
    if (breaches.empty()) return result;
    if (walls.is_last_round()) {  // longer than three hours: its end lies beyond the window
      return {{}, explain_shut(breaches.front()), {}};
    }
    walls.learn(breaches);
  }
}

}  // namespace loopwright::find
