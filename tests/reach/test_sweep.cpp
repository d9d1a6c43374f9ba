// Least times: against sums by hand on a drawn town, and forwards against backwards.
// An outside library (networkx) checks them on real maps: tests/real/test_shortest.py.
#include <catch2/catch.hpp>

#include "loopwright/reach/local_graph.hpp"
#include "loopwright/reach/reach.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {

namespace {

const Instant saturday_afternoon{1795878000, 0};  // 2026-11-28T15:00:00+00:00

struct Searched {
  BuiltTown town = built_town(draw_town(crossing_streets, 100), "GB-ENG");
  road::Roads roads = town.roads();
  pace::Pace pace{roads, {.level = 3}, saturday_afternoon};
  reach::Costs costs{roads, pace};
  reach::Backwards backwards{roads};

  [[nodiscard]] StateId state(std::string_view letters) const {
    return StateId{town.stretch(letters).index()};
  }
};

std::int64_t turn_ms(const Searched& s, StateId from, StateId to) {
  for (const road::Turn& turn : s.roads.turns_from(from))
    if (turn.to == to) return s.pace.at(turn).likely_ms;
  return -1;
}

}  // namespace

TEST_CASE("nothing is reached when no search begins", "[reach]") {
  const Searched s;
  reach::Sweep sweep(s.roads);
  sweep.run({}, s.costs, 1000000);
  CHECK(sweep.settled().empty());
  CHECK_FALSE(sweep.reached(s.state("AB")));
}

TEST_CASE("the time along two streets is both streets and the wait between", "[reach]") {
  const Searched s;
  reach::Sweep sweep(s.roads);
  const reach::Seed seed{s.state("AB"), 0};
  sweep.run({&seed, 1}, s.costs, 600000);
  const StateId next = s.state("BC");
  CHECK(sweep.ms(next) ==
        turn_ms(s, s.state("AB"), next) + s.pace.along(s.town.stretch("BC")).likely_ms);
  CHECK(sweep.path(next) == std::vector<StateId>{s.state("AB"), next});
}

TEST_CASE("a street isn't driven back the way one came in mid-road", "[reach]") {
  const Searched s;
  reach::Sweep sweep(s.roads);
  const reach::Seed seed{s.state("AB"), 0};
  sweep.run({&seed, 1}, s.costs, 600000);
  CHECK(sweep.reached(s.state("BA")));  // round some block
  CHECK(sweep.path(s.state("BA")).size() > 3);
}

TEST_CASE("beyond the time limit nothing is settled", "[reach]") {
  const Searched s;
  reach::Sweep sweep(s.roads);
  const reach::Seed seed{s.state("AB"), 0};
  sweep.run({&seed, 1}, s.costs, 120000);
  REQUIRE_FALSE(sweep.settled().empty());
  for (const std::uint32_t row : sweep.settled()) CHECK(sweep.ms(StateId{row}) <= 120000);
  CHECK_FALSE(sweep.reached(s.state("PL")));
}

TEST_CASE("a road that is shut is gone round", "[reach]") {
  Searched s;
  reach::Sweep sweep(s.roads);
  const reach::Seed seed{s.state("AB"), 0};
  sweep.run({&seed, 1}, s.costs, 3600000);
  const std::int64_t before = sweep.ms(s.state("CD"));
  s.costs.shut(s.town.stretch("BC"));
  sweep.run({&seed, 1}, s.costs, 3600000);
  CHECK_FALSE(sweep.reached(s.state("BC")));
  CHECK(sweep.ms(s.state("CD")) > before);
}

TEST_CASE("forwards and backwards agree on every pair", "[reach]") {
  const Searched s;
  reach::Sweep out(s.roads), back(s.roads, &s.backwards);
  int pairs = 0;
  for (std::size_t from = 0; from < s.roads.stretch_count(); from += 3) {
    if (!s.costs.may_drive(StretchId{from})) continue;
    const reach::Seed seed{StateId{from}, 0};
    out.run({&seed, 1}, s.costs, 3600000);
    for (std::size_t to = 1; to < s.roads.stretch_count(); to += 7) {
      if (!s.costs.may_drive(StretchId{to})) continue;
      const reach::Seed goal{StateId{to}, s.costs.along_ms(StretchId{to})};
      back.run_back({&goal, 1}, s.costs, 3600000);
      REQUIRE(out.reached(goal.state) == back.reached(seed.state));
      if (!out.reached(goal.state) || from == to) continue;
      CHECK(out.ms(goal.state) == back.ms(seed.state) - s.costs.along_ms(StretchId{from}));
      ++pairs;
    }
  }
  CHECK(pairs > 50);
}

