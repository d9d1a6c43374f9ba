// Method:
//   1. A seat is a candidate of a fix together with a state of its stretch. Its score is the best of those before it
//      plus what the way and the fix add; seats far below the best are given up.
//   2. On one stretch the way is what lies between; going back within the noise is standing still. Else it is the
//      shortest way by legal turns from the end of the one stretch through the other.
//   3. Within a step a seat may also be come to from the same place driven the other way: turning round in the road.
//      Of such a pair only one can be the better for it, so no chain runs in a ring.
#include "trace/chain.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace loopwright::trace {
namespace {

constexpr double radius_sigmas = 4, least_radius_m = 40, most_radius_m = 120;
/// Ways longer than the straight distance by so many betas are one chance in 160,000 of those that aren't: ours.
constexpr double most_betas = 12;
/// Seats less likely than e^-25 of the best are given up: ours.
constexpr double beam = 25;
/// Turning round in the road, once in 3000 fixes: ours.
const double turn_round_score = -std::log(3000.0);
/// No lesson drives faster; 100 mph.
constexpr double fastest_mps = 45;
/// What lies unseen may wind more: so many metres a second on the mean, and at most. Ours.
constexpr double winding_mps = 2, most_winding_mps = 15;
/// A receiver's errors are alike for a while: fixes closer together than this each count for less. Ours.
constexpr double independent_after_s = 8, least_weight = 0.1;
/// A drive keeps to its plan more often than not: what a fix beside it counts, and what leaving it unseen does, as
/// logarithms. Small beside what a few fixes tell, so that a real departure shows. Ours.
constexpr double off_plan = 1, left_plan_unseen = 3;
constexpr double none = -std::numeric_limits<double>::infinity();

}  // namespace

double most_way_m(const Noise& noise, const Telling& from, const Telling& to) {
  const double wound = distance_m(from.at, to.at) + most_betas * noise.beta_m +
                       most_winding_mps * std::max(to.silent_s - unseen_after_s, 0.0);
  return std::min(wound, fastest_mps * (to.unix_s - from.unix_s) + 4 * noise.sigma_m + 30);
}

double turn_round_m(const Noise& noise) {
  return -turn_round_score * noise.beta_m;
}

double most_back_m(const Noise& noise) {
  return std::max(20.0, 4 * noise.sigma_m);
}

/// From a fix to the next.
struct Chain::Move {
  double straight_m = 0;
  double beta_m = 0;  ///< mean difference of way and straight distance
  double most_m = 0;  ///< longest way
  double unplanned =
      0;  ///< what it counts to leave the plan unseen; 0: there is none, or all was seen
  double beyond_m = 0;  ///< of the stretches it leads to, behind the places on them
};

Chain::Chain(Router& router, const Noise& noise, std::span<const StretchId> plan,
             const PlanWays& ways)
    : router_(router), noise_(noise), planned_(plan.begin(), plan.end()), plan_ways_(ways) {
  std::sort(planned_.begin(), planned_.end());
}

double Chain::emission(const Candidate& candidate) const {
  const double sigmas = candidate.off_m / noise_.sigma_m;
  const bool beside_plan =
      !planned_.empty() && !std::binary_search(planned_.begin(), planned_.end(), candidate.stretch);
  return -0.5 * sigmas * sigmas - (beside_plan ? off_plan : 0);
}

bool Chain::begin(std::size_t row, const Telling& fix) {
  const double radius_m = std::clamp(radius_sigmas * noise_.sigma_m, least_radius_m, most_radius_m);
  Step step{row, fix, {}};
  for (const Candidate& candidate : candidates_at(router_.roads(), fix.at, radius_m))
    step.seats.push_back({StateId{candidate.stretch.index()}, candidate.along_m, candidate.off_m,
                          emission(candidate)});
  follow_plan(step);
  if (step.seats.empty()) return false;
  steps_.assign(1, std::move(step));
  return true;
}

bool Chain::go_on(std::size_t row, const Telling& fix) {
  const double radius_m = std::clamp(radius_sigmas * noise_.sigma_m, least_radius_m, most_radius_m);
  const std::vector<Candidate> candidates = candidates_at(router_.roads(), fix.at, radius_m);
  if (candidates.empty()) return false;
  const Step& from = steps_.back();
  Step to{row, fix, {}};
  goals_.clear();
  for (const Candidate& candidate : candidates)
    router_.each_state(candidate.stretch, [&](StateId state) {
      to.seats.push_back({state, candidate.along_m, candidate.off_m, none});
      goals_.push_back(state);
    });
  std::sort(goals_.begin(), goals_.end());
  goals_.erase(std::unique(goals_.begin(), goals_.end()), goals_.end());
  const double straight_m = distance_m(from.fix.at, fix.at);
  const double seconds = fix.unix_s - from.fix.unix_s;
  Move move{straight_m, noise_.beta_m + winding_mps * std::max(fix.silent_s - unseen_after_s, 0.0),
            most_way_m(noise_, from.fix, fix)};
  if (!plan_ways_.empty() && fix.silent_s > unseen_after_s) move.unplanned = left_plan_unseen;
  for (const Candidate& candidate : candidates)
    move.beyond_m = std::max(move.beyond_m,
                             router_.roads().piece(candidate.stretch).length_m - candidate.along_m);
  for (std::size_t k = 0; k < from.seats.size(); ++k)
    if (from.seats[k].alive) {
      spread(from, static_cast<int>(k), move, to);
      if (move.unplanned > 0) spread_by_plan(from, static_cast<int>(k), to);
    }
  const bool reached = std::any_of(to.seats.begin(), to.seats.end(),
                                   [](const Seat& seat) { return seat.score > none; });
  if (!reached) return false;
  const double weight = std::clamp(seconds / independent_after_s, least_weight, 1.0);
  for (std::size_t k = 0, row_of_seat = 0; k < candidates.size(); ++k)
    router_.each_state(candidates[k].stretch, [&](StateId) {
      to.seats[row_of_seat++].score += weight * emission(candidates[k]);
    });
  settle(candidates, to);
  steps_.push_back(std::move(to));
  return true;
}

