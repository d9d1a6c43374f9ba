// 1. Three layers of the roads within reach, each swept once, backwards from the end: without what is hard
//    whichever way one passes it; also without each way out of a junction that is hard for someone; all.
// 2. From where a row ends, the best turn that isn't shut leads into the sweep. The first layer that gives an
//    easy way has it, else the layer with the least hard one.
// 3. Times go on from those of the loop at that row's end; what the way passes tells how hard it is.
#include "find/ways_home.hpp"

#include <algorithm>

#include "find/describe.hpp"
#include "find/stops.hpp"
#include "find/turn_bans.hpp"
#include "loopwright/lanes/passage.hpp"
#include "loopwright/road/kind_table.hpp"
#include "loopwright/wish/stops.hpp"

namespace loopwright::find {

namespace {

/// Without what the clock may shut at some minute of the lesson.
reach::Costs open_costs(const Ground& ground) {
  reach::Costs costs = ground.costs;
  ClockWalls walls = ground.walls;
  walls.shut_all();
  walls.apply(ground.roads, costs);
  return costs;
}

class HardRoads {
 public:
  /// wary: also shuts the way out of a junction that is hard from some entries alone.
  HardRoads(const Ground& ground, bool wary, reach::Costs& costs)
      : roads_(ground.roads),
        most_(wish::easy_hardness(ground.wish)),
        wary_(wary),
        costs_(costs),
        bans_(ground.roads, costs) {}

  void shut_on(StretchId s) {
    for (const road::RunFact& fact : roads_.run_facts_of(s))
      if (is_hard(fact.kind, fact.hardness)) costs_.shut(s);
    for (const road::Chance& chance : roads_.chances_from(s)) shut(chance);
  }

 private:
  [[nodiscard]] bool is_hard(road::Kind kind, int hardness) const {
    return hardness > most_ && !road::is_of_choice(kind);
  }

  /// Whichever way one leaves its place, coming from its entry.
  [[nodiscard]] bool is_always_hard(const road::Chance& chance) const {
    return std::ranges::all_of(roads_.chances_from(chance.entry), [&](const road::Chance& other) {
      return other.place != chance.place || is_hard(other.kind, other.hardness);
    });
  }

  void shut(const road::Chance& chance) {
    const road::KindForm form = road::form_of(chance.kind);
    if (form == road::KindForm::run || form == road::KindForm::manoeuvre) return;
    if (!is_hard(chance.kind, chance.hardness)) return;
    const auto path = roads_.path_of(chance);
    if (path.size() == 1) {
      costs_.shut(path[0]);
    } else if (path.size() == 2 || is_always_hard(chance)) {
      bans_.shut(path[0], path[1]);
    } else if (wary_) {
      bans_.shut(path[path.size() - 2], path.back());
    }
  }

  const road::Roads& roads_;
  int most_;
  bool wary_;
  reach::Costs& costs_;
  TurnBans bans_;
};

std::vector<StateId> drivable(const Ground& ground, const reach::Costs& costs,
                              std::vector<StateId> states) {
  std::erase_if(states, [&](StateId s) { return !costs.may_drive(ground.roads.stretch_of(s)); });
  return states;
}

/// Rows of a loop after which one may want to go home; ascending, each once.
std::vector<std::size_t> rows_to_leave(const wish::Loop& loop) {
  std::vector<std::size_t> rows;
  for (const wish::Pass& pass : loop.passes) {
    if (road::form_of(pass.kind) != road::KindForm::junction) continue;
    const bool told = pass.movement != road::Movement::ahead || pass.hardness >= wish::hard_pass;
    if (told && pass.movement != road::Movement::none) rows.push_back(pass.last);
  }
  for (const wish::PullUp& place : loop.pull_ups) rows.push_back(place.stretch);
  std::sort(rows.begin(), rows.end());
  rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
  std::erase_if(rows, [&](std::size_t row) { return row + 1 >= loop.stretches.size(); });
  return rows;
}

}  // namespace

struct WaysHome::Layer {
  Layer(const Ground& ground, reach::Costs layer_costs, std::vector<StateId> states,
        std::int64_t limit_ms)
      : costs(std::move(layer_costs)),
        graph(ground.roads, costs, drivable(ground, costs, std::move(states))),
        sweep(graph) {
    std::vector<reach::LocalSeed> goals;
    for (const reach::Seed& seed : ground.goals)
      if (const Vertex v = graph.vertex(seed.state); v != reach::LocalGraph::none)
        goals.push_back({v, static_cast<std::int32_t>(seed.ms)});
    sweep.run_back(goals, {.limit_ms = limit_ms});
  }

