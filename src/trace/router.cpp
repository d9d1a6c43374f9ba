#include "trace/router.hpp"

#include <cmath>

namespace loopwright::trace {
namespace {

constexpr double mm = 1000;  // in a metre; costs by length are in millimetres

}  // namespace

void Router::run_after(StateId from, double most_m, std::span<const StateId> until) {
  seeds_.clear();
  for (const road::Turn& turn : roads_.turns_from(from))
    if (const StretchId to = roads_.stretch_of(turn.to); costs_.may_drive(to))
      seeds_.push_back({turn.to, costs_.along_ms(to)});
  reach::SweepLimits limits(std::llround(most_m * mm));
  limits.until = until;
  sweep_.run(seeds_, costs_, limits);
}

std::optional<double> Router::metres_to(StateId state) const {
  if (!sweep_.reached(state)) return std::nullopt;
  return static_cast<double>(sweep_.ms(state)) / mm;
}

}  // namespace loopwright::trace
