#include "trace/telling.hpp"

#include <algorithm>
#include <cmath>

#include "loopwright/base/point_between.hpp"

namespace loopwright::trace {
namespace {

/// Newson and Krumm pass over fixes nearer than two sigmas; means scatter less than fixes. Ours.
constexpr double keep_sigmas = 1.5;
/// Fixes of so many seconds are one mean, of more when they scatter more. Ours.
constexpr double least_mean_s = 4.5, mean_s_per_m = 0.3;

Telling mean_of(std::span<const Fix> fixes, std::size_t row) {
  const Fix& first = fixes.front();
  double lat = 0, lon = 0, time = 0;
  for (const Fix& fix : fixes) {
    lat += static_cast<double>(std::int64_t{fix.at.lat_e7} - first.at.lat_e7);
    lon += static_cast<double>(lon_difference_e7(first.at, fix.at));
    time += fix.unix_s - first.unix_s;
  }
  const auto count = static_cast<double>(fixes.size());
  return {point_of_turn(first.at.lat_e7 + std::llround(lat / count),
                        first.at.lon_e7 + std::llround(lon / count)),
          first.unix_s + time / count, 0, row};
}

}  // namespace

std::vector<Telling> telling_in(std::span<const Fix> fixes, const Noise& noise) {
  std::vector<Telling> telling;
  const double mean_s = std::max(least_mean_s, mean_s_per_m * noise.sigma_m);
  double silent_s = 0;
  for (std::size_t row = 0; row < fixes.size();) {
    std::size_t end = row + 1;
    while (end < fixes.size() && fixes[end].unix_s - fixes[row].unix_s < mean_s) ++end;
    for (std::size_t k = std::max<std::size_t>(row, 1); k < end; ++k)
      silent_s = std::max(silent_s, fixes[k].unix_s - fixes[k - 1].unix_s);
    Telling mean = mean_of(fixes.subspan(row, end - row), row);
    if (telling.empty() || end == fixes.size() ||
        distance_m(telling.back().at, mean.at) >= keep_sigmas * noise.sigma_m) {
      mean.silent_s = silent_s;
      telling.push_back(mean);
      silent_s = 0;
    }
    row = end;
  }
  return telling;
}

}  // namespace loopwright::trace