  /// The quickest way on from the end of a state; empty when there is none.
  [[nodiscard]] std::vector<StateId> path_from(const road::Roads& roads, StateId state) const {
    Vertex best = reach::LocalGraph::none;
    std::int64_t best_ms = 0;
    for (const road::Turn& turn : roads.turns_from(state)) {
      const auto row = static_cast<std::size_t>(&turn - roads.turns.data());
      if (costs.is_banned(row)) continue;
      const Vertex v = graph.vertex(turn.to);
      if (v == reach::LocalGraph::none || !sweep.reached(v)) continue;
      const std::int64_t ms = costs.wait_ms(turn.control) + sweep.ms(v);
      if (best != reach::LocalGraph::none && best_ms <= ms) continue;
      best = v, best_ms = ms;
    }
    std::vector<StateId> states;
    if (best == reach::LocalGraph::none) return states;
    for (const Vertex v : sweep.path(best)) states.push_back(graph.state(v));
    return states;
  }

  reach::Costs costs;
  reach::LocalGraph graph;
  reach::LocalSweep sweep;
};

std::vector<StateId> states_before_end(const Ground& ground, std::int64_t limit_ms) {
  const reach::Backwards backwards(ground.roads);
  reach::Sweep back(ground.roads, &backwards);
  back.run_back(ground.goals, ground.costs, limit_ms);
  std::vector<StateId> states;
  for (const std::uint32_t row : back.settled()) states.push_back(StateId{row});
  std::sort(states.begin(), states.end());
  return states;
}

WaysHome::WaysHome(const Hunt& hunt) : WaysHome(hunt.ground, {}, hunt.high_ms) {
  for (Vertex v = 0; v < hunt.graph.size(); ++v) states_.push_back(hunt.graph.state(v));
}

WaysHome::WaysHome(const Ground& ground, std::vector<StateId> states, std::int64_t limit_ms)
    : ground_(ground), states_(std::move(states)), limit_ms_(limit_ms) {}
WaysHome::~WaysHome() = default;

WaysHome::Layer& WaysHome::layer(std::size_t k) {
  if (!layers_[k]) {
    reach::Costs costs = open_costs(ground_);
    if (k + 1 < layer_count) {
      HardRoads hard(ground_, k > 0, costs);
      for (const StateId state : states_) hard.shut_on(ground_.roads.stretch_of(state));
    }
    layers_[k] = std::make_unique<Layer>(ground_, std::move(costs), states_, limit_ms_);
  }
  return *layers_[k];
}

namespace {

/// The hardest thing passed after the first row of a drive.
int hardest_on(const road::Roads& roads, const Drive& drive) {
  int hardest = 0;
  for (const PlacePass& found : passes_of(roads, drive))
    if (found.pass.last > 0 && !road::is_of_choice(found.pass.kind))
      hardest = std::max(hardest, found.pass.hardness);
  return hardest;
}

}  // namespace

/// Makes the ways of one drive.
class WayWriter {
 public:
  WayWriter(const Ground& ground, const Drive& drive, const wish::Loop& loop)
      : ground_(ground),
        drive_(drive),
        loop_(loop),
        before_(spells_before(ground.roads, ground.pace, drive)) {}

