#include "trace/plan_way.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::trace {
namespace {

/// How fast a plan is driven unseen: usually, and at most, metres a second; and by how much slower or quicker, as the
/// logarithm of a factor (4.5). Ours.
constexpr double usual_mps = 9, quickest_mps = 25, misfit_most = 1.5;

/// So many rows of a plan may be left out and it still counts as followed. Ours.
constexpr std::size_t rows_ahead = 60;

double misfit_of(double metres, double seconds) {
  return std::abs(std::log(std::max(metres, 1.0) / (usual_mps * seconds)));
}

}  // namespace

std::size_t PlanWays::follow(std::size_t row, StretchId stretch) const {
  const std::size_t end = std::min(row + rows_ahead, plan_.size());
  for (std::size_t next = row; next < end; ++next)
    if (plan_[next] == stretch) return next;
  return row;
}

std::optional<PlanWay> PlanWays::between(std::size_t row, const Spot& from, const Spot& to,
                                         double seconds) const {
  std::optional<PlanWay> best;
  if (row >= plan_.size() || plan_[row] != roads_.stretch_of(from.state)) return best;
  const auto length_m = [this](StateId s) { return roads_.piece(roads_.stretch_of(s)).length_m; };
  PlanWay way;
  StateId at = from.state;
  double metres = length_m(from.state) - from.along_m;
  for (std::size_t next = row + 1; next < plan_.size() && metres <= quickest_mps * seconds;
       ++next) {
    const auto turns = roads_.turns_from(at);
    const auto turn = std::find_if(turns.begin(), turns.end(), [&](const road::Turn& one) {
      return roads_.stretch_of(one.to) == plan_[next];
    });
    if (turn == turns.end()) return best;
    at = turn->to;
    way.states.push_back(at);
    way.misfit = misfit_of(metres + to.along_m, seconds);
    if (at == to.state && way.misfit < (best ? best->misfit : misfit_most)) best = way;
    metres += length_m(at);
  }
  return best;
}

}  // namespace loopwright::trace
