// Ways round that use up the minutes, and less road driven twice.
//   1. Filling: for a leg, one search forwards from its beginning and one backwards from its end
//      give, for every vertex, the time of the leg if it went round by there. Of the vertices that
//      bring the plan into the window (or a part of the way to it, when much is missing), a
//      sample is compared by the road it would drive again.
//      When a bus lane is wanted at its hours, as much goes in before it as brings it to them, and no
//      more.
//   2. Roads already in the plan cost more, so that searches look for others.
//   3. Improving: a way round is dropped and found anew, or a leg is routed again round the roads
//      the rest uses; the better plan is kept (ruin and recreate, Schrimpf and others 2000).
// Numbers are ours, tried on Newport; tools/bench shows what they cost.
#include <algorithm>

#include "find/builder.hpp"

namespace loopwright::find {

namespace {

constexpr std::int64_t part_ms = 12 * 60000;  // the longest way round made in one piece
constexpr std::size_t sample_size = 48;
constexpr int fill_tries = 24;
constexpr std::int32_t dislike_factor = 2;    // of the time on roads already in the plan
constexpr double corner_m = 40;               // of road driven again: what a corner weighs
constexpr std::int32_t wanted_ms = 60000;     // for what is wanted, beyond its number
constexpr std::int32_t worn_out_ms = 120000;  // for a quiet street at its cap
constexpr double worn_out_m = 2000;           // the same as road driven again

}  // namespace

void Builder::learn_used(const Plan& plan, std::size_t except_leg, const Liking& liking) {
  std::fill(used_.begin(), used_.end(), std::uint8_t{0});
  for (std::size_t leg = 0; leg < plan.legs.size(); ++leg)
    if (leg != except_leg) use(plan.legs[leg]);
  for (const Stop& stop : plan.stops) use(stop.path);
  for (Vertex v = 0; v < hunt_.graph.size(); ++v) {
    const std::uint32_t piece = hunt_.piece_of[v];
    extra_ms_[v] = liking.extra_ms.empty() ? 0 : liking.extra_ms[v];
    if (used_[piece] != 0) extra_ms_[v] += dislike_factor * hunt_.graph.along_ms(v);
    if (hunt_.piece_quiet[piece] != 0 && used_[piece] >= hunt_.piece_most[piece])
      extra_ms_[v] += worn_out_ms;
  }
  for (const Vertex v : counted_entries_) extra_ms_[v] += wanted_ms;
}

double Builder::driven_again_m(std::span<const Vertex> path) {
  ++stamp_;
  double again = 0;
  for (const Vertex v : path) {
    const std::uint32_t piece = hunt_.piece_of[v];
    if (used_[piece] != 0 || seen_[piece] == stamp_)
      again += static_cast<double>(hunt_.piece_m[piece]);
    if (hunt_.piece_quiet[piece] != 0 &&
        used_[piece] + (seen_[piece] == stamp_ ? 1 : 0) >= hunt_.piece_most[piece])
      again += worn_out_m;
    seen_[piece] = stamp_;
  }
  return again;
}

/// What is welcome on a path, each chance once, as road that needn't be new.
double Builder::welcome_m_on(std::span<const Vertex> path) {
  if (hunt_.welcome_at.empty()) return 0;
  double metres = 0;
  for (const Vertex v : path)
    metres += static_cast<double>(hunt_.welcome_at[v] * hunt_.ground.caps.welcome_worth);
  return metres;
}

Vertex Builder::choose_via(const Plan& plan, std::size_t leg, std::int64_t least_ms,
                           std::int64_t most_ms) {
  const std::int64_t now = leg_ms(hunt_, plan, leg);
  out_.run(seeds_before(hunt_, plan, leg), {.limit_ms = now + most_ms, .extra_ms = extra_ms_});
  back_.run_back(seeds_after(hunt_, plan, leg),
                 {.limit_ms = now + most_ms, .extra_ms = extra_ms_, .meeting = &out_});
  std::vector<Vertex> fitting;
  for (const Vertex v : out_.settled()) {
    if (!back_.reached(v)) continue;
    const std::int64_t more = out_.ms(v) + back_.ms(v) - hunt_.graph.along_ms(v) - now;
    if (more >= least_ms && more <= most_ms) fitting.push_back(v);
  }
  Vertex best = reach::LocalGraph::none;
  double best_again = 0;
  for (std::size_t k = 0; k < sample_size && !fitting.empty(); ++k) {
    const Vertex v = fitting[dice_.below(fitting.size())];
    std::vector<Vertex> path = out_.path(v);
    const std::vector<Vertex> onward = back_.path(v);
    path.insert(path.end(), onward.begin() + 1, onward.end());
    const double again = driven_again_m(path) + corner_m * corners_on(hunt_, path) +
                         static_cast<double>(turning_weight * turnings_on(hunt_, path)) +
                         static_cast<double>(circlings_on(hunt_, path).weight()) -
                         welcome_m_on(path);
    if (best == reach::LocalGraph::none || again < best_again) best = v, best_again = again;
  }
  return best;
}

bool Builder::add_way_round(Plan& plan, std::size_t leg, std::int64_t least_ms,
                            std::int64_t most_ms) {
  const Vertex via = choose_via(plan, leg, least_ms, most_ms);
  if (via == reach::LocalGraph::none) return false;
  const auto at = static_cast<std::ptrdiff_t>(leg);
  plan.legs[leg] = out_.path(via);
  plan.legs.insert(plan.legs.begin() + at + 1, back_.path(via));
  plan.stops.insert(plan.stops.begin() + at, Stop{{via}, -1});
  return true;
}

void Builder::fill(Plan& plan, const Liking& liking) {
  std::int64_t reduced = 1;  // how many times the least was halved because nothing fitted
  for (int tries = 0; tries < fill_tries; ++tries) {
    const std::int64_t ms = away_ms(hunt_, plan);
    if (ms >= hunt_.low_ms) return;
    const std::int64_t lacking = hunt_.low_ms - ms;
    const std::int64_t room = hunt_.high_ms - ms;
    const std::int64_t parts = (lacking + part_ms - 1) / part_ms;
    const std::int64_t most = parts > 1 ? room / parts : room;
    const std::int64_t least = (parts > 1 ? lacking / parts * 7 / 10 : lacking) / reduced;
    const Leeway leeway = guide_.idle() ? Leeway{} : guide_.leeway(plan);
    const std::size_t leg =
        dice_.below(leeway.early_stop ? *leeway.early_stop + 1 : plan.legs.size());
    const std::int64_t most_here = guide_.idle() ? most : std::min(most, leeway.most_ms[leg]);
    learn_used(plan, leg, liking);
    if (!add_way_round(plan, leg, std::max<std::int64_t>(least, 1), most_here) && tries % 3 == 2)
      reduced *= 2;
  }
}

bool Builder::reroute(Plan& plan, std::size_t leg) {
  if (plan.legs[leg].empty()) return false;
  const std::int64_t room = hunt_.high_ms - away_ms(hunt_, plan) + leg_ms(hunt_, plan, leg);
  const std::vector<reach::LocalSeed> goals = seeds_after(hunt_, plan, leg);
  out_.run(seeds_before(hunt_, plan, leg),
           {.limit_ms = room + part_ms, .extra_ms = extra_ms_, .until = goals});
  Vertex last = reach::LocalGraph::none;
  std::int64_t least_cost = 0;
  for (const reach::LocalSeed& seed : goals) {
    if (!out_.reached(seed.vertex)) continue;
    const std::int64_t cut = seed.ms - hunt_.graph.along_ms(seed.vertex);
    if (out_.ms(seed.vertex) + cut > room) continue;
    const std::int64_t cost = out_.cost(seed.vertex) + cut;
    if (last == reach::LocalGraph::none || cost < least_cost) last = seed.vertex, least_cost = cost;
  }
  if (last == reach::LocalGraph::none) return false;
  plan.legs[leg] = out_.path(last);
  return true;
}

bool Builder::drop_way_round(Plan& plan) {
  std::vector<std::size_t> vias;
  for (std::size_t i = 0; i < plan.stops.size(); ++i)
    if (plan.stops[i].candidate < 0) vias.push_back(i);
  if (vias.empty() || plan.stops.size() == 1) return false;
  leave_out_stop(plan, vias[dice_.below(vias.size())]);
  return true;
}

void Builder::improve(Plan& plan, const Liking& liking) {
  Score best = score(hunt_, plan);
  for (int round = 0; round < improvements_; ++round) {
    Plan changed = plan;
    if (round % 2 == 0 ? !drop_way_round(changed) : false) continue;
    const std::size_t leg = dice_.below(changed.legs.size());
    learn_used(changed, leg, liking);
    reroute(changed, leg);
    fill(changed, liking);
    spare_quiet_streets(changed, liking);
    const Score now = score(hunt_, changed);
    if (now.better_than(best)) plan = std::move(changed), best = now;
  }
}

}  // namespace loopwright::find
