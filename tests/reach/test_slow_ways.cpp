// Ways that take at least a time, and the lengths that drives have, against every drive there is.
#include <catch2/catch.hpp>

#include "loopwright/reach/reach.hpp"
#include "loopwright/reach/slow_ways.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {

namespace {

using reach::LocalGraph;
using Vertex = LocalGraph::Vertex;

constexpr std::int64_t most_ms = 120'000;

struct SlowStreets {
  BuiltTown town = built_town(draw_town(crossing_streets, 25), "GB-ENG");
  road::Roads roads = town.roads();
  reach::Costs costs{roads, pace::Pace(roads, {.level = 3}, {1795878000, 0})};
  LocalGraph graph{roads, costs, every_state(roads, costs)};
  std::vector<std::int32_t> extra_ms = std::vector<std::int32_t>(graph.size());

  SlowStreets() {
    for (Vertex v = 0; v < graph.size(); ++v)
      extra_ms[v] = static_cast<std::int32_t>(v * 7919 % 11) * 2000;
  }
  static std::vector<StateId> every_state(const road::Roads& roads, const reach::Costs& costs) {
    std::vector<StateId> states;
    for (std::size_t row = 0; row < roads.stretch_count(); ++row)
      if (costs.may_drive(StretchId{row})) states.emplace_back(row);
    return states;
  }
};

struct Drive {
  std::int64_t ms = 0, cost = 0;
  bool is_simple = true;  ///< no vertex twice, but the first
};

/// Every drive from one vertex to another within most_ms, by going on wherever one may.
struct EveryDrive {
  const SlowStreets& s;
  Vertex to;
  const reach::LocalSweep& back;
  std::vector<Vertex> path = {};
  std::vector<Drive> drives = {};

  void go_on(Drive drive) {
    for (const LocalGraph::Arc& arc : s.graph.out(path.back())) {
      Drive next = drive;
      next.ms += arc.step_ms;
      next.cost += arc.step_ms + s.extra_ms[arc.to];
      const std::int64_t least_ms = next.ms + back.ms(arc.to) - s.graph.along_ms(arc.to);
      if (!back.reached(arc.to) || least_ms > most_ms) continue;
      next.is_simple =
          next.is_simple && std::find(path.begin() + 1, path.end(), arc.to) == path.end();
      if (arc.to == to) drives.push_back(next);
      path.push_back(arc.to);
      go_on(next);
      path.pop_back();
    }
  }
};

struct Pair {
  Vertex from = 0, to = 0;
  std::vector<Drive> drives = {};
};

reach::LocalSweep sweep_back(const SlowStreets& s, Vertex to) {
  reach::LocalSweep back(s.graph);
  const reach::LocalSeed goal{to, s.graph.along_ms(to)};
  back.run_back({&goal, 1}, {.limit_ms = most_ms});
  return back;
}

/// Of some pairs, each with its drives; pairs with too many to try are left out.
template <class Check>
void for_pairs(const SlowStreets& s, Check check) {
  std::size_t pairs = 0;
  for (Vertex from = 0; from < s.graph.size(); from += 3)
    for (Vertex to = from % 3; to < s.graph.size(); to += 5) {
      const reach::LocalSweep back = sweep_back(s, to);
      EveryDrive every{s, to, back, {from}};
      every.go_on({});
      if (every.drives.empty()) continue;
      ++pairs;
      check(Pair{from, to, std::move(every.drives)}, back);
    }
  CHECK(pairs > 50);
}

}  // namespace