/// Scores of what can be come to from one seat.
void Chain::spread(const Step& from, int seat_row, const Move& move, Step& to) {
  const road::Roads& roads = router_.roads();
  const Seat& seat = from.seats[static_cast<std::size_t>(seat_row)];
  const double rest_m = roads.piece(roads.stretch_of(seat.state)).length_m - seat.along_m;
  const double back_m = most_back_m(noise_);
  router_.run_after(seat.state, move.most_m - rest_m + move.beyond_m, goals_);
  for (Seat& next : to.seats) {
    double way_m = -1;
    if (next.state == seat.state && next.along_m >= seat.along_m - back_m) {
      way_m = std::max(next.along_m - seat.along_m, 0.0);
    } else if (const auto to_end_m = router_.metres_to(next.state)) {
      way_m =
          rest_m + *to_end_m - roads.piece(roads.stretch_of(next.state)).length_m + next.along_m;
    }
    if (way_m < 0 || way_m > move.most_m) continue;
    const double score =
        seat.score - std::abs(way_m - move.straight_m) / move.beta_m - move.unplanned;
    if (score <= next.score) continue;
    next.score = score;
    next.before = seat_row;
    next.by_plan = false;
  }
}

/// The same along the plan, while nothing was recorded.
void Chain::spread_by_plan(const Step& from, int seat_row, Step& to) const {
  const Seat& seat = from.seats[static_cast<std::size_t>(seat_row)];
  const double seconds = to.fix.unix_s - from.fix.unix_s;
  for (Seat& next : to.seats) {
    const auto way = plan_ways_.between(seat.plan_row, {seat.state, seat.along_m},
                                        {next.state, next.along_m}, seconds);
    if (!way || seat.score - way->misfit <= next.score) continue;
    next.score = seat.score - way->misfit;
    next.before = seat_row;
    next.by_plan = true;
  }
}

/// Up to where each seat has driven the plan.
void Chain::follow_plan(Step& step) const {
  for (Seat& seat : step.seats) {
    const std::size_t before =
        seat.before < 0 ? 0 : steps_.back().seats[static_cast<std::size_t>(seat.before)].plan_row;
    seat.plan_row = plan_ways_.follow(before, router_.roads().stretch_of(seat.state));
  }
}

/// Turnings round, and what is given up.
void Chain::settle(const std::vector<Candidate>& candidates, Step& step) const {
  std::vector<int> plain(candidates.size(), -1), best(candidates.size(), -1);
  int row = 0;
  for (std::size_t k = 0; k < candidates.size(); ++k) {
    plain[k] = row;
    router_.each_state(candidates[k].stretch, [&](StateId) {
      const auto& seat = step.seats[static_cast<std::size_t>(row)];
      if (best[k] < 0 || seat.score > step.seats[static_cast<std::size_t>(best[k])].score)
        best[k] = row;
      ++row;
    });
  }
  double highest = none;
  for (const Seat& seat : step.seats) highest = std::max(highest, seat.score);
  follow_plan(step);
  for (std::size_t k = 0; k < candidates.size(); ++k) {
    if (candidates[k].other_way < 0) continue;
    const auto other = static_cast<std::size_t>(candidates[k].other_way);
    const Seat& from = step.seats[static_cast<std::size_t>(best[other])];
    Seat& to = step.seats[static_cast<std::size_t>(plain[k])];
    const double score = from.score + turn_round_score;
    if (from.turned || score <= to.score) continue;
    to.score = score, to.before = best[other], to.turned = true;
    to.plan_row = plan_ways_.follow(from.plan_row, router_.roads().stretch_of(to.state));
  }
  for (Seat& seat : step.seats) seat.alive = seat.score >= highest - beam;
}

std::vector<StateId> Chain::way_by_plan(std::size_t step, const Seat& to) const {
  const Step& before = steps_[step - 1];
  const Seat& from = before.seats[static_cast<std::size_t>(to.before)];
  const double seconds = steps_[step].fix.unix_s - before.fix.unix_s;
  return plan_ways_
      .between(from.plan_row, {from.state, from.along_m}, {to.state, to.along_m}, seconds)
      ->states;
}

std::vector<Chosen> Chain::best() const {
  std::vector<Chosen> chosen;
  if (steps_.empty()) return chosen;
  const auto& last = steps_.back().seats;
  auto at = static_cast<int>(
      std::max_element(last.begin(), last.end(),
                       [](const Seat& a, const Seat& b) { return a.score < b.score; }) -
      last.begin());
  for (std::size_t step = steps_.size(); step-- > 0;) {
    const Seat* seat = &steps_[step].seats[static_cast<std::size_t>(at)];
    if (seat->turned) {
      chosen.push_back({steps_[step].row, seat->state, seat->along_m, seat->off_m, true});
      seat = &steps_[step].seats[static_cast<std::size_t>(seat->before)];
    }
    chosen.push_back({steps_[step].row, seat->state, seat->along_m, seat->off_m});
    if (seat->by_plan) chosen.back().by_plan = way_by_plan(step, *seat);
    at = seat->before;
  }
  std::reverse(chosen.begin(), chosen.end());
  return chosen;
}

}  // namespace loopwright::trace
