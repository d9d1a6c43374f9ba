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
/// Between fixes farther apart in time ways may wind more.
constexpr double usual_gap_s = 20, winding_mps = 15;
constexpr double none = -std::numeric_limits<double>::infinity();

}  // namespace

double most_way_m(const Noise& noise, double straight_m, double seconds) {
  const double wound = straight_m + most_betas * noise.beta_m +
                       winding_mps * std::max(seconds - usual_gap_s, 0.0);
  return std::min(wound, fastest_mps * seconds + 4 * noise.sigma_m + 30);
}

double most_back_m(const Noise& noise) {
  return std::max(20.0, 4 * noise.sigma_m);
}

/// From a fix to the next.
struct Chain::Move {
  double straight_m = 0;
  double most_m = 0;    ///< longest way
  double beyond_m = 0;  ///< of the stretches it leads to, behind the places on them
};

double Chain::emission(const Candidate& candidate) const {
  const double sigmas = candidate.off_m / noise_.sigma_m;
  return -0.5 * sigmas * sigmas;
}

bool Chain::begin(std::size_t row, const Fix& fix) {
  const double radius_m =
      std::clamp(radius_sigmas * noise_.sigma_m, least_radius_m, most_radius_m);
  Step step{row, fix, {}};
  for (const Candidate& candidate : candidates_at(router_.roads(), fix.at, radius_m))
    step.seats.push_back({StateId{candidate.stretch.index()}, candidate.along_m, candidate.off_m,
                          emission(candidate)});
  if (step.seats.empty()) return false;
  steps_.assign(1, std::move(step));
  return true;
}

bool Chain::go_on(std::size_t row, const Fix& fix) {
  const double radius_m =
      std::clamp(radius_sigmas * noise_.sigma_m, least_radius_m, most_radius_m);
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
  Move move{straight_m, most_way_m(noise_, straight_m, fix.unix_s - from.fix.unix_s)};
  for (const Candidate& candidate : candidates)
    move.beyond_m = std::max(
        move.beyond_m, router_.roads().piece(candidate.stretch).length_m - candidate.along_m);
  for (std::size_t k = 0; k < from.seats.size(); ++k)
    if (from.seats[k].alive) spread(from, static_cast<int>(k), move, to);
  const bool reached = std::any_of(to.seats.begin(), to.seats.end(),
                                   [](const Seat& seat) { return seat.score > none; });
  if (!reached) return false;
  for (std::size_t k = 0, row_of_seat = 0; k < candidates.size(); ++k)
    router_.each_state(candidates[k].stretch,
                       [&](StateId) { to.seats[row_of_seat++].score += emission(candidates[k]); });
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
      way_m = rest_m + *to_end_m - roads.piece(roads.stretch_of(next.state)).length_m + next.along_m;
    }
    if (way_m < 0 || way_m > move.most_m) continue;
    const double score = seat.score - std::abs(way_m - move.straight_m) / noise_.beta_m;
    if (score <= next.score) continue;
    next.score = score;
    next.before = seat_row;
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
  for (std::size_t k = 0; k < candidates.size(); ++k) {
    if (candidates[k].other_way < 0) continue;
    const auto other = static_cast<std::size_t>(candidates[k].other_way);
    const Seat& from = step.seats[static_cast<std::size_t>(best[other])];
    Seat& to = step.seats[static_cast<std::size_t>(plain[k])];
    const double score = from.score + turn_round_score;
    if (from.turned || score <= to.score) continue;
    to.score = score, to.before = best[other], to.turned = true;
  }
  for (Seat& seat : step.seats) seat.alive = seat.score >= highest - beam;
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
    chosen.push_back({steps_[step].row, seat->state, seat->along_m, seat->off_m, false});
    at = seat->before;
  }
  std::reverse(chosen.begin(), chosen.end());
  return chosen;
}

}  // namespace loopwright::trace
