// No quiet street more often than its cap.
//   1. While some quiet piece is driven too often, a leg that drives it is routed again with such
//      pieces made very slow.
//   2. A way round that can't do without goes elsewhere, or is left out.
//   3. Any other leg that can't is the price of a stop: that stop is left out, and its place in the minutes is
//      filled otherwise.
#include <algorithm>
#include <limits>

#include "find/builder.hpp"

namespace loopwright::find {

namespace {

constexpr int most_rounds = 24, most_in_vain = 12;  // ours
// Of ways round that take each other's place (ours).
constexpr std::int64_t about_as_long_ms = 30'000;

bool is_worn_out(const Hunt& hunt, const std::vector<int>& drives, Vertex v) {
  const std::uint32_t piece = hunt.piece_of[v];
  return hunt.piece_quiet[piece] != 0 && drives[piece] > hunt.piece_most[piece];
}

/// Legs that drive a piece too often driven.
std::vector<std::size_t> legs_at_fault(const Hunt& hunt, const Plan& plan) {
  const std::vector<int> drives = drives_of_pieces(hunt, plan.vertices());
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

/// Takes out the way round that a leg belongs to and looks for one of like time; true when there was one.
bool Builder::go_round_elsewhere(Plan& plan, std::size_t leg, const Liking& liking) {
  const auto is_way_round = [&](std::size_t stop) {
    return stop < plan.stops.size() && plan.stops[stop].candidate < 0;
  };
  const std::size_t before = leg > 0 ? leg - 1 : plan.stops.size();
  if ((!is_way_round(before) && !is_way_round(leg)) || plan.stops.size() == 1) return false;
  const std::size_t stop = is_way_round(before) ? before : leg;
  const std::int64_t with_it_ms = plan_ms(hunt_, plan);
  leave_out_stop(plan, stop);
  const std::int64_t lost_ms = with_it_ms - plan_ms(hunt_, plan);
  learn_used(plan, stop, liking);
  const std::int64_t least_ms = std::max<std::int64_t>(1, lost_ms - about_as_long_ms);
  const std::int64_t room_ms = hunt_.high_ms - away_ms(hunt_, plan);
  add_way_round(plan, stop, least_ms, std::min(room_ms, lost_ms + about_as_long_ms));
  return true;
}

void Builder::spare_quiet_streets(Plan& plan, const Liking& liking) {
  std::size_t fewest = std::numeric_limits<std::size_t>::max();
  int fewest_at = 0;
  for (int round = 0; round < most_rounds; ++round) {
    const std::vector<std::size_t> legs = legs_at_fault(hunt_, plan);
    if (legs.size() < fewest) fewest = legs.size(), fewest_at = round;
    if (legs.empty() || round - fewest_at > most_in_vain) return;
    const std::size_t leg = legs[dice_.below(legs.size())];
    const std::vector<Vertex> before = plan.legs[leg];
    learn_used(plan, leg, liking);
    if (reroute(plan, leg) && plan.legs[leg] != before) continue;
    if (plan.stops.empty()) return;
    if (go_round_elsewhere(plan, leg, liking)) continue;
    leave_out_stop(plan, std::min(leg, plan.stops.size() - 1));
    fill(plan, liking);
  }
}

}  // namespace loopwright::find
