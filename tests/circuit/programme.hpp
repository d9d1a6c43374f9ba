// The best walk and the quickest one as a mixed integer programme, for CBC, a general solver.
//
// Formulation. Steps t = 1 … T, T more than any walk in the time has passes:
//   y[t,p]        pass p is the t-th; at most one a step, none after an empty step
//   z[t,x,e]      the t-th leg leads from exit x (or home) to entry e; the leg to the end is one of these,
//                 and its step is the last
//   B[t]          when the t-th begins; B[t+1] >= B[t] + inner of t + leg, more when the walk waits
//   n[g]          counts of group g towards `least`: n[g] <= passes of g, n[g] <= most_counted;
//                 the sum over a goal's groups >= its `least`
// and for the value:
//   k[t,g]        the t-th has worth for group g; only if it is a pass of g; so often as g has worths
//   w[g,i]        the i-th worth of g is had; the sum over i = the sum over t of k[t,g]
//   B[t] >= B[s] + spacing        when s < t both have worth for the goal
//   x[t,g]        all worths of g are had before t
//   b[s,t,h]      s has worth for goal h and t comes sooner than spacing after it
//   y[t,p] - k[t,g] <= x[t,g] + sum over s of b[s,t,h]: a pass that may have worth takes it
// Value: most of the sum of worth × w. Time: least B[T+1], without the second block.
#pragma once

#include <cstdint>
#include <optional>

#include "loopwright/circuit/problem.hpp"

namespace loopwright::test {

/// Most worth of a walk that meets every `least` within most_ms; none: there is no such walk.
std::optional<std::int64_t> best_value_by_programme(const circuit::Problem& problem, int steps);

/// Least time of a walk that meets every `least`, whatever most_ms; none: there is no such walk.
std::optional<std::int64_t> least_time_by_programme(const circuit::Problem& problem, int steps);

}  // namespace loopwright::test
