// Method: labels over (vertex, time since the last pass of worth), settled by their time.
//   1. One sweep from the part's beginning and one back from its end say which vertices it can use.
//   2. A label goes on over each arc, or drives a whole pass of worth that begins on its vertex.
//   3. At a vertex a label is dropped for one that is there no later, worth no less and need wait no longer for its next
//      pass, in steps of some seconds: who is there early with a long wait isn't better than who is there late
//      with none, for one can't stand still.
//   4. A label is dropped when even passes of full worth, one each spacing, wouldn't bring it beyond what is to be
//      beaten.
// Labels with resources as in the shortest path problems of column generation (Desrochers 1988, from memory).
#include "find/part_search.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>
#include <map>
#include <tuple>

#include "find/counting.hpp"
#include "loopwright/wish/asked.hpp"

namespace loopwright::find {

namespace {

// Ours, tried on Newport and the county.
constexpr std::int32_t wait_step_ms = 10'000;  // waits that differ by less are alike
constexpr std::size_t most_ends = 3;
constexpr std::int32_t unreached = std::numeric_limits<std::int32_t>::max();

std::int32_t wait_steps(std::int32_t ready_ms, std::int32_t now_ms) {
  return (std::max(0, ready_ms - now_ms) + wait_step_ms - 1) / wait_step_ms;
}

}  // namespace

PartSearch::PartSearch(const Hunt& hunt)
    : hunt_(hunt), out_(hunt.graph), back_(hunt.graph), head_(hunt.graph.size(), none) {
  const auto& wants = hunt.ground.wish.wants;
  for (std::size_t w = 0; w < wants.size(); ++w)
    if (!wants[w].count) goals_.push_back(w);
  if (goals_.size() > most_goals) goals_.clear();
  std::vector<std::vector<Worthy>> of_vertex(hunt.graph.size());
  std::map<std::tuple<std::uint32_t, PlaceId, road::Movement>, std::uint32_t> rows;
  for (std::uint32_t goal = 0; goal < goals_.size(); ++goal) {
    const wish::Want& want = wants[goals_[goal]];
    spacing_ms_[goal] = spacing_ms_of(hunt.ground.wish, want, hunt.ground.caps);
    for (std::uint32_t row = 0; row < hunt.candidates.size(); ++row) {
      const Candidate& candidate = hunt.candidates[row];
      if (!hunt.serves(candidate, want)) continue;
      const auto [group, is_new] =
          rows.emplace(std::tuple(goal, candidate.place, candidate.movement),
                       static_cast<std::uint32_t>(groups_.size()));
      if (is_new) groups_.push_back({goal, candidate.place, candidate.movement});
      of_vertex[candidate.path.front()].push_back({row, goal, group->second});
    }
  }
  chance_first_.push_back(0);
  for (const std::vector<Worthy>& here : of_vertex) {
    chances_.insert(chances_.end(), here.begin(), here.end());
    chance_first_.push_back(static_cast<std::uint32_t>(chances_.size()));
  }
  measure_to_chances();
}

/// By goal and vertex, how long after its end the nearest pass of worth can begin: one that begins on it, before.
void PartSearch::measure_to_chances() {
  for (std::uint32_t goal = 0; goal < goals_.size(); ++goal) {
    std::vector<reach::LocalSeed> entries;
    for (Vertex v = 0; v < hunt_.graph.size(); ++v)
      for (std::uint32_t k = chance_first_[v]; k < chance_first_[v + 1]; ++k)
        if (chances_[k].goal == goal) {
          entries.push_back({v, 0});
          break;
        }
    std::vector<std::int32_t>& on_ms = to_chance_ms_[goal];
    on_ms.assign(hunt_.graph.size(), unreached);
    if (entries.empty()) continue;
    back_.run_back(entries, {.limit_ms = hunt_.high_ms});
    for (Vertex v = 0; v < hunt_.graph.size(); ++v)
      if (back_.reached(v))
        on_ms[v] = static_cast<std::int32_t>(back_.ms(v)) - hunt_.graph.along_ms(v);
  }
}

void PartSearch::begin(Part part) {
  part_ = std::move(part);
  rest_has_.assign(groups_.size(), 0);
  place_has_.assign(groups_.size(), 0);
  for (std::size_t group = 0; group < groups_.size(); ++group)
    for (const WorthyPass& other : part_.others) {
      const WorthyPass& own = groups_[group];
      if (other.goal != own.goal || other.place != own.place) continue;
      ++place_has_[group];
      if (other.movement == own.movement) ++rest_has_[group];
    }
  for (const Vertex v : touched_) head_[v] = none;
  touched_.clear();
  labels_.clear();
  kept_.clear();
  quiet_.clear();
  queue_.clear();
  ends_.clear();
  const std::array<reach::LocalSeed, 1> from{{{part_.from, 0}}};
  const std::array<reach::LocalSeed, 1> to{{{part_.to, hunt_.graph.along_ms(part_.to)}}};
  out_.run(from, {.limit_ms = part_.most_ms});
  back_.run_back(to, {.limit_ms = part_.most_ms, .meeting = &out_});
  Label first;
  first.at = part_.from;
  for (std::size_t goal = 0; goal < goals_.size(); ++goal)
    first.ready_ms[goal] = static_cast<std::int32_t>(part_.ready_ms[goal]);
  if (is_hopeful(first)) push(first);
}

bool PartSearch::is_no_worse(const Kept& one, const Kept& other) {
  return one.worth >= other.worth &&
         std::ranges::equal(one.waits, other.waits, std::less_equal<>());
}

/// Instead of those kept there that are no better: whoever comes later and is dropped for one of them is dropped for
/// this one as well.
void PartSearch::keep(std::uint32_t row) {
  const Label& label = labels_[row];
  if (head_[label.at] == none) touched_.push_back(label.at);
  const Kept kept{label.worth, waits(label), none};
  std::uint32_t* link = &head_[label.at];
  while (*link != none) {
    Kept& other = kept_[*link];
    if (is_no_worse(kept, other))
      *link = other.same_vertex;
    else
      link = &other.same_vertex;
  }
  const std::uint32_t others = head_[label.at];
  head_[label.at] = static_cast<std::uint32_t>(kept_.size());
  kept_.push_back({kept.worth, kept.waits, others});
}

/// What driving onto a vertex takes from the worth; false when it may not be.
bool PartSearch::drive_onto(Vertex v, std::uint32_t before, std::int32_t& worth) const {
  const std::uint32_t piece = hunt_.piece_of[v];
  if (hunt_.piece_quiet[piece] == 0) return true;
  int drives = part_.drives[piece];
  if (drives >= hunt_.piece_most[piece]) return false;
  for (std::uint32_t at = labels_[before].quiet; at != none; at = quiet_[at].before)
    if (quiet_[at].piece == piece) ++drives;
  if (drives >= hunt_.piece_most[piece]) return false;
  if (drives > 0) worth -= static_cast<std::int32_t>(std::lround(hunt_.piece_m[piece]));
  return true;
}

std::int64_t PartSearch::worth_again(std::uint32_t before, const Worthy& chance) const {
  const WorthyPass& group = groups_[chance.group];
  std::size_t repeats = rest_has_[chance.group];
  int of_place = place_has_[chance.group];
  for (std::uint32_t at = labels_[before].counted; at != none;
       at = labels_[labels_[at].before].counted) {
    const Worthy& earlier = chances_[labels_[at].chance];
    if (earlier.group == chance.group) ++repeats;
    if (earlier.goal == chance.goal && groups_[earlier.group].place == group.place) ++of_place;
  }
  if (hunt_.ground.wish.place_passes && of_place >= *hunt_.ground.wish.place_passes) return 0;
  const auto& worths = hunt_.ground.caps.repeat_worth;
  return repeats < worths.size() ? worths[repeats] : 0;
}

/// The most that what follows a label may be worth.
std::int64_t PartSearch::most_beyond(const Label& label) const {
  std::int64_t worth = 0;
  for (std::size_t goal = 0; goal < goals_.size(); ++goal) {
    const std::int32_t on_ms = to_chance_ms_[goal][label.at];
    if (on_ms == unreached) continue;
    const std::int64_t begin = std::max<std::int64_t>(label.ms + on_ms, label.ready_ms[goal]);
    std::int64_t last = part_.most_ms;
    if (part_.next_worth[goal] > 0)
      last = std::min(last, part_.most_ms + part_.next_ms[goal] - spacing_ms_[goal]);
    if (begin <= last)
      worth += ((last - begin) / spacing_ms_[goal] + 1) * hunt_.ground.caps.repeat_worth.front();
  }
  return worth;
}

/// By goal, how long after the label its next pass may begin, in steps.
PartSearch::Waits PartSearch::waits(const Label& label) const {
  Waits steps{};
  for (std::size_t goal = 0; goal < goals_.size(); ++goal)
    steps[goal] = wait_steps(label.ready_ms[goal], label.ms);
  return steps;
}

bool PartSearch::is_dominated(const Label& label) const {
  const Kept own{label.worth, waits(label), none};
  for (std::uint32_t row = head_[label.at]; row != none; row = kept_[row].same_vertex)
    if (is_no_worse(kept_[row], own)) return true;
  return false;
}

/// There is time for it, and it may come to something.
bool PartSearch::is_hopeful(const Label& label) const {
  return back_.reached(label.at) &&
         label.ms + back_.ms(label.at) - hunt_.graph.along_ms(label.at) <= part_.most_ms &&
         label.worth + most_beyond(label) >= part_.to_beat;
}

/// Rules: the label is hopeful.
void PartSearch::push(Label label) {
  if (is_dominated(label)) return;
  const std::uint32_t piece = hunt_.piece_of[label.at];
  if (hunt_.piece_quiet[piece] != 0 && label.before != none) {
    quiet_.push_back({piece, labels_[label.before].quiet});
    label.quiet = static_cast<std::uint32_t>(quiet_.size() - 1);
  }
  labels_.push_back(label);
  queue_.push_back(static_cast<std::uint64_t>(label.ms) << 32U | (labels_.size() - 1));
  std::push_heap(queue_.begin(), queue_.end(), std::greater<>());
}

void PartSearch::go_on(std::uint32_t row) {
  for (const reach::LocalGraph::Arc& arc : hunt_.graph.out(labels_[row].at)) {
    Label next = labels_[row];
    next.at = arc.to;
    next.ms += arc.step_ms;
    next.before = row;
    next.chance = none;
    if (!is_hopeful(next)) continue;
    const std::int32_t worth = next.worth;
    if (!drive_onto(arc.to, row, next.worth)) continue;
    if (next.worth == worth || is_hopeful(next)) push(next);
  }
}

void PartSearch::drive_chances(std::uint32_t row) {
  const Vertex at = labels_[row].at;
  for (std::uint32_t k = chance_first_[at]; k < chance_first_[at + 1]; ++k) {
    const Worthy& chance = chances_[k];
    const Candidate& candidate = hunt_.candidates[chance.candidate];
    Label next = labels_[row];
    const std::int32_t begins_ms = next.ms - hunt_.graph.along_ms(at);
    if (begins_ms < next.ready_ms[chance.goal]) continue;
    next.worth += static_cast<std::int32_t>(worth_again(row, chance));
    if (next.worth == labels_[row].worth) continue;
    bool may = true;
    for (std::size_t i = 1; i < candidate.path.size() && may; ++i)
      may = drive_onto(candidate.path[i], row, next.worth);
    if (!may) continue;
    next.ms += static_cast<std::int32_t>(candidate.inner_ms);
    next.ready_ms[chance.goal] = begins_ms + static_cast<std::int32_t>(spacing_ms_[chance.goal]);
    next.at = candidate.path.back();
    next.before = row;
    next.chance = k;
    next.counted = static_cast<std::uint32_t>(labels_.size());
    if (is_hopeful(next)) push(next);
  }
}

void PartSearch::note_end(std::uint32_t row) {
  const Label& label = labels_[row];
  std::int64_t worth = label.worth;
  for (std::size_t goal = 0; goal < goals_.size(); ++goal)
    if (part_.next_worth[goal] > 0 && label.ready_ms[goal] > label.ms + part_.next_ms[goal])
      worth -= part_.next_worth[goal];
  if (worth < part_.to_beat ||
      (worth == part_.to_beat && label.ms >= part_.now_ms - least_saved_ms))
    return;
  const auto at =
      std::find_if(ends_.begin(), ends_.end(), [&](const End& end) { return end.worth < worth; });
  ends_.insert(at, {worth, row});
  if (ends_.size() > most_ends) ends_.pop_back();
}

std::vector<Vertex> PartSearch::way_to(std::uint32_t row) const {
  std::vector<Vertex> way;
  for (std::uint32_t at = row; at != none; at = labels_[at].before) {
    const Label& label = labels_[at];
    if (label.chance == none) {
      way.push_back(label.at);
      continue;
    }
    const std::vector<Vertex>& path = hunt_.candidates[chances_[label.chance].candidate].path;
    way.insert(way.end(), path.rbegin(), path.rend() - 1);
  }
  std::reverse(way.begin(), way.end());
  return way;
}

std::vector<std::vector<Vertex>> PartSearch::best(Part part, std::size_t most_labels) {
  begin(std::move(part));
  while (!queue_.empty() && labels_.size() < most_labels) {
    std::pop_heap(queue_.begin(), queue_.end(), std::greater<>());
    const auto row = static_cast<std::uint32_t>(queue_.back());
    queue_.pop_back();
    if (is_dominated(labels_[row])) continue;
    keep(row);
    if (labels_[row].at == part_.to && row != 0) note_end(row);
    go_on(row);
    drive_chances(row);
  }
  std::vector<std::vector<Vertex>> ways;
  for (const End& each : ends_) ways.push_back(way_to(each.row));
  return ways;
}

}  // namespace loopwright::find
