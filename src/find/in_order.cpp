// Method: one, two, then four points on each way in, and one on the way out; the fewest that pass every chance are kept,
// else those that pass the most.
#include "loopwright/find/in_order.hpp"

#include <cmath>

#include "loopwright/find/find.hpp"

namespace loopwright::find {
namespace {

constexpr int most_points_in = 4;

Point as_typed(Point at) {
  constexpr double decimals = 1e5;
  return point_from_degrees(std::round(at.lat() * decimals) / decimals,
                            std::round(at.lon() * decimals) / decimals);
}

/// A share of the way along a road as it is driven.
Point point_on(const road::Roads& roads, StretchId at, double share) {
  const double along = at.against() ? 1 - share : share;
  return as_typed(point_along(roads.shape_of(at.piece()), roads.piece(at).length_m * along));
}

std::vector<Point> points_through(const road::Roads& roads, std::span<const ChanceId> chances,
                                  int points_in) {
  std::vector<Point> points;
  for (const ChanceId row : chances) {
    const road::Chance& chance = roads.chances[row.index()];
    for (int n = 1; n <= points_in; ++n)
      points.push_back(point_on(roads, chance.entry, static_cast<double>(n) / (points_in + 1)));
    if (chance.exit != chance.entry) points.push_back(point_on(roads, chance.exit, 0.5));
  }
  return points;
}

bool is_pass_of(const road::Chance& chance, const wish::Pass& pass) {
  return road::meets(pass.kind, chance.kind) && pass.movement == chance.movement &&
         pass.source == chance.source;
}

/// How many of the chances the drive passes in their order, each behind the one before.
std::size_t passed_in_order(const road::Roads& roads, std::span<const ChanceId> chances,
                            const wish::Loop& loop) {
  std::size_t passed = 0, from = 0;
  for (const ChanceId row : chances) {
    std::size_t at = from;
    while (at < loop.passes.size() && !is_pass_of(roads.chances[row.index()], loop.passes[at]))
      ++at;
    if (at == loop.passes.size()) continue;
    ++passed;
    from = at + 1;
  }
  return passed;
}

}  // namespace

InOrder drive_in_order(const road::Roads& roads, const wish::Wish& asked,
                       std::span<const ChanceId> chances, const hours::Setting& setting) {
  InOrder best;
  for (int points_in = 1; points_in <= most_points_in; points_in *= 2) {
    wish::Wish wish = asked;
    wish.minutes.reset();
    wish.through = points_through(roads, chances, points_in);
    const FindResult found = route_through(roads, wish, setting);
    if (found.loops.empty()) continue;
    const wish::Loop& loop = found.loops.front();
    const std::size_t passed = passed_in_order(roads, chances, loop);
    if (best.through.empty() || passed > best.passed)
      best = {wish.through, passed, loop.seconds.likely / 60};
    if (passed == chances.size()) break;
  }
  return best;
}

}  // namespace loopwright::find
