// Searches over all states of an area.
//   1. Forwards: an edge is a row of roads.turns; a step costs the wait at the turn and driving the
//      stretch it leads into.
//   2. Backwards: an edge is a row of Backwards; a step costs the wait and driving the stretch one
//      comes from, so a state's time starts at the beginning of its stretch.
#include <algorithm>

#include "loopwright/reach/reach.hpp"
#include "reach/search.hpp"

namespace loopwright::reach {

namespace {

struct TurnRows {
  const road::Roads* roads;
  [[nodiscard]] std::uint32_t first(std::uint32_t v) const { return roads->turn_first[v]; }
  [[nodiscard]] std::uint32_t last(std::uint32_t v) const { return roads->turn_first[v + 1]; }
  [[nodiscard]] std::uint32_t target_of(std::uint32_t row) const {
    return roads->turns[row].to.value;
  }
};

struct BackRows {
  const Backwards* backwards;
  [[nodiscard]] std::uint32_t first(std::uint32_t v) const {
    return backwards->rows_into(StateId{v}).first;
  }
  [[nodiscard]] std::uint32_t last(std::uint32_t v) const {
    return backwards->rows_into(StateId{v}).second;
  }
  [[nodiscard]] std::uint32_t target_of(std::uint32_t row) const {
    return backwards->move(row).from.value;
  }
};

/// What it costs to make a turn and then drive the given stretch.
Step step_over(const road::Roads& roads, const Costs& costs, std::uint32_t turn, StateId driven) {
  const std::int32_t along = costs.along_ms(roads.stretch_of(driven));
  if (along < 0 || costs.is_banned(turn)) return {.allowed = false};
  const std::int64_t ms = along + costs.wait_ms(roads.turns[turn].control);
  return {ms, ms, true};
}

std::vector<std::pair<std::uint32_t, std::int64_t>> allowed_seeds(const road::Roads& roads,
                                                                  const Costs& costs,
                                                                  std::span<const Seed> seeds) {
  std::vector<std::pair<std::uint32_t, std::int64_t>> allowed;
  for (const Seed& seed : seeds)
    if (costs.may_drive(roads.stretch_of(seed.state)))
      allowed.emplace_back(seed.state.value, seed.ms);
  return allowed;
}

/// Both sweeps count the stretch of the state they meet on.
Bounds bounds_of(const road::Roads& roads, const Costs& costs, const SweepLimits& limits) {
  Bounds bounds{limits.limit_ms, {}, limits.until};
  if (limits.meeting == nullptr) return bounds;
  bounds.keeps = [&roads, &costs, &limits](std::uint32_t v, std::int64_t ms) {
    const StateId s{v};
    const std::int64_t before = ms - costs.along_ms(roads.stretch_of(s));
    if (before <= limits.meeting_after_ms) return true;
    return limits.meeting->reached(s) && before + limits.meeting->ms(s) <= limits.limit_ms;
  };
  return bounds;
}

}  // namespace

struct Sweep::Inside {
  const road::Roads* roads;
  const Backwards* backwards;
  Labels labels;
  bool ran_back = false;
};

Sweep::Sweep(const road::Roads& roads, const Backwards* backwards)
    : inside_(new Inside{&roads, backwards, Labels(roads.state_count())}) {}
Sweep::~Sweep() = default;
Sweep::Sweep(Sweep&&) noexcept = default;
Sweep& Sweep::operator=(Sweep&&) noexcept = default;

void Sweep::run(std::span<const Seed> seeds, const Costs& costs, const SweepLimits& limits) {
  const road::Roads& roads = *inside_->roads;
  inside_->ran_back = false;
  const RowGraph graph(TurnRows{&roads});
  search(
      graph, allowed_seeds(roads, costs, seeds),
      [&](const RowEdge& e) { return step_over(roads, costs, e.row, StateId{e.to}); },
      bounds_of(roads, costs, limits), inside_->labels);
}

void Sweep::run_back(std::span<const Seed> seeds, const Costs& costs, const SweepLimits& limits) {
  assert(inside_->backwards != nullptr);
  const road::Roads& roads = *inside_->roads;
  const Backwards& backwards = *inside_->backwards;
  inside_->ran_back = true;
  const RowGraph graph(BackRows{&backwards});
  search(
      graph, allowed_seeds(roads, costs, seeds),
      [&](const RowEdge& e) {
        return step_over(roads, costs, backwards.move(e.row).turn, StateId{e.to});
      },
      bounds_of(roads, costs, limits), inside_->labels);
}

bool Sweep::reached(StateId s) const {
  return inside_->labels.reached(s.value);
}

std::int64_t Sweep::ms(StateId s) const {
  assert(reached(s));
  return inside_->labels.at(s.value).ms;
}

std::span<const std::uint32_t> Sweep::settled() const {
  return inside_->labels.settled();
}

std::vector<StateId> Sweep::path(StateId s) const {
  assert(reached(s));
  std::vector<StateId> states;
  for (const std::uint32_t v : inside_->labels.up_from(s.value)) states.emplace_back(v);
  if (!inside_->ran_back) std::reverse(states.begin(), states.end());
  return states;
}

void sweep_between(Sweep& out, Sweep& back, std::span<const Seed> seeds,
                   std::span<const Seed> goals, const Costs& costs, std::int64_t limit_ms) {
  // What lies in the later half of some drive is near the goal: a search that goes on only where the other way
  // has been sees a quarter of what it could get to.
  back.run_back(goals, costs, limit_ms / 2);
  out.run(seeds, costs, {limit_ms, &back, limit_ms / 2});
  back.run_back(goals, costs, {limit_ms, &out, -1});
}

}  // namespace loopwright::reach
