// Method: from the last number to the first, so that each may move back before the one that follows it;
// for each the place nearest to its junction at which the opening touches no other. One that would hide
// another part of the way, or lies before an earlier junction, is taken when there is none better.
#include "draw/numbers.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "draw/map_lines.hpp"
#include "draw/way_ink.hpp"

namespace loopwright::draw {
namespace {

constexpr double step_mm = 0.7, before_junction = 3.2, furthest = 40, other_leg = 4;

/// How much of the way, elsewhere than here, an opening would hide.
int hides(const Way& way, double at, double opening) {
  const Spot middle = way.spot_at(at);
  int points = 0;
  for (std::size_t i = 0; i < way.line.size(); ++i)
    if (near(way.line[i], middle, opening + way_thick / 2) &&
        std::abs(way.along[i] - at) > 2 * opening + 2)
      ++points;
  return points;
}

/// Lengths of the way a number may stand between.
struct Reach {
  double from = 0;  ///< the junction before; nearer to the start only when there is no room here
  double to = 0;
};

std::optional<double> place_for(const Way& way, Reach reach, double opening, const Taken& taken) {
  std::optional<double> best;
  double least = 1e9;
  // Further back than the least cost none is better.
  for (double back = 0; back < std::min(furthest, least) && reach.to - back >= 0; back += step_mm) {
    const double at = reach.to - back;
    if (!taken.free_disc(way.spot_at(at), opening + 0.3)) continue;
    const double cost = back + 1.5 * hides(way, at, opening) + (at < reach.from ? other_leg : 0);
    if (cost < least) least = cost, best = at;
  }
  return best;
}

}  // namespace

SetNumbers set_numbers(const Way& way, const std::vector<Numbered>& numbers, const Box& map,
                       Taken& taken) {
  SetNumbers all;
  double next = way.length();
  const auto junction = [&](std::size_t row) {
    return way.along[way.end_of(numbers[row].stretch)];
  };
  for (std::size_t i = numbers.size(); i-- > 0;) {
    if (!holds(map, way.spot_at(junction(i)))) continue;
    const double before = i > 0 ? junction(i - 1) : 0;
    const double to = std::max(0.0, std::min(junction(i) - before_junction, next));
    const double opening = opening_for(numbers[i].text);
    const auto at = place_for(way, {before, to}, opening, taken);
    if (!at) {
      all.left_out.push_back(numbers[i]);
      continue;
    }
    all.set.push_back({numbers[i], *at, *at < before});
    taken.add_disc(way.spot_at(*at), opening + 0.3);
    next = *at;
  }
  return all;
}

}  // namespace loopwright::draw
