// A quarter is one patch; its style says how its streets run and what is tagged on them.
#include <algorithm>
#include <string>
#include <utility>

#include "county/faces.hpp"
#include "county/grow.hpp"
#include "county/grow_fill.hpp"
#include "county/grow_tags.hpp"

namespace loopwright::county {
namespace {

constexpr double school_area_m2 = 200'000;  // of a quarter with a school of its own

/// Whether its streets can start from a road that isn't of the national limit.
bool passed_by_slow_road(const Ground& ground, const Patch& patch) {
  std::vector<Spot> ring = patch.outline;
  ring.push_back(ring.front());
  for (double at_m = 0; at_m < length_m(ring); at_m += 60)
    if (ground.nearest(along(ring, at_m), 45,
                       [&](const Line& line) { return joinable(line, patch.rank, false); }))
      return true;
  return false;
}

}  // namespace

void grow_quarter(Drawing& county, const Quarter& quarter, Dice& dice) {
  Ground ground(county, quarter.outline);
  Patch patch{.name = quarter.name,
              .outline = quarter.outline,
              .figures = figures_of(quarter.style),
              .tags = quarter.tags};
  patch.rank = quarter.style == Style::works ? 2 : 1;
  add_town_limit(patch.tags);
  patch.street_tags = [&](bool closed, double length, Dice& chance) {
    return street_tags(quarter.style, closed, length, chance);
  };
  const bool homes = quarter.style == Style::crescents || quarter.style == Style::avenues;
  patch.schools = homes && area_m2(quarter.outline) > school_area_m2 ? 1 : 0;
  patch.fast = !passed_by_slow_road(ground, patch);
  if (patch.fast) patch.figures.entry_m = std::max(patch.figures.entry_m, 300.0);
  fill(ground, patch, dice);
}

}  // namespace loopwright::county
