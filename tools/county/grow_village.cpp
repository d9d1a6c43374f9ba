// 1. The roads that pass through get the village's limit between its ends.
// 2. A green beside one of them near the middle, a church beyond it, an inn by the road.
// 3. Streets and lanes on both sides of the roads.
#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>
#include <utility>

#include "county/grow.hpp"
#include "county/grow_fill.hpp"
#include "county/grow_limit.hpp"
#include "county/grow_places.hpp"
#include "county/grow_tags.hpp"

namespace loopwright::county {
namespace {

constexpr double pi = std::numbers::pi;
constexpr double far_m = 4000;  // no road nearer than this: the plan is at fault
constexpr Figures village_figures{.along_gap_m = 78,
                                  .across_gap_m = 120,
                                  .follow = 0.1,
                                  .wobble = 0.13,
                                  .bow = 0.06,
                                  .sway = 0.8,
                                  .closed = 0.25,
                                  .cross = 0.15,
                                  .entry_m = 95,
                                  .longest_m = 420,
                                  .closed_m = 120,
                                  .loose = 0.5,
                                  .hole_m = 90};

/// A street of its own for a village that no road of the plan passes, from the nearest road on.
void draw_main_street(Drawing& county, const Settlement& village, Dice& dice) {
  const std::vector<Spot> reach = round_outline(village.middle, far_m, 0, dice);
  Ground ground(county, reach);
  for (double away = 300; away <= far_m; away *= 1.6) {
    const auto near = ground.nearest(village.middle, away, [](const Line& line) {
      return through(line) && joinable(line, 2, true);
    });
    if (!near) continue;
    const Spot from = ground.would_share(near->line, near->at);
    const Spot to = towards(from, village.middle, near->away_m + 0.7 * village.reach_m);
    const double aside = 25 * dice.share();
    const Spot side = on_circle(village.middle, aside, 2 * pi * dice.share());
    Trace way{.points = bend(std::vector{from, side, to}),
              .joints = {{near->line, from}},
              .closed = true};
    Line line{.kind = LineKind::road, .quarter = village.name};
    line.tags = village.tags;
    add_village_limit(line.tags);
    line.tags["highway"] = "unclassified";
    lay(ground, way, std::move(line));
    return;
  }
  county.troubles.push_back("village " + village.name + ": no road within 4 km; draw one to it");
}

/// The line of the through road nearest to the middle.
std::optional<std::size_t> main_road(const Ground& ground, const Settlement& village) {
  const auto near = ground.nearest(village.middle, village.reach_m,
                                   [](const Line& line) { return through(line); });
  if (!near) return std::nullopt;
  return near->line;
}

/// Four corners beside the road, where nothing stands yet.
std::optional<Area> green_beside(const Ground& ground, std::size_t road, Spot middle, Dice& dice) {
  const std::vector<Spot>& points = ground.line(road).points;
  const Foot start = nearest(points, middle);
  const double start_m =
      length_m(std::vector<Spot>(points.begin(),
                                 points.begin() + static_cast<std::ptrdiff_t>(start.segment) + 1)) +
      apart(points[start.segment], start.at);
  for (int attempt = 0; attempt < 24; ++attempt) {
    const double at_m = start_m + (attempt % 2 == 0 ? 12.0 : -12.0) * attempt;
    const double side = dice.below(2) == 0 ? 1 : -1;
    if (at_m < 60 || at_m > length_m(points) - 60) continue;
    if (!ground.clear(along(points, at_m, side * 42), 33)) continue;
    const std::vector<Spot> corners{
        along(points, at_m - 38, side * 11), along(points, at_m + 34, side * 11),
        along(points, at_m + 22, side * 60), along(points, at_m - 26, side * 68)};
    return Area{.corners = corners, .tags = {{"landuse", "village_green"}}};
  }
  return std::nullopt;
}

void put_landmarks(Ground& ground, const Settlement& village, Dice& dice) {
  const auto road = main_road(ground, village);
  if (!road) return;
  const std::optional<Area> green = green_beside(ground, *road, village.middle, dice);
  const Spot heart = green ? green->corners[2] : village.middle;
  if (green) ground.add(*green);
  std::vector<Lone>& lone = ground.county().lone;
  lone.push_back({on_circle(heart, 22, 2 * pi * dice.share()), church_tags(ground.county(), dice)});
  const std::vector<Spot>& points = ground.line(*road).points;
  const double middle_m = length_m(points) * (0.35 + 0.3 * dice.share());
  lone.push_back(
      {along(points, middle_m, dice.below(2) == 0 ? 12 : -12), inn_tags(ground.county(), dice)});
}

Tags lane_tags(bool closed, double length, Dice& dice) {
  static constexpr std::array widths{"4", "4.2", "4.5", "4.8", "5", "5.5"};
  Tags tags;
  if (dice.below(3) > 0) tags["width"] = widths[dice.below(widths.size())];
  if (!closed && length > 220 && dice.below(3) == 0) tags["sidewalk"] = "no";
  return tags;
}

}  // namespace

void grow_village(Drawing& county, const Settlement& village, Dice& dice) {
  const std::vector<Spot> outline = round_outline(village.middle, village.reach_m, 0.16, dice);
  Tags limits = village.tags;
  add_village_limit(limits);
  limit_within(county, outline, village.middle, 0.6 * village.reach_m, limits);
  const bool passed = std::any_of(county.lines.begin(), county.lines.end(), [&](const Line& line) {
    return through(line) && nearest(line.points, village.middle).off_m < 0.8 * village.reach_m;
  });
  if (!passed) draw_main_street(county, village, dice);
  Ground ground(county, outline);
  put_place(county, "village", village);
  put_landmarks(ground, village, dice);
  Patch patch{.name = village.name,
              .outline = outline,
              .figures = village_figures,
              .tags = village.tags,
              .street_tags = lane_tags};
  add_village_limit(patch.tags);
  fill(ground, patch, dice);
}

}  // namespace loopwright::county
