// What is wanted at the states that fit between home and end.
//   1. Of the chances that begin at such a state, those that count for a want and can be driven through and
//      left for the end in the minutes are candidates; those that take too long are remembered as too far.
//   2. Of joined wants the ways on which a chance leads into the second kind (joined.cpp); of bus lanes asked for
//      at their hours: lane_candidates.cpp.
//   3. What is welcome is only counted, by the stretch it begins on.
#include <algorithm>

#include "find/bans.hpp"
#include "find/hunt.hpp"
#include "find/joined.hpp"
#include "find/stops.hpp"
#include "loopwright/wish/turn_round.hpp"

namespace loopwright::find {

namespace {

/// Passed on one stretch: beside the road, or a manoeuvre.
bool is_beside(road::Kind kind) {
  const road::KindForm form = road::form_of(kind);
  return form == road::KindForm::roadside || form == road::KindForm::manoeuvre;
}

}  // namespace

std::optional<Candidate> Hunt::candidate_at(Vertex entry, const road::Chance& chance) const {
  return candidate_on(entry, chance, ground.roads.path_of(chance));
}

std::optional<Candidate> Hunt::candidate_on(Vertex entry, const road::Chance& chance,
                                            std::span<const StretchId> way) const {
  Candidate candidate{ChanceId{static_cast<std::size_t>(&chance - ground.roads.chances.data())},
                      chance.place,
                      chance.kind,
                      chance.movement,
                      {entry},
                      0,
                      stop_ms(chance.kind)};
  for (const StretchId next : way.subspan(1)) {
    const auto arcs = graph.out(candidate.path.back());
    const auto arc = std::find_if(arcs.begin(), arcs.end(), [&](const reach::LocalGraph::Arc& a) {
      return graph.stretch(a.to) == next;
    });
    if (arc == arcs.end()) return std::nullopt;
    candidate.inner_ms += arc->turn_ms + graph.along_ms(arc->to);
    candidate.path.push_back(arc->to);
  }
  return candidate;
}

void Hunt::add_candidate(Candidate candidate, std::int64_t home_ms,
                         std::span<const std::int64_t> end_ms) {
  const Vertex last = candidate.path.back();
  candidate.least_ms =
      home_ms + candidate.inner_ms + end_ms[last] - graph.along_ms(last) + candidate.stop_ms;
  candidate.there_ms = home_ms - graph.along_ms(candidate.path.front());
  if (candidate.least_ms > high_ms) {
    too_far.push_back(candidate.chance);
    return;
  }
  const auto serves_it = [&](const wish::Want& want) { return serves(candidate, want); };
  if (std::ranges::any_of(ground.wish.wants, serves_it)) candidates.push_back(std::move(candidate));
}

void Hunt::gather_joined(Vertex v, const road::Chance& chance, std::int64_t home_ms,
                         std::span<const std::int64_t> end_ms) {
  std::vector<road::Kind> done;
  for (const wish::Want& want : ground.wish.wants) {
    if (!want.into || !wish::counts_for(chance.kind, chance.movement, want) ||
        std::ranges::find(done, *want.into) != done.end())
      continue;
    done.push_back(*want.into);
    for (const auto& way : joined_ways(ground.roads, chance, *want.into)) {
      std::optional<Candidate> candidate = candidate_on(v, chance, way);
      if (!candidate) continue;
      candidate->into = want.into;
      add_candidate(std::move(*candidate), home_ms, end_ms);
    }
  }
}

void Hunt::gather_at(Vertex v, std::int64_t home_ms, std::span<const std::int64_t> end_ms) {
  for (const road::Chance& chance : ground.roads.chances_from(graph.stretch(v))) {
    const auto may_count = [&](const wish::Want& want) {
      return wish::counts_for(chance.kind, chance.movement, want);
    };
    if (std::ranges::none_of(ground.wish.wants, may_count)) continue;
    // A manoeuvre shuts no road, so that one too hard is still seen here.
    if (is_unwanted(ground.wish, ground.caps, chance)) continue;
    // Beside the road at the door it may lie on the part that isn't driven.
    const PieceId piece = chance.entry.piece();
    const bool at_door = piece == ground.home.piece || piece == ground.end.piece;
    if (at_door && is_beside(chance.kind)) continue;
    if (std::optional<Candidate> candidate = candidate_at(v, chance))
      add_candidate(std::move(*candidate), home_ms, end_ms);
    gather_joined(v, chance, home_ms, end_ms);
    if (with_verdicts && !wish::verdicts_of(chance.kind).empty())
      for (Candidate& candidate : lane_candidates(v, chance))
        add_candidate(std::move(candidate), home_ms, end_ms);
  }
}

void Hunt::find_welcome() {
  if (!wish::welcomes_practice(ground.wish)) return;
  welcome_at.assign(graph.size(), 0);
  for (Vertex v = 0; v < graph.size(); ++v) {
    PlaceId last;  // chances come by place: each once
    for (const road::Chance& chance : ground.roads.chances_from(graph.stretch(v))) {
      if (chance.place == last || std::ranges::none_of(ground.wish.welcome, [&](road::Kind kind) {
            // A manoeuvre is done only where it is asked for.
            return road::meets(chance.kind, kind) &&
                   road::form_of(kind) != road::KindForm::manoeuvre;
          }))
        continue;
      last = chance.place;
      ++welcome_at[v];
    }
  }
}

/// Each once, and none that another way leads to in time.
void Hunt::settle_too_far() {
  std::vector<ChanceId> in_time;
  for (const Candidate& candidate : candidates) in_time.push_back(candidate.chance);
  std::sort(in_time.begin(), in_time.end());
  std::sort(too_far.begin(), too_far.end());
  too_far.erase(std::unique(too_far.begin(), too_far.end()), too_far.end());
  std::erase_if(too_far, [&](ChanceId chance) {
    return std::binary_search(in_time.begin(), in_time.end(), chance);
  });
}

void Hunt::gather_candidates(std::span<const std::int64_t> home_ms,
                             std::span<const std::int64_t> end_ms) {
  for (Vertex v = 0; v < graph.size(); ++v) gather_at(v, home_ms[v], end_ms);
  settle_too_far();
  std::stable_sort(candidates.begin(), candidates.end(),
                   [](const Candidate& a, const Candidate& b) { return a.least_ms < b.least_ms; });
}

}  // namespace loopwright::find