TEST_CASE("no drive has a length outside of the lengths that any may have", "[reach]") {
  const SlowStreets s;
  reach::AnyLengths any(s.graph);
  std::int64_t between_ms = 0, drives = 0;
  for_pairs(s, [&](const Pair& pair, const reach::LocalSweep& back) {
    any.run({.from = pair.from, .most_ms = most_ms, .back = &back});
    const std::vector<reach::LengthSpan> spans = any.lengths(pair.to);
    for (const Drive& drive : pair.drives) {
      ++drives;
      CHECK(std::any_of(spans.begin(), spans.end(), [&](const reach::LengthSpan& span) {
        return span.from_ms <= drive.ms && drive.ms <= span.to_ms;
      }));
    }
    std::int64_t last_ms = -1;
    for (const reach::LengthSpan& span : spans) {
      CHECK(span.from_ms > last_ms);
      CHECK(span.to_ms >= span.from_ms);
      last_ms = span.to_ms;
      between_ms += span.to_ms - span.from_ms;
    }
  });
  // They tell something: of the time to be filled by all these drives little is taken for some drive's length.
  CHECK(drives > 1000);
  CHECK(between_ms < drives * 100);
}

TEST_CASE("with too much work a run knows all lengths up to where it came", "[reach]") {
  const SlowStreets s;
  reach::AnyLengths any(s.graph);
  std::size_t ended_early = 0;
  for_pairs(s, [&](const Pair& pair, const reach::LocalSweep& back) {
    any.run({.from = pair.from, .most_ms = most_ms, .back = &back, .most_work = 20});
    REQUIRE(any.searched_ms() <= most_ms);
    if (any.searched_ms() < most_ms) ++ended_early;
    const std::vector<reach::LengthSpan> spans = any.lengths(pair.to);
    for (const Drive& drive : pair.drives)
      CHECK((drive.ms >= any.searched_ms() ||
             std::any_of(spans.begin(), spans.end(), [&](const reach::LengthSpan& span) {
               return span.from_ms <= drive.ms && drive.ms <= span.to_ms;
             })));
    for (const reach::LengthSpan& span : spans) CHECK(span.from_ms < any.searched_ms());
  });
  CHECK(ended_early > 0);
}

TEST_CASE("a slow way takes at least the time asked for, and is a drive without a stretch twice",
          "[reach]") {
  const SlowStreets s;
  reach::SlowWays ways(s.graph);
  std::size_t cheapest = 0, asked = 0;
  for_pairs(s, [&](const Pair& pair, const reach::LocalSweep& back) {
    ways.run({.from = pair.from, .most_ms = most_ms, .back = &back, .extra_ms = s.extra_ms});
    const std::vector<std::int32_t> lengths = ways.lengths(pair.to);
    CHECK(std::is_sorted(lengths.begin(), lengths.end()));
    for (std::int64_t least_ms = 0; least_ms < most_ms; least_ms += 15'000) {
      std::int64_t least_cost = most_ms * 100;
      for (const Drive& drive : pair.drives)
        if (drive.is_simple && drive.ms >= least_ms) least_cost = std::min(least_cost, drive.cost);
      const std::vector<Vertex> way = ways.way(pair.to, least_ms);
      const auto length = std::lower_bound(lengths.begin(), lengths.end(), least_ms);
      REQUIRE(way.empty() == (length == lengths.end()));
      if (way.empty()) continue;
      CHECK(way.front() == pair.from);
      CHECK(way.back() == pair.to);
      Drive drive;
      for (std::size_t i = 1; i < way.size(); ++i) {
        const LocalGraph::Arc* arc = s.graph.arc_between(way[i - 1], way[i]);
        REQUIRE(arc != nullptr);
        drive.ms += arc->step_ms;
        drive.cost += arc->step_ms + s.extra_ms[way[i]];
        CHECK(std::count(way.begin() + 1, way.end(), way[i]) == 1);
      }
      CHECK(drive.ms == *length);
      CHECK(drive.cost >= least_cost);
      ++asked;
      cheapest += drive.cost == least_cost ? 1 : 0;
    }
  });
  // One way a step is kept, so the cheapest of all may be lost.
  CHECK(asked > 100);
  CHECK(cheapest * 10 >= asked * 9);
}

}  // namespace loopwright::test
