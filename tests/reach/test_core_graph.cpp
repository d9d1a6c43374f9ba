// Searches between a few vertices, with the rest taken out, against searches over the whole graph.
#include <catch2/catch.hpp>

#include "loopwright/reach/core_graph.hpp"
#include "loopwright/reach/reach.hpp"
#include "support/built_town.hpp"
#include "support/crossing_streets.hpp"

namespace loopwright::test {

namespace {

const Instant saturday_afternoon{1795878000, 0};  // 2026-11-28T15:00:00+00:00

struct Streets {
  BuiltTown town = built_town(draw_town(crossing_streets, 100), "GB-ENG");
  road::Roads roads = town.roads();
  reach::Costs costs{roads, pace::Pace(roads, {.level = 3}, saturday_afternoon)};
  reach::LocalGraph graph{roads, costs, by_place(roads, costs)};

  static std::vector<StateId> by_place(const road::Roads& roads, const reach::Costs& costs) {
    std::vector<StateId> states;
    for (std::size_t row = 0; row < roads.stretch_count(); ++row)
      if (costs.may_drive(StretchId{row})) states.emplace_back(row);
    reach::sort_by_place(roads, states);
    return states;
  }

  /// One vertex in so many.
  [[nodiscard]] std::vector<reach::LocalGraph::Vertex> each(std::uint32_t step) const {
    std::vector<reach::LocalGraph::Vertex> vertices;
    for (std::uint32_t v = 0; v < graph.size(); v += step) vertices.push_back(v);
    return vertices;
  }
};

/// Some dearer, some not.
std::vector<std::int32_t> uneven(std::size_t count) {
  std::vector<std::int32_t> ms(count, 0);
  for (std::size_t v = 0; v < count; ++v) ms[v] = static_cast<std::int32_t>(v * 7919 % 11) * 4000;
  return ms;
}

}  // namespace

TEST_CASE("with the rest taken out, drives between what is kept take as long", "[reach]") {
  const Streets s;
  const std::vector<std::int32_t> extra = uneven(s.graph.size());
  reach::LocalSweep whole(s.graph);
  for (const std::span<const std::int32_t> dearer :
       {std::span<const std::int32_t>{}, std::span{extra}})
    for (const std::uint32_t step : {2U, 5U, 11U}) {
      const auto kept = s.each(step);
      const reach::CoreGraph core(s.graph, kept, dearer);
      CHECK(core.size() < s.graph.size());
      reach::CoreSweep sweep(core, kept);
      for (const auto from : kept) {
        const reach::LocalSeed seed{from, s.graph.along_ms(from)};
        whole.run({&seed, 1}, {.limit_ms = 3'600'000, .extra_ms = dearer});
        sweep.run(from, 3'600'000);
        for (const auto to : kept) {
          REQUIRE(sweep.reached(to) == whole.reached(to));
          // Two drives may cost the same and take different times.
          if (dearer.empty() && whole.reached(to)) CHECK(sweep.ms(to) == whole.ms(to));
        }
      }
    }
}

TEST_CASE("after a vertex, it is reached only by coming back to it", "[reach]") {
  const Streets s;
  const auto kept = s.each(4);
  const reach::CoreGraph core(s.graph, kept);
  reach::CoreSweep sweep(core, kept);
  reach::LocalSweep whole(s.graph);
  int came_back = 0;
  for (const auto from : kept) {
    std::vector<reach::LocalSeed> seeds;
    for (const auto& arc : s.graph.out(from)) seeds.push_back({arc.to, arc.step_ms});
    whole.run(seeds, {.limit_ms = 3'600'000});
    sweep.run_after(from, 3'600'000);
    for (const auto to : kept) {
      REQUIRE(sweep.reached(to) == whole.reached(to));
      if (whole.reached(to)) CHECK(sweep.ms(to) == whole.ms(to));
    }
    came_back += sweep.reached(from) ? 1 : 0;
  }
  CHECK(came_back > 0);
}

TEST_CASE("a search for a few ends when it has them, and they are reached as by one for all",
          "[reach]") {
  const Streets s;
  const auto kept = s.each(3);
  const reach::CoreGraph core(s.graph, kept);
  reach::CoreSweep for_all(core, kept);
  for (std::size_t first = 0; first + 2 < kept.size(); first += 2) {
    const std::vector<std::uint32_t> few(kept.begin() + static_cast<std::ptrdiff_t>(first),
                                         kept.begin() + static_cast<std::ptrdiff_t>(first) + 2);
    reach::CoreSweep for_few(core, few);
    for (const auto from : kept) {
      for_all.run(from, 3'600'000);
      for_few.run(from, 3'600'000);
      for (const auto to : few) {
        REQUIRE(for_few.reached(to) == for_all.reached(to));
        if (for_all.reached(to)) CHECK(for_few.ms(to) == for_all.ms(to));
      }
    }
  }
}

TEST_CASE("a toll counts as time", "[reach]") {
  const Streets s;
  const auto kept = s.each(s.graph.size() > 1 ? static_cast<std::uint32_t>(s.graph.size()) - 1 : 1);
  REQUIRE(kept.size() == 2);
  const std::vector<std::int32_t> toll(s.graph.size(), 1000);
  const reach::CoreGraph free(s.graph, kept), tolled(s.graph, kept, {}, toll);
  reach::CoreSweep quick(free, kept), slow(tolled, kept);
  quick.run(kept[0], 3'600'000);
  slow.run(kept[0], 3'600'000);
  REQUIRE(quick.reached(kept[1]));
  REQUIRE(slow.reached(kept[1]));
  CHECK(slow.ms(kept[1]) >= quick.ms(kept[1]) + 1000);
}

TEST_CASE("a search may end when all it looks for is settled", "[reach]") {
  const Streets s;
  reach::LocalSweep whole(s.graph), part(s.graph);
  const reach::LocalSeed seed{0, 0};
  whole.run({&seed, 1}, {.limit_ms = 3'600'000});
  int shorter = 0;
  for (const auto to : s.each(7)) {
    if (!whole.reached(to)) continue;
    const reach::LocalSeed goal{to, 0};
    part.run({&seed, 1}, {.limit_ms = 3'600'000, .until = {&goal, 1}});
    CHECK(part.path(to) == whole.path(to));
    shorter += part.settled().size() < whole.settled().size() ? 1 : 0;
  }
  CHECK(shorter > 0);
}

TEST_CASE("of two searches that meet the second leaves out what lies beyond the limit", "[reach]") {
  const Streets s;
  reach::LocalSweep out(s.graph), back(s.graph), free_back(s.graph);
  const reach::LocalSeed seed{0, 0};
  out.run({&seed, 1}, {.limit_ms = 120'000});
  const auto last = out.settled().back();
  const reach::LocalSeed goal{last, s.graph.along_ms(last)};
  back.run_back({&goal, 1}, {.limit_ms = 120'000, .meeting = &out});
  free_back.run_back({&goal, 1}, {.limit_ms = 120'000});
  CHECK(back.settled().size() < free_back.settled().size());
  for (const std::uint32_t v : free_back.settled()) {
    const bool fits =
        out.reached(v) && out.ms(v) + free_back.ms(v) - s.graph.along_ms(v) <= 120'000;
    if (fits) CHECK(back.reached(v));
  }
}

}  // namespace loopwright::test