TEST_CASE("sweeps between two doors have just what lies on drives short enough", "[reach]") {
  const Searched s;
  reach::Sweep out(s.roads), back(s.roads, &s.backwards);
  reach::Sweep all_out(s.roads), all_back(s.roads, &s.backwards);
  int left_out = 0;
  for (std::size_t from = 0; from < s.roads.stretch_count(); from += 11) {
    if (!s.costs.may_drive(StretchId{from})) continue;
    const reach::Seed seed{StateId{from}, 0};
    const reach::Seed goal{StateId{from}, s.costs.along_ms(StretchId{from})};
    for (const std::int64_t limit_ms : {60'000, 150'000, 400'000}) {
      reach::sweep_between(out, back, {&seed, 1}, {&goal, 1}, s.costs, limit_ms);
      all_out.run({&seed, 1}, s.costs, limit_ms);
      all_back.run_back({&goal, 1}, s.costs, limit_ms);
      for (const std::uint32_t row : all_out.settled()) {
        const StateId state{row};
        const std::int64_t along = s.costs.along_ms(s.roads.stretch_of(state));
        const bool fits =
            all_back.reached(state) && all_out.ms(state) + all_back.ms(state) - along <= limit_ms;
        REQUIRE((out.reached(state) && back.reached(state)) == fits);
        left_out += fits ? 0 : 1;
        if (!fits) continue;
        CHECK(out.ms(state) == all_out.ms(state));
        CHECK(back.ms(state) == all_back.ms(state));
      }
    }
  }
  CHECK(left_out > 0);
}

TEST_CASE("a search ends when all that it is for is settled", "[reach]") {
  const Searched s;
  reach::Sweep sweep(s.roads), whole(s.roads);
  const reach::Seed seed{s.state("AB"), 0};
  whole.run({&seed, 1}, s.costs, 3600000);
  std::vector<StateId> until{s.state("BC"), s.state("CD")};
  std::sort(until.begin(), until.end());
  reach::SweepLimits limits(3600000);
  limits.until = until;
  sweep.run({&seed, 1}, s.costs, limits);
  CHECK(sweep.settled().size() < whole.settled().size());
  for (const StateId state : until) CHECK(sweep.ms(state) == whole.ms(state));
}

TEST_CASE("what costs keep to is shut elsewhere, priced before or after", "[reach]") {
  Searched s;
  const StretchId known = s.town.stretch("BC"), other = s.town.stretch("CD");
  const reach::Costs open = s.costs;
  REQUIRE(open.may_drive(known));
  REQUIRE(s.costs.may_drive(known));
  s.costs.keep_to([known](StretchId stretch) { return stretch != known; });
  CHECK_FALSE(s.costs.may_drive(known));
  CHECK(s.costs.along_ms(other) == open.along_ms(other));
  s.costs.open_as_in(open, known);
  CHECK(s.costs.along_ms(known) == open.along_ms(known));
}

TEST_CASE("the compact graph gives the same times as the whole one", "[reach]") {
  const Searched s;
  reach::Sweep whole(s.roads);
  const reach::Seed seed{s.state("AB"), 0};
  whole.run({&seed, 1}, s.costs, 3600000);
  std::vector<StateId> states;
  for (const std::uint32_t row : whole.settled()) states.emplace_back(row);
  std::sort(states.begin(), states.end());
  const reach::LocalGraph graph(s.roads, s.costs, states);
  reach::LocalSweep local(graph);
  const reach::LocalSeed start{graph.vertex(seed.state), 0};
  local.run({&start, 1}, {.limit_ms = 3600000});
  for (const StateId state : states) {
    REQUIRE(local.reached(graph.vertex(state)));
    CHECK(local.ms(graph.vertex(state)) == whole.ms(state));
  }
}

TEST_CASE("roads that are liked less are left for others, at their true time", "[reach]") {
  const Searched s;
  std::vector<StateId> states;
  for (std::size_t row = 0; row < s.roads.stretch_count(); ++row)
    if (s.costs.may_drive(StretchId{row})) states.emplace_back(row);
  const reach::LocalGraph graph(s.roads, s.costs, states);
  reach::LocalSweep sweep(graph);
  const reach::LocalSeed start{graph.vertex(s.state("AB")), 0};
  const auto goal = graph.vertex(s.state("CD"));
  std::vector<std::int32_t> extra(graph.size(), 0);
  sweep.run({&start, 1}, {.limit_ms = 3600000});
  const std::int64_t direct = sweep.ms(goal);
  extra[graph.vertex(s.state("BC"))] = 10000000;
  sweep.run({&start, 1}, {.limit_ms = 3600000, .extra_ms = extra});
  CHECK(sweep.ms(goal) > direct);
  CHECK(sweep.cost(goal) == sweep.ms(goal));
}

}  // namespace loopwright::test