  /// Left at the end of a row, by the states of the path.
  [[nodiscard]] wish::WayHome way(std::size_t row, const std::vector<StateId>& path) const {
    const road::Roads& roads = ground_.roads;
    Drive rest;
    rest.states = path;
    rest.end_m = ground_.end_m(roads.stretch_of(path.back()));
    const pace::Spell left = at_end_of(row);
    const pace::Spell turned = left + turn_spell(ground_, drive_.states[row], path.front());
    const double stops_s = static_cast<double>(stops_before_ms(roads, drive_, row + 1)) / 1000;
    const std::vector<pace::Spell> on = spells_before(roads, ground_.pace, rest);
    wish::WayHome way;
    way.from_stretch = row;
    way.seconds = static_cast<double>((turned + on.back()).likely_ms - left.likely_ms) / 1000;
    way.hardest = hardest_after(row, path, rest.end_m);
    for (std::size_t i = 0; i < path.size(); ++i) {
      way.stretches.push_back(row_of(ground_, rest, i));
      if (i + 1 < path.size()) way.stretches.back().partial_m.reset();
      const pace::Percentiles p = pace::percentiles_of(turned + on[i]);
      way.stretches.back().arrive_s = {p.low + stops_s, p.likely + stops_s, p.high + stops_s};
    }
    return way;
  }

  /// What the clock may shut on it is open at the time, or it ends within the lesson, for which all that
  /// is known.
  [[nodiscard]] bool open(const wish::WayHome& way) const {
    const double last_s = way.stretches.back().arrive_s.high + 60;
    const Instant end = ground_.wish.start.plus_seconds(static_cast<std::int64_t>(last_s));
    const ClockWalls& walls = ground_.walls;
    const bool nothing_shut = walls.walls().empty() && !walls.some_at_times();
    if (nothing_shut && end.unix_s <= walls.window().to.unix_s) return true;
    wish::Loop whole;
    whole.start = loop_.start;
    whole.stretches.assign(
        loop_.stretches.begin(),
        loop_.stretches.begin() + static_cast<std::ptrdiff_t>(way.from_stretch) + 1);
    const std::size_t first = whole.stretches.size();
    whole.stretches.insert(whole.stretches.end(), way.stretches.begin(), way.stretches.end());
    whole.seconds.high = last_s;
    const auto met = lanes::breaches_on(ground_.roads, whole, ground_.setting);
    return std::ranges::none_of(met, [&](const lanes::Breach& b) { return b.at >= first; });
  }

 private:
  /// Driving up to the end of a row that isn't the last.
  [[nodiscard]] pace::Spell at_end_of(std::size_t row) const {
    const StretchId s = ground_.roads.stretch_of(drive_.states[row]);
    const double from_m = row == 0 ? drive_.start_m : 0;
    return before_[row] + ground_.pace.along_part(s, from_m, ground_.roads.piece(s).length_m);
  }

  [[nodiscard]] int hardest_after(std::size_t row, const std::vector<StateId>& path,
                                  double end_m) const {
    Drive joined;
    joined.states.push_back(drive_.states[row]);
    joined.states.insert(joined.states.end(), path.begin(), path.end());
    joined.start_m = row == 0 ? drive_.start_m : 0;
    joined.end_m = end_m;
    return hardest_on(ground_.roads, joined);
  }

  const Ground& ground_;
  const Drive& drive_;
  const wish::Loop& loop_;
  std::vector<pace::Spell> before_;
};

std::optional<wish::WayHome> WaysHome::way_from(const WayWriter& writer, StateId state,
                                                std::size_t row) {
  std::optional<wish::WayHome> best;
  for (std::size_t k = 0; k < layer_count; ++k) {
    const std::vector<StateId> path = layer(k).path_from(ground_.roads, state);
    if (path.empty()) continue;
    wish::WayHome way = writer.way(row, path);
    if ((best && best->hardest <= way.hardest) || !writer.open(way)) continue;
    best = std::move(way);
    if (best->hardest <= wish::easy_hardness(ground_.wish)) break;
  }
  return best;
}

void WaysHome::add_to(const Drive& drive, wish::Loop& loop) {
  loop.ways_home.clear();
  const WayWriter writer(ground_, drive, loop);
  for (const std::size_t row : rows_to_leave(loop))
    if (auto way = way_from(writer, drive.states[row], row))
      loop.ways_home.push_back(std::move(*way));
}

}  // namespace loopwright::find
