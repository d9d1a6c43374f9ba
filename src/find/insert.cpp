// Stops for what is wanted.
//   1. Counts: while a want is unmet (passes on the legs count too), the candidate that costs the
//      least extra time at its best gap is put in; the dice lengthen each cost by up to 40 %, so
//      that tries differ, and places used before count as two minutes farther.
//      Before them what must be taken, by the way that costs least.
//   2. "max": the candidate with the most worth for its extra time is put in, until none fits.
//   3. Of bus lanes at their hours only what is come to in time is put in, nothing before them that
//      would make them late, and what then doesn't help is taken out again (lane_guide.cpp).
// Cheapest insertion is the construction step of the orienteering heuristics (Tsiligirides 1984;
// Golden, Levy and Vohra 1987), here over (place, entry, exit) with turn-aware times between.
#include <algorithm>
#include <map>

#include "find/builder.hpp"

namespace loopwright::find {

namespace {

constexpr std::int64_t used_place_ms = 120000;  // ours
constexpr int most_insertions = 90;             // ours: more passes than fit into any lesson

Vertex before(const Plan& plan, std::size_t gap) {
  return gap == 0 ? Times::door : plan.stops[gap - 1].path.back();
}
Vertex after(const Plan& plan, std::size_t gap) {
  return gap == plan.stops.size() ? Times::door : plan.stops[gap].path.front();
}

int uses_of(const Hunt& hunt, const Plan& plan, PlaceId place) {
  return static_cast<int>(
      std::count_if(plan.stops.begin(), plan.stops.end(), [&](const Stop& stop) {
        return stop.candidate >= 0 &&
               hunt.candidates[static_cast<std::size_t>(stop.candidate)].place == place;
      }));
}

}  // namespace

std::int64_t Builder::insertion_ms(const Plan& plan, const Candidate& candidate, std::size_t gap) {
  const Vertex from = before(plan, gap);
  const Vertex to = after(plan, gap);
  const std::int64_t there = times_.leg(from, candidate.path.front());
  if (there < 0) return -1;
  const std::int32_t onward = times_.to(to)[candidate.path.back()];
  if (onward < 0) return -1;
  const std::int64_t now = plan.legs.size() == 1 ? 0 : times_.leg(from, to);
  if (now < 0) return -1;
  return std::max<std::int64_t>(
      0, there + candidate.inner_ms + onward - hunt_.graph.along_ms(candidate.path.back()) - now);
}

bool Builder::in_time(const Plan& plan, const Leeway& leeway, const Insertion& where) {
  const Candidate& candidate = hunt_.candidates[where.candidate];
  if (where.more_ms + candidate.stop_ms > leeway.most_ms[where.gap]) return false;
  const auto verdict = hunt_.ground.wish.wants[where.want].verdict;
  if (!verdict) return true;
  const Vertex entry = candidate.path.front();
  const std::int64_t there_ms = leeway.begins_ms[where.gap] +
                                times_.leg(before(plan, where.gap), entry) -
                                hunt_.graph.along_ms(entry);
  const std::int64_t spare_ms = std::max<std::int64_t>(0, leeway.room_ms - where.more_ms);
  return candidate.lanes.has(*verdict, there_ms, there_ms + spare_ms);
}

Builder::Insertion Builder::cheapest(const Plan& plan, std::size_t want, const Liking& liking) {
  Insertion best;
  std::int64_t best_cost = 0;
  const Leeway leeway = guide_.idle() ? Leeway{} : guide_.leeway(plan);
  for (const std::uint32_t row : hunt_.of_want[want]) {
    if (std::ranges::find(useless_, Useless{want, row}) != useless_.end()) continue;
    const Candidate& candidate = hunt_.candidates[row];
    const int uses = uses_of(hunt_, plan, candidate.place);
    if (uses >= hunt_.ground.caps.passes_of(candidate.kind)) continue;
    const bool used_before =
        std::binary_search(liking.used_places.begin(), liking.used_places.end(), candidate.place);
    const std::int64_t dislike = used_place_ms * (uses + (used_before ? 1 : 0));
    const std::int64_t luck = 1000 + dice_.thousandths() * 4 / 10;
    for (std::size_t gap = 0; gap <= plan.stops.size(); ++gap) {
      const std::int64_t more = insertion_ms(plan, candidate, gap);
      if (more < 0) continue;
      const std::int64_t cost = (more + dislike) * luck / 1000;
      if (best.more_ms >= 0 && cost >= best_cost) continue;
      const Insertion here{row, gap, more, want};
      if (guide_.idle() || in_time(plan, leeway, here)) best = here, best_cost = cost;
    }
  }
  return best;
}

void Builder::insert(Plan& plan, const Insertion& where) {
  const Vertex from = before(plan, where.gap);
  const Vertex to = after(plan, where.gap);
  Stop stop{hunt_.candidates[where.candidate].path, static_cast<std::int32_t>(where.candidate),
            static_cast<std::int32_t>(where.want)};
  std::vector<Vertex> in = times_.leg_path(from, stop.path.front());
  std::vector<Vertex> on = times_.leg_path(stop.path.back(), to);
  const auto gap = static_cast<std::ptrdiff_t>(where.gap);
  plan.legs[where.gap] = std::move(in);
  plan.legs.insert(plan.legs.begin() + gap + 1, std::move(on));
  plan.stops.insert(plan.stops.begin() + gap, std::move(stop));
}

/// Puts it in, and takes it out again when the want still needs as many.
void Builder::keep_if_useful(Plan& plan, const Insertion& where, int needed) {
  insert(plan, where);
  if (guide_.idle() || !hunt_.ground.wish.wants[where.want].verdict) return;
  if (unmet(hunt_, guide_.hoped(plan))[where.want] < needed) return;
  leave_out_stop(plan, where.gap);
  useless_.push_back({where.want, where.candidate});
}

void Builder::insert_counts(Plan& plan, const Liking& liking) {
  useless_.clear();
  for (int tries = 0; tries < most_insertions; ++tries) {
    const std::vector<int> needs = unmet(hunt_, guide_.hoped(plan));
    std::vector<std::size_t> open;
    for (std::size_t w = 0; w < needs.size(); ++w)
      if (needs[w] > 0 && !hunt_.of_want[w].empty()) open.push_back(w);
    // Rare kinds first: what is common fits in later.
    std::stable_sort(open.begin(), open.end(), [&](std::size_t a, std::size_t b) {
      return hunt_.of_want[a].size() < hunt_.of_want[b].size();
    });
    bool inserted = false;
    for (const std::size_t w : open) {
      const Insertion where = cheapest(plan, w, liking);
      if (where.more_ms < 0) continue;
      const std::int64_t stay_ms = hunt_.candidates[where.candidate].stop_ms;
      if (away_ms(hunt_, plan) + where.more_ms + stay_ms > hunt_.high_ms) continue;
      keep_if_useful(plan, where, needs[w]);
      inserted = true;
      break;
    }
    if (!inserted) return;
  }
}

/// By the way that costs least; false when none fits into the minutes.
bool Builder::insert_take(Plan& plan, const Take& take) {
  Vertex best = reach::LocalGraph::none;
  std::size_t best_gap = 0;
  std::int64_t best_ms = 0;
  for (std::size_t gap = 0; gap <= plan.stops.size(); ++gap) {
    const std::int64_t now =
        plan.legs.size() == 1 ? 0 : times_.leg(before(plan, gap), after(plan, gap));
    if (now < 0) continue;
    const FromTimes& there = times_.from(before(plan, gap));
    const std::vector<std::int32_t>& onward = times_.to(after(plan, gap));
    for (const Vertex v : take.vertices) {
      if (there.ms[v] < 0 || onward[v] < 0) continue;
      const std::int64_t more = there.ms[v] + onward[v] - hunt_.graph.along_ms(v) - now;
      if (best == reach::LocalGraph::none || more < best_ms)
        best = v, best_gap = gap, best_ms = more;
    }
  }
  if (best == reach::LocalGraph::none || away_ms(hunt_, plan) + best_ms > hunt_.high_ms)
    return false;
  const auto gap = static_cast<std::ptrdiff_t>(best_gap);
  std::vector<Vertex> in = times_.leg_path(before(plan, best_gap), best);
  std::vector<Vertex> on = times_.leg_path(best, after(plan, best_gap));
  plan.legs[best_gap] = std::move(in);
  plan.legs.insert(plan.legs.begin() + gap + 1, std::move(on));
  plan.stops.insert(plan.stops.begin() + gap, Stop{{best}, -1});
  return true;
}

void Builder::insert_takes(Plan& plan) {
  for (const Take& take : hunt_.takes)
    if (!is_taken(take, plan.vertices())) insert_take(plan, take);
}

Builder::Insertion Builder::most_worth(const Plan& plan, std::size_t want, std::int64_t room_ms) {
  std::map<std::pair<PlaceId, road::Movement>, std::size_t> times;
  for (const Stop& stop : plan.stops)
    if (stop.candidate >= 0) {
      const Candidate& c = hunt_.candidates[static_cast<std::size_t>(stop.candidate)];
      ++times[{c.place, c.movement}];
    }
  const Caps& caps = hunt_.ground.caps;
  const Leeway leeway = guide_.idle() ? Leeway{} : guide_.leeway(plan);
  Insertion best;
  double best_rate = 0;
  for (const std::uint32_t row : hunt_.of_want[want]) {
    const Candidate& candidate = hunt_.candidates[row];
    const std::size_t k = times[{candidate.place, candidate.movement}];
    if (k >= caps.repeat_worth.size() ||
        uses_of(hunt_, plan, candidate.place) >= caps.passes_of(candidate.kind))
      continue;
    const double worth = static_cast<double>(caps.repeat_worth[k] * (700 + dice_.thousandths()));
    for (std::size_t gap = 0; gap <= plan.stops.size(); ++gap) {
      const std::int64_t more = insertion_ms(plan, candidate, gap);
      if (more < 0 || more + candidate.stop_ms > room_ms) continue;
      // A pass sooner than the spacing after the last one isn't worth less time than that.
      const double rate =
          worth / static_cast<double>(std::max(more + candidate.stop_ms, caps.spacing_ms));
      if (rate <= best_rate) continue;
      const Insertion here{row, gap, more, want};
      if (guide_.idle() || in_time(plan, leeway, here)) best = here, best_rate = rate;
    }
  }
  return best;
}

void Builder::insert_max(Plan& plan) {
  const auto& wants = hunt_.ground.wish.wants;
  for (int tries = 0; tries < most_insertions; ++tries) {
    bool inserted = false;
    for (std::size_t w = 0; w < wants.size(); ++w) {
      if (wants[w].count) continue;
      const Insertion where = most_worth(plan, w, hunt_.high_ms - away_ms(hunt_, plan));
      if (where.more_ms < 0) continue;
      insert(plan, where);
      inserted = true;
    }
    if (!inserted) return;
  }
}

}  // namespace loopwright::find
