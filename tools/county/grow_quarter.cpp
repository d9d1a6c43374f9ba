// A quarter is one patch; its style says how its streets run and what is tagged on them.
#include <string>
#include <utility>

#include "county/grow.hpp"
#include "county/grow_fill.hpp"
#include "county/grow_tags.hpp"

namespace loopwright::county {

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
  fill(ground, patch, dice);
}

}  // namespace loopwright::county
