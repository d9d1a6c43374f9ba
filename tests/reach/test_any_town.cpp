// What must hold of shortest drives in any town: held against times that are lowered turn by turn until
// none can be (Bellman and Ford), and against the turns themselves.
#include <algorithm>
#include <catch2/catch.hpp>
#include <limits>

#include "loopwright/reach/reach.hpp"
#include "loopwright/reach/strong_parts.hpp"
#include "support/built_town.hpp"
#include "support/random_town.hpp"

namespace loopwright::test {
namespace {

constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max();
constexpr int towns = 60;

struct AnyTown {
  explicit AnyTown(std::uint64_t seed) : dice(seed) {}
  Dice dice;
  std::string drawing = random_town(dice);
  BuiltTown town = built_town(draw_town(drawing, 100), "GB-ENG");
  road::Roads roads = town.roads();
  pace::Pace pace{roads, {.level = 3}, Instant{1795878000, 0}};
  reach::Costs costs{roads, pace};
  reach::Backwards backwards{roads};

  StateId any_state() { return StateId{dice.below(roads.state_count())}; }
  [[nodiscard]] std::int32_t along_ms(StateId s) const {
    return costs.along_ms(roads.stretch_of(s));
  }
  [[nodiscard]] std::int64_t wait_ms(const road::Turn& turn) const {
    return pace.at(turn).likely_ms;
  }
};

/// The least times to the ends of all states from one, by lowering.
std::vector<std::int64_t> lowered(const AnyTown& any, StateId from) {
  std::vector<std::int64_t> ms(any.roads.state_count(), never);
  ms[from.index()] = any.along_ms(from);
  for (bool lower = true; lower;) {
    lower = false;
    for (std::size_t row = 0; row < ms.size(); ++row) {
      if (ms[row] == never) continue;
      for (const road::Turn& turn : any.roads.turns_from(StateId{row})) {
        if (any.along_ms(turn.to) < 0) continue;
        const std::int64_t there = ms[row] + any.wait_ms(turn) + any.along_ms(turn.to);
        if (there >= ms[turn.to.index()]) continue;
        ms[turn.to.index()] = there;
        lower = true;
      }
    }
  }
  return ms;
}

/// The time of a drive, summed turn by turn; never for one that takes a turn there isn't.
std::int64_t summed_ms(const AnyTown& any, const std::vector<StateId>& drive) {
  std::int64_t ms = any.along_ms(drive.front());
  for (std::size_t i = 1; i < drive.size(); ++i) {
    const auto turns = any.roads.turns_from(drive[i - 1]);
    const auto turn = std::ranges::find(turns, drive[i], &road::Turn::to);
    if (turn == turns.end()) return never;
    ms += any.wait_ms(*turn) + any.along_ms(drive[i]);
  }
  return ms;
}

}  // namespace

TEST_CASE("in any town a sweep has the least times, and drives that take them", "[reach]") {
  AnyTown any(static_cast<std::uint64_t>(GENERATE(range(1, towns))));
  INFO(any.drawing);
  REQUIRE(any.roads.state_count() > 0);
  const StateId from = any.any_state();
  if (any.along_ms(from) < 0) return;
  const std::array seeds{reach::Seed{from, any.along_ms(from)}};
  reach::Sweep sweep(any.roads);
  sweep.run(seeds, any.costs, never / 4);
  const std::vector<std::int64_t> least = lowered(any, from);
  for (std::size_t row = 0; row < least.size(); ++row) {
    const StateId s{row};
    REQUIRE(sweep.reached(s) == (least[row] != never));
    if (!sweep.reached(s)) continue;
    CHECK(sweep.ms(s) == least[row]);
    CHECK(summed_ms(any, sweep.path(s)) == least[row]);
  }
}

TEST_CASE("in any town a limit leaves out just what is farther", "[reach]") {
  AnyTown any(static_cast<std::uint64_t>(GENERATE(range(1, towns))));
  const StateId from = any.any_state();
  if (any.along_ms(from) < 0) return;
  const std::array seeds{reach::Seed{from, any.along_ms(from)}};
  reach::Sweep all(any.roads), near(any.roads);
  all.run(seeds, any.costs, never / 4);
  const auto limit_ms = static_cast<std::int64_t>(any.dice.below(400'000));
  near.run(seeds, any.costs, limit_ms);
  for (std::size_t row = 0; row < any.roads.state_count(); ++row) {
    const StateId s{row};
    const bool within = all.reached(s) && all.ms(s) <= limit_ms;
    REQUIRE(near.reached(s) == within);
    if (within) CHECK(near.ms(s) == all.ms(s));
  }
}

TEST_CASE("in any town no drive gets quicker when a road is shut", "[reach]") {
  AnyTown any(static_cast<std::uint64_t>(GENERATE(range(1, towns))));
  const StateId from = any.any_state();
  const StretchId shut = any.roads.stretch_of(any.any_state());
  if (any.along_ms(from) < 0 || shut == any.roads.stretch_of(from)) return;
  const std::array seeds{reach::Seed{from, any.along_ms(from)}};
  reach::Sweep before(any.roads), after(any.roads);
  before.run(seeds, any.costs, never / 4);
  reach::Costs fewer = any.costs;
  fewer.shut(shut);
  after.run(seeds, fewer, never / 4);
  for (const std::uint32_t row : after.settled()) {
    REQUIRE(any.roads.stretch_of(StateId{row}) != shut);
    REQUIRE(before.reached(StateId{row}));
    CHECK(after.ms(StateId{row}) >= before.ms(StateId{row}));
  }
}

TEST_CASE("in any town the time there is the time back from there", "[reach]") {
  AnyTown any(static_cast<std::uint64_t>(GENERATE(range(1, towns))));
  const StateId from = any.any_state(), to = any.any_state();
  if (any.along_ms(from) < 0 || any.along_ms(to) < 0) return;
  reach::Sweep out(any.roads), back(any.roads, &any.backwards);
  out.run(std::array{reach::Seed{from, any.along_ms(from)}}, any.costs, never / 4);
  back.run_back(std::array{reach::Seed{to, any.along_ms(to)}}, any.costs, never / 4);
  REQUIRE(out.reached(to) == back.reached(from));
  if (out.reached(to)) CHECK(out.ms(to) == back.ms(from));
}

TEST_CASE("in any town two states are in one part when each can be come to from the other",
          "[reach]") {
  AnyTown any(static_cast<std::uint64_t>(GENERATE(range(1, 20))));
  INFO(any.drawing);
  any.costs.let_turn_round(reach::TurningRound::nowhere);
  std::vector<StateId> states;
  for (std::size_t row = 0; row < any.roads.state_count(); ++row)
    if (any.along_ms(StateId{row}) >= 0) states.emplace_back(row);
  const reach::LocalGraph graph(any.roads, any.costs, states);
  const std::vector<std::uint32_t> part = reach::strong_parts(graph);
  REQUIRE(part.size() == states.size());
  std::vector<reach::Sweep> from;
  for (const StateId s : states) {
    const std::array seeds{reach::Seed{s, any.along_ms(s)}};
    from.emplace_back(any.roads).run(seeds, any.costs, never / 4);
  }
  for (std::uint32_t v = 0; v < states.size(); ++v)
    for (std::uint32_t w = 0; w < states.size(); ++w)
      REQUIRE((part[v] == part[w]) == (from[v].reached(states[w]) && from[w].reached(states[v])));
}

}  // namespace loopwright::test
