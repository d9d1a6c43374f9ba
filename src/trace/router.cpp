#include "trace/router.hpp"

#include <cmath>

namespace loopwright::trace {
namespace {

constexpr double mm = 1000;  // in a metre; costs by length are in millimetres

}  // namespace

Router::Router(const road::Roads& roads, double turn_round_m)
    : roads_(roads),
      copies_(roads),
      costs_(reach::Costs::by_length(roads, turn_round_m)),
      sweep_(roads) {}

void Router::run_after(StateId from, double most_m, std::span<const StateId> until) {
  seeds_.clear();
  for (const road::Turn& turn : roads_.turns_from(from))
    if (const StretchId to = roads_.stretch_of(turn.to); costs_.may_drive(to))
      seeds_.push_back({turn.to, costs_.along_ms(to) + costs_.wait_ms(turn.control)});
  reach::SweepLimits limits(std::llround(most_m * mm));
  limits.until = until;
  sweep_.run(seeds_, costs_, limits);
}

std::optional<double> Router::metres_to(StateId state) const {
  if (!sweep_.reached(state)) return std::nullopt;
  return static_cast<double>(sweep_.ms(state)) / mm;
}

}  // namespace loopwright::trace
