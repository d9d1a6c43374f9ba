// No quiet street more often than its cap.
//   1. While some quiet piece is driven too often, a leg that drives it is routed again with such
//      pieces made very slow.
//   2. A leg that can't do without is the price of a stop: that stop is left out, and its place in
//      the minutes is filled otherwise.
#include <algorithm>

#include "find/builder.hpp"

namespace loopwright::find {

namespace {

constexpr int most_rounds = 24;  // ours

/// How often each dense piece is driven in the plan.
std::vector<int> drives_of(const Hunt& hunt, const Plan& plan) {
  std::vector<int> drives(hunt.piece_m.size(), 0);
  for (const Vertex v : plan.vertices()) ++drives[hunt.piece_of[v]];
  return drives;
}

bool is_worn_out(const Hunt& hunt, const std::vector<int>& drives, Vertex v) {
  const std::uint32_t piece = hunt.piece_of[v];
  return hunt.piece_quiet[piece] != 0 && drives[piece] > hunt.piece_most[piece];
}

/// Legs that drive a piece too often driven.
std::vector<std::size_t> legs_at_fault(const Hunt& hunt, const Plan& plan) {
  const std::vector<int> drives = drives_of(hunt, plan);
  std::vector<std::size_t> legs;
  for (std::size_t leg = 0; leg < plan.legs.size(); ++leg)
    if (std::any_of(plan.legs[leg].begin(), plan.legs[leg].end(),
                    [&](Vertex v) { return is_worn_out(hunt, drives, v); }))
      legs.push_back(leg);
  return legs;
}

}  // namespace

void Builder::leave_out_stop(Plan& plan, std::size_t stop) {
  const Vertex from = stop == 0 ? Times::door : plan.stops[stop - 1].path.back();
  const Vertex to = stop + 1 == plan.stops.size() ? Times::door : plan.stops[stop + 1].path.front();
  const auto at = static_cast<std::ptrdiff_t>(stop);
  plan.stops.erase(plan.stops.begin() + at);
  plan.legs.erase(plan.legs.begin() + at + 1);
  plan.legs[stop] = plan.stops.empty() ? std::vector<Vertex>{} : times_.leg_path(from, to);
}

void Builder::spare_quiet_streets(Plan& plan, const Liking& liking) {
  for (int round = 0; round < most_rounds; ++round) {
    const std::vector<std::size_t> legs = legs_at_fault(hunt_, plan);
    if (legs.empty()) return;
    const std::size_t leg = legs[dice_.below(legs.size())];
    const std::vector<Vertex> before = plan.legs[leg];
    learn_used(plan, leg, liking);
    if (reroute(plan, leg) && plan.legs[leg] != before) continue;
    if (plan.stops.empty()) return;
    leave_out_stop(plan, std::min(leg, plan.stops.size() - 1));
    fill(plan, liking);
  }
}

}  // namespace loopwright::find
