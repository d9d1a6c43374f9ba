// Method:
//   1. A goal for each want; a group for each of its places (and movements, where repeats are worth less).
//   2. A pass for each different way of a candidate, counting for all wanted chances that lie whole on
//      that way. Where another wanted way begins on the last part of it and goes on beyond, a second row
//      ends there, so that both can be driven as one.
//   3. The legs between: passage_legs.cpp.
#include "find/passage_graph.hpp"

#include <algorithm>
#include <numeric>

#include "find/stops.hpp"

namespace loopwright::find {

namespace {

using reach::LocalGraph;

/// Of the vertices about one in so many is left in the core of a graph with a few hundred ends (ours, measured
/// on Newport).
constexpr std::uint64_t left_in_core = 4;

/// Of the stretches of a street that must be taken at most so many are in the graph (ours).
constexpr std::size_t most_of_take = 16;
constexpr std::uint32_t no_place = ~std::uint32_t{0};

/// Never fewer candidates than these for each want.
constexpr std::size_t least_for_want = 24;

bool is_on(std::span<const Vertex> part, std::span<const Vertex> path) {
  return part.size() <= path.size() && std::equal(part.begin(), part.end(), path.begin());
}

}  // namespace

PassageGraph::PassageGraph(const Hunt& hunt, const Work& work)
    : hunt_(hunt),
      ways_round_(work.ways_round),
      of_entry_(hunt.graph.size()),
      entry_row_(hunt.graph.size(), -1) {
  add_goals();
  add_ways(choose(work.settled));
  add_takes();
  problem_.entry_count = static_cast<std::uint32_t>(entries_.size());
  problem_.exit_count = static_cast<std::uint32_t>(exits_.size());
  for (const reach::LocalSeed& seed : hunt.starts)
    shift_ms_ = std::max<std::int64_t>(shift_ms_, hunt.graph.along_ms(seed.vertex) - seed.ms);
  problem_.most_ms = hunt.high_ms + shift_ms_;
}

PassageGraph::Spared PassageGraph::courtesy(std::int32_t dislike) const {
  Spared spared{std::vector<std::int32_t>(hunt_.graph.size(), 0),
                std::vector<std::int32_t>(hunt_.graph.size(), 0)};
  for (Vertex v = 0; v < hunt_.graph.size(); ++v)
    if (hunt_.piece_quiet[hunt_.piece_of[v]] != 0)
      spared.courtesy_ms[v] = dislike * hunt_.graph.along_ms(v);
  return spared;
}

/// All, or the nearest for each want, as hunt sorts them: what is farther takes more of the time from all else.
std::vector<std::uint32_t> PassageGraph::choose(std::uint64_t settled) const {
  const auto& wants = hunt_.ground.wish.wants;
  const std::size_t most = settled * left_in_core / (hunt_.graph.size() + 1);
  if (hunt_.candidates.size() <= most) {
    std::vector<std::uint32_t> all(hunt_.candidates.size());
    std::iota(all.begin(), all.end(), 0U);
    return all;
  }
  const std::size_t share = std::max(least_for_want, most / std::max<std::size_t>(1, wants.size()));
  std::vector<std::size_t> left(wants.size(), share);
  std::vector<std::uint32_t> rows;
  for (std::uint32_t row = 0; row < hunt_.candidates.size(); ++row) {
    bool is_chosen = false;
    for (std::size_t want = 0; want < wants.size(); ++want) {
      if (left[want] == 0 || !hunt_.serves(hunt_.candidates[row], wants[want])) continue;
      --left[want];
      is_chosen = true;
    }
    if (is_chosen) rows.push_back(row);
  }
  return rows;
}

void PassageGraph::add_goals() {
  const Ground& ground = hunt_.ground;
  for (const wish::Want& want : ground.wish.wants)
    problem_.goals.push_back(
        {want.count.value_or(0), want.count ? 0 : spacing_ms_of(ground.wish, want, ground.caps)});
  group_rows_.resize(problem_.goals.size());
}

std::uint32_t PassageGraph::group_of(std::size_t want, const Candidate& candidate) {
  const bool counted = hunt_.ground.wish.wants[want].count.has_value();
  const auto movement = counted ? road::Movement::none : candidate.movement;
  const auto key =
      static_cast<std::uint32_t>(candidate.place.index() * 8 + static_cast<std::size_t>(movement));
  for (const std::uint32_t row : group_rows_[want])
    if (place_of_group_[row] == key) return row;
  const Caps& caps = hunt_.ground.caps;
  circuit::Group group{static_cast<std::uint32_t>(want)};
  if (counted) {
    group.most_counted = caps.passes_of(candidate.kind);
  } else {
    group.worths.assign(caps.repeat_worth.begin(), caps.repeat_worth.end());
    group.cap = cap_of(want, candidate.place);
  }
  problem_.groups.push_back(std::move(group));
  place_of_group_.push_back(key);
  group_rows_[want].push_back(static_cast<std::uint32_t>(problem_.groups.size() - 1));
  return group_rows_[want].back();
}

/// As many passes of a place count for a want as the wish says, whatever their movements.
std::uint32_t PassageGraph::cap_of(std::size_t want, PlaceId place) {
  if (!hunt_.ground.wish.place_passes) return circuit::no_cap;
  for (const std::uint32_t row : group_rows_[want])
    if (place_of_group_[row] / 8 == place.index()) return problem_.groups[row].cap;
  problem_.caps.push_back(*hunt_.ground.wish.place_passes);
  return static_cast<std::uint32_t>(problem_.caps.size() - 1);
}

std::vector<std::uint32_t> PassageGraph::groups_on(std::span<const Vertex> path) {
  std::vector<std::uint32_t> groups;
  // The last vertex of a longer way is only entered: a chance that lies on it alone isn't passed yet.
  const std::size_t begins = path.size() > 1 ? path.size() - 1 : 1;
  for (std::size_t at = 0; at < begins; ++at)
    for (const std::uint32_t row : of_entry_[path[at]]) {
      const Candidate& candidate = hunt_.candidates[row];
      if (!is_on(candidate.path, path.subspan(at))) continue;
      for (std::size_t want = 0; want < problem_.goals.size(); ++want)
        if (hunt_.serves(candidate, hunt_.ground.wish.wants[want]))
          groups.push_back(group_of(want, candidate));
    }
  std::sort(groups.begin(), groups.end());
  groups.erase(std::unique(groups.begin(), groups.end()), groups.end());
  return groups;
}

std::uint32_t PassageGraph::entry_row(Vertex vertex) {
  if (entry_row_[vertex] < 0) {
    entry_row_[vertex] = static_cast<std::int32_t>(entries_.size());
    entries_.push_back(vertex);
  }
  return static_cast<std::uint32_t>(entry_row_[vertex]);
}

std::uint32_t PassageGraph::exit_row(const Exit& exit) {
  const auto it = std::find(exits_.begin(), exits_.end(), exit);
  if (it != exits_.end()) return static_cast<std::uint32_t>(it - exits_.begin());
  exits_.push_back(exit);
  return static_cast<std::uint32_t>(exits_.size() - 1);
}

std::int64_t PassageGraph::inner_ms(std::span<const Vertex> path, bool at_end) const {
  const LocalGraph& graph = hunt_.graph;
  std::int64_t ms = graph.along_ms(path.front());
  for (std::size_t i = 1; i < path.size(); ++i) {
    ms += graph.arc_between(path[i - 1], path[i])->turn_ms;
    if (i + 1 < path.size()) ms += graph.along_ms(path[i]);
  }
  return at_end || path.size() > 1 ? ms : 0;
}

void PassageGraph::add_pass(const Way& way, const Exit& exit) {
  circuit::Pass pass;
  pass.entry = entry_row(way.path.front());
  pass.exit = exit_row(exit);
  pass.groups = groups_on(way.path);
  if (exit.only != LocalGraph::none) {
    // The row that ends where another way begins is worth what the whole way is.
    pass.groups = groups_on(hunt_.candidates[way.candidate].path);
  }
  pass.inner_ms = inner_ms(way.path, exit.at_end) + hunt_.candidates[way.candidate].stop_ms;
  const Candidate& candidate = hunt_.candidates[way.candidate];
  for (std::size_t want = 0; want < problem_.goals.size(); ++want)
    if (hunt_.serves(candidate, hunt_.ground.wish.wants[want])) {
      wants_.push_back(static_cast<std::int32_t>(want));
      break;
    }
  problem_.passes.push_back(std::move(pass));
  ways_.push_back(way.path);
  candidates_.push_back(static_cast<std::int32_t>(way.candidate));
}

void PassageGraph::add_takes() {
  for (const Take& take : hunt_.takes) {
    problem_.goals.push_back({1, 0});
    add_take(take, static_cast<std::uint32_t>(problem_.goals.size() - 1));
  }
}

/// An even choice of its stretches, each a pass without worth: vertices in a row lie near each other.
void PassageGraph::add_take(const Take& take, std::uint32_t goal) {
  const auto group = static_cast<std::uint32_t>(problem_.groups.size());
  problem_.groups.push_back({goal, {}, 1});
  place_of_group_.push_back(no_place);
  const std::size_t step = (take.vertices.size() + most_of_take - 1) / most_of_take;
  for (std::size_t k = 0; k < take.vertices.size(); k += step) {
    const Vertex v = take.vertices[k];
    problem_.passes.push_back(
        {entry_row(v), exit_row({v, true, LocalGraph::none}), hunt_.graph.along_ms(v), {group}});
    ways_.push_back({v});
    candidates_.push_back(-1);
    wants_.push_back(-1);
  }
}

void PassageGraph::add_ways(std::span<const std::uint32_t> rows) {
  complete_ = rows.size() == hunt_.candidates.size();
  std::vector<Way> ways;
  for (const std::uint32_t row : rows) {
    const Candidate& candidate = hunt_.candidates[row];
    of_entry_[candidate.path.front()].push_back(row);
    ways.push_back({candidate.path, row});
  }
  std::stable_sort(ways.begin(), ways.end(),
                   [](const Way& a, const Way& b) { return a.path < b.path; });
  ways.erase(std::unique(ways.begin(), ways.end(),
                         [](const Way& a, const Way& b) { return a.path == b.path; }),
             ways.end());
  for (const Way& way : ways) {
    const std::span<const Vertex> path = way.path;
    add_pass(way, {path.back(), path.size() == 1, LocalGraph::none});
    for (std::size_t at = 1; at + 1 < path.size(); ++at) {
      const bool goes_on = std::ranges::any_of(of_entry_[path[at]], [&](std::uint32_t row) {
        const std::vector<Vertex>& other = hunt_.candidates[row].path;
        return other.size() > path.size() - at && is_on(path.subspan(at), other);
      });
      if (goes_on)
        add_pass(
            {{path.begin(), path.begin() + static_cast<std::ptrdiff_t>(at) + 1}, way.candidate},
            {path[at], false, path[at]});
    }
  }
}

}  // namespace loopwright::find
