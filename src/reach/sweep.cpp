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
  std::span<const std::uint32_t> firsts;
  std::span<const Backwards::Move> moves;
  [[nodiscard]] std::uint32_t first(std::uint32_t v) const { return firsts[v]; }
  [[nodiscard]] std::uint32_t last(std::uint32_t v) const { return firsts[v + 1]; }
  [[nodiscard]] std::uint32_t target_of(std::uint32_t row) const { return moves[row].from.value; }
};

/// What it costs to make a turn and then drive the given stretch.
Step step_over(const road::Roads& roads, const Costs& costs, std::uint32_t turn, StateId driven) {
  const std::int32_t along = costs.stretch_ms[roads.stretch_of(driven).index()];
  if (along < 0 || (!costs.turn_banned.empty() && costs.turn_banned[turn] != 0))
    return {.allowed = false};
  const std::int64_t ms =
      along + costs.control_ms[static_cast<std::size_t>(roads.turns[turn].control)];
  return {ms, ms, true};
}

std::vector<std::pair<std::uint32_t, std::int64_t>> allowed_seeds(const road::Roads& roads,
                                                                  const Costs& costs,
                                                                  std::span<const Seed> seeds) {
  std::vector<std::pair<std::uint32_t, std::int64_t>> allowed;
  for (const Seed& seed : seeds)
    if (costs.stretch_ms[roads.stretch_of(seed.state).index()] >= 0)
      allowed.emplace_back(seed.state.value, seed.ms);
  return allowed;
}

}  // namespace

Backwards::Backwards(const road::Roads& roads) : first_(roads.state_count() + 1, 0) {
  for (const road::Turn& turn : roads.turns) ++first_[turn.to.index() + 1];
  for (std::size_t s = 1; s < first_.size(); ++s) first_[s] += first_[s - 1];
  moves_.resize(roads.turns.size());
  std::vector<std::uint32_t> next(first_.begin(), first_.end() - 1);
  for (std::size_t from = 0; from < roads.state_count(); ++from)
    for (std::uint32_t row = roads.turn_first[from]; row < roads.turn_first[from + 1]; ++row)
      moves_[next[roads.turns[row].to.index()]++] = {StateId{from}, row};
}

std::span<const Backwards::Move> Backwards::into(StateId s) const {
  return std::span(moves_).subspan(first_[s.index()], first_[s.index() + 1] - first_[s.index()]);
}

std::vector<StateId> states_of(const road::Roads& roads, StretchId stretch) {
  std::vector<StateId> states{StateId{stretch.index()}};
  for (std::size_t copy = 0; copy < roads.copies.size(); ++copy)
    if (roads.copies[copy] == stretch) states.emplace_back(roads.stretch_count() + copy);
  return states;
}

Costs costs_of(const road::Roads& roads, const pace::Pace& pace) {
  Costs costs;
  costs.stretch_ms.resize(roads.stretch_count());
  for (std::size_t row = 0; row < costs.stretch_ms.size(); ++row) {
    const StretchId s{row};
    costs.stretch_ms[row] =
        roads.drivable(s) ? static_cast<std::int32_t>(pace.along(s).likely_ms) : -1;
  }
  for (std::size_t c = 0; c < road::control_count; ++c)
    costs.control_ms[c] =
        static_cast<std::int32_t>(pace.at(static_cast<road::Control>(c)).likely_ms);
  return costs;
}

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

void Sweep::run(std::span<const Seed> seeds, const Costs& costs, std::int64_t limit_ms) {
  const road::Roads& roads = *inside_->roads;
  inside_->ran_back = false;
  const RowGraph graph(TurnRows{&roads});
  search(
      graph, allowed_seeds(roads, costs, seeds),
      [&](const RowEdge& e) { return step_over(roads, costs, e.row, StateId{e.to}); }, limit_ms,
      inside_->labels);
}

void Sweep::run_back(std::span<const Seed> seeds, const Costs& costs, std::int64_t limit_ms) {
  assert(inside_->backwards != nullptr);
  const road::Roads& roads = *inside_->roads;
  const Backwards& backwards = *inside_->backwards;
  inside_->ran_back = true;
  const RowGraph graph(BackRows{backwards.firsts(), backwards.moves()});
  search(
      graph, allowed_seeds(roads, costs, seeds),
      [&](const RowEdge& e) {
        return step_over(roads, costs, backwards.moves()[e.row].turn, StateId{e.to});
      },
      limit_ms, inside_->labels);
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

}  // namespace loopwright::reach
