// Method: the drivable turns become a compressed sparse row graph with 64-bit milliseconds on its
// edges; the sweep is the library's, with its distance map only (no predecessors).
#include "bench/plain_sweep.hpp"

#include <algorithm>
#include <array>
#include <boost/graph/compressed_sparse_row_graph.hpp>
#include <boost/graph/dijkstra_shortest_paths.hpp>
#include <chrono>
#include <cstdint>
#include <limits>
#include <utility>
#include <vector>

namespace loopwright::bench {

namespace {

struct Cost {
  std::int64_t ms = 0;
};
using Graph = boost::compressed_sparse_row_graph<boost::directedS, boost::no_property, Cost,
                                                 boost::no_property, std::uint32_t, std::uint32_t>;

Graph graph_of(const road::Roads& roads, const reach::Costs& costs) {
  std::vector<std::pair<std::uint32_t, std::uint32_t>> edges;
  std::vector<Cost> weights;
  for (std::uint32_t from = 0; from < roads.state_count(); ++from) {
    for (std::uint32_t row = roads.turn_first[from]; row < roads.turn_first[from + 1]; ++row) {
      const road::Turn& turn = roads.turns[row];
      const std::int32_t along = costs.along_ms(roads.stretch_of(turn.to));
      if (along < 0 || costs.is_banned(row)) continue;
      edges.emplace_back(from, turn.to.value);
      weights.push_back({along + costs.wait_ms(turn.control)});
    }
  }
  return {boost::edges_are_sorted, edges.begin(), edges.end(), weights.begin(),
          static_cast<std::uint32_t>(roads.state_count())};
}

}  // namespace

SweepTime time_plain_sweep(const road::Roads& roads, const reach::Costs& costs, StateId from) {
  const Graph graph = graph_of(roads, costs);
  std::vector<std::int64_t> ms(roads.state_count());
  std::array<double, 7> runs{};
  for (double& run : runs) {
    const auto before = std::chrono::steady_clock::now();
    boost::dijkstra_shortest_paths(graph, from.value,
                                   boost::weight_map(boost::get(&Cost::ms, graph))
                                       .distance_map(boost::make_iterator_property_map(
                                           ms.begin(), boost::get(boost::vertex_index, graph))));
    run = std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - before)
              .count();
  }
  std::sort(runs.begin(), runs.end());
  const auto reached = std::count_if(ms.begin(), ms.end(), [](std::int64_t of) {
    return of < std::numeric_limits<std::int64_t>::max();
  });
  return {runs[runs.size() / 2], static_cast<std::size_t>(reached)};
}

}  // namespace loopwright::bench
