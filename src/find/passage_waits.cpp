// Method: where a leg is quicker than some spacing, the lengths that its ways round have (reach/slow_ways.hpp), from each
// exit to all entries at once. For a walk those of the ways that cost least with the courtesy, so that they can be
// driven as they are; with nothing spared all there can be, for bounds. Beyond what was searched any length is
// taken for possible.
#include <algorithm>
#include <future>
#include <limits>
#include <optional>

#include "find/passage_graph.hpp"

namespace loopwright::find {

namespace {

using LegSpan = circuit::LongerLegs::Span;

// Ours: a way round is seldom longer by more than what it is for; and what is searched grows with the time.
constexpr std::int64_t searched_beyond_ms = 60'000, searched_at_most_ms = 360'000;
constexpr std::uint32_t shares = 2;

std::int64_t longest_spacing_ms(const circuit::Problem& problem) {
  std::int64_t ms = 0;
  for (const circuit::Goal& goal : problem.goals) ms = std::max(ms, goal.spacing_ms);
  return ms;
}

/// Of a vertex, from where the leg ends: at its beginning.
std::vector<LegSpan> spans_of(const reach::SlowWays& ways, Vertex v, std::int32_t along_ms) {
  std::vector<LegSpan> spans;
  for (const std::int32_t ms : ways.lengths(v)) spans.push_back({ms - along_ms, ms - along_ms});
  return spans;
}

std::vector<LegSpan> spans_of(const reach::AnyLengths& any, Vertex v, std::int32_t along_ms) {
  std::vector<LegSpan> spans;
  for (const reach::LengthSpan& each : any.lengths(v))
    spans.push_back({each.from_ms - along_ms, each.to_ms - along_ms});
  return spans;
}

}  // namespace

/// The spans of one exit, by entry; empty where the leg is never too quick.
std::vector<std::vector<LegSpan>> PassageGraph::longer_from(std::uint32_t exit,
                                                            const circuit::Problem& problem,
                                                            const LongerLimits& limits,
                                                            reach::SlowWays* ways,
                                                            reach::AnyLengths& any) const {
  std::vector<std::vector<LegSpan>> result(entries_.size());
  const Exit& from = exits_[exit];
  std::vector<std::uint32_t> quick;
  for (std::uint32_t entry = 0; entry < entries_.size(); ++entry)
    if (problem.leg(exit, entry) < limits.spacing_ms) quick.push_back(entry);
  if (from.only != reach::LocalGraph::none || quick.empty()) return result;
  const reach::SlowFrom begin{from.vertex, from.at_end,     limits.most_ms,
                              limits.back, limits.extra_ms, limits.most_work};
  ways != nullptr ? ways->run(begin) : any.run(begin);
  const std::int64_t searched_ms = ways != nullptr ? ways->searched_ms() : any.searched_ms();
  for (const std::uint32_t entry : quick) {
    const Vertex v = entries_[entry];
    const std::int32_t along_ms = hunt_.graph.along_ms(v);
    std::vector<LegSpan>& spans = result[entry];
    spans = ways != nullptr ? spans_of(*ways, v, along_ms) : spans_of(any, v, along_ms);
    spans.push_back({static_cast<std::int32_t>(searched_ms) - along_ms,
                     std::numeric_limits<std::int32_t>::max()});
  }
  return result;
}

circuit::LongerLegs PassageGraph::measure_longer(const circuit::Problem& problem,
                                                 const Spared& spared) const {
  circuit::LongerLegs longer;
  LongerLimits limits;
  limits.spacing_ms = longest_spacing_ms(problem);
  if (limits.spacing_ms == 0 || entries_.empty()) return longer;
  limits.most_ms = std::min(limits.spacing_ms + searched_beyond_ms, searched_at_most_ms);
  limits.extra_ms = spared.courtesy_ms;
  limits.most_work = ways_round_ / static_cast<std::int64_t>(exits_.size() + 1);
  std::vector<reach::LocalSeed> asked;
  for (const Vertex v : entries_) asked.push_back({v, hunt_.graph.along_ms(v)});
  reach::LocalSweep back(hunt_.graph);
  back.run_back(asked, {.limit_ms = limits.most_ms});
  limits.back = &back;
  std::vector<std::vector<std::vector<LegSpan>>> by_exit(exits_.size());
  const auto measure_share = [&](std::uint32_t first) {
    std::optional<reach::SlowWays> ways;
    if (!spared.courtesy_ms.empty()) ways.emplace(hunt_.graph);
    reach::AnyLengths any(hunt_.graph);
    for (std::uint32_t exit = first; exit < exits_.size(); exit += shares)
      by_exit[exit] = longer_from(exit, problem, limits, ways ? &*ways : nullptr, any);
  };
  // Where no thread can be begun, the second share is measured after the first.
  constexpr std::launch beside = std::launch::async | std::launch::deferred;
  std::future<void> other = std::async(beside, measure_share, 1);
  measure_share(0);
  other.get();
  for (const auto& of_exit : by_exit)
    for (const std::vector<LegSpan>& spans : of_exit) {
      longer.first.push_back(static_cast<std::uint32_t>(longer.spans.size()));
      longer.spans.insert(longer.spans.end(), spans.begin(), spans.end());
    }
  longer.first.push_back(static_cast<std::uint32_t>(longer.spans.size()));
  return longer;
}

}  // namespace loopwright::find
