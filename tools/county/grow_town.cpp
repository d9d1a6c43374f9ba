// 1. The plan's roads get the town's limit between its edges.
// 2. A one-way loop round the middle, with lights where it crosses them.
// 3. Roads out, where there are wide gaps between those; then a distributor across all of them, about
//    half way out, with mini-roundabouts.
// 4. Quarters between: the middle, an inner belt that is mostly terraces, an outer one of estates.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>
#include <vector>

#include "county/grow.hpp"
#include "county/grow_arms.hpp"
#include "county/grow_limit.hpp"
#include "county/grow_places.hpp"
#include "county/grow_tags.hpp"

namespace loopwright::county {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double loop_share = 0.17;  // of the reach
constexpr double distributor_share = 0.56;
constexpr double inner_edge = 1.03;  // quarters reach a little over the roads round them

/// A sector of a ring about a place.
std::vector<Spot> sector(Spot middle, double from, double to, double inner_m, double outer_m) {
  std::vector<Spot> corners;
  const int steps = std::max(2, static_cast<int>((to - from) / 0.25));
  for (int i = 0; i <= steps; ++i)
    corners.push_back(on_circle(middle, outer_m, from + (to - from) * i / steps));
  for (int i = steps; i >= 0; --i)
    corners.push_back(on_circle(middle, inner_m, from + (to - from) * i / steps));
  return corners;
}

Style style_of(bool inner, std::size_t number, Dice& dice) {
  static constexpr std::array inners{Style::terraces, Style::avenues, Style::terraces};
  static constexpr std::array outers{Style::crescents, Style::avenues, Style::crescents};
  if (!inner && number == 1) return Style::works;
  return inner ? inners[dice.below(inners.size())] : outers[dice.below(outers.size())];
}

Tags with_zone(Tags tags) {
  tags["maxspeed"] = "20 mph";
  tags["maxspeed:type"] = "GB:zone20";
  tags["lit"] = "yes";
  return tags;
}

void grow_belt(Drawing& county, const Settlement& town, const std::vector<double>& angles,
               bool inner, Dice& dice) {
  const double from_m = (inner ? loop_share : distributor_share) * town.reach_m * inner_edge;
  const double to_m = (inner ? distributor_share : 1.0) * town.reach_m;
  for (std::size_t i = 0; i < angles.size(); ++i) {
    const double next = i + 1 < angles.size() ? angles[i + 1] : angles.front() + 2 * pi;
    const Style style = style_of(inner, i, dice);
    const bool zone = style == Style::terraces && dice.below(2) == 0;
    grow_quarter(county,
                 {.name = town.name + (inner ? " inner " : " outer ") + std::to_string(i + 1),
                  .style = style,
                  .outline = sector(town.middle, angles[i], next, from_m, to_m),
                  .tags = zone ? with_zone(town.tags) : town.tags},
                 dice);
  }
}

}  // namespace

void grow_town(Drawing& county, const Settlement& town, Dice& dice) {
  const std::vector<Spot> outline = round_outline(town.middle, town.reach_m, 0.08, dice);
  Settlement own = town;
  add_town_limit(own.tags);
  limit_within(county, outline, town.middle, 0.7 * town.reach_m, own.tags);
  put_place(county, "town", town);
  std::vector<double> angles;
  {
    Ground ground(county, outline);
    Arms arms(ground, own, outline, dice);
    arms.draw_loop(loop_share * town.reach_m);
    arms.draw_roads_out();
    arms.draw_distributor(distributor_share * town.reach_m);
    angles = arms.angles(0.8 * town.reach_m);
  }
  if (angles.size() < 2) angles = {0, 2 * pi / 3, 4 * pi / 3};
  const std::vector<Spot> heart =
      round_outline(town.middle, loop_share * town.reach_m * inner_edge, 0, dice);
  grow_quarter(county,
               {.name = town.name + " centre",
                .style = Style::centre,
                .outline = heart,
                .tags = with_zone(own.tags)},
               dice);
  grow_belt(county, own, angles, true, dice);
  grow_belt(county, own, angles, false, dice);
}

}  // namespace loopwright::county
