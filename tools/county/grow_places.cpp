#include "county/grow_places.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>
#include <utility>

#include "county/names.hpp"

namespace loopwright::county {
namespace {

bool stands(const Drawing& county, const std::string& name) {
  const bool on_area = std::any_of(county.areas.begin(), county.areas.end(), [&](const Area& area) {
    const auto tag = area.tags.find("name");
    return tag != area.tags.end() && tag->second == name;
  });
  if (on_area) return true;
  return std::any_of(county.lone.begin(), county.lone.end(), [&](const Lone& lone) {
    const auto tag = lone.tags.find("name");
    return tag != lone.tags.end() && tag->second == name;
  });
}

/// A name of a list that nothing bears yet; the one that was drawn when all are taken.
std::string unused(const Drawing& county, std::span<const std::string_view> names,
                   std::string_view ending, Dice& dice) {
  const std::size_t first = dice.below(names.size());
  for (std::size_t i = 0; i < names.size(); ++i) {
    std::string name(names[(first + i) % names.size()]);
    name += ending;
    if (!stands(county, name)) return name;
  }
  return std::string(names[first]) + std::string(ending);
}

Area rectangle(Spot foot, double heading, double from_m, double deep_m, double wide_m) {
  const auto place = [&](double ahead, double left) {
    return spot(foot.x() + ahead * std::cos(heading) - left * std::sin(heading),
                foot.y() + ahead * std::sin(heading) + left * std::cos(heading));
  };
  return {.corners = {place(from_m, -wide_m / 2), place(from_m + deep_m, -wide_m / 2),
                      place(from_m + deep_m, wide_m / 2), place(from_m, wide_m / 2)}};
}

/// Whether nothing crosses a rectangle or lies in it.
bool free_ground(const Ground& ground, const std::vector<Spot>& corners) {
  for (std::size_t i = 0; i < corners.size(); ++i)
    if (ground.first_hit(corners[i], corners[(i + 1) % corners.size()])) return false;
  const Spot middle = towards(corners[0], corners[2], apart(corners[0], corners[2]) / 2);
  for (const Hit& hit : ground.around(middle, apart(corners[0], corners[2]) / 2))
    if (inside(corners, hit.at)) return false;
  return !ground.in_area(middle);
}

}  // namespace

std::vector<Spot> round_outline(Spot middle, double radius_m, double uneven, Dice& dice) {
  constexpr int corners = 18;
  std::vector<Spot> outline;
  for (int i = 0; i < corners; ++i) {
    const double radius = radius_m * (1 + uneven * (2 * dice.share() - 1));
    outline.push_back(on_circle(middle, radius, 2 * std::numbers::pi * i / corners));
  }
  return outline;
}

void put_place(Drawing& county, const char* kind, const Settlement& settlement) {
  if (stands(county, settlement.name)) return;
  county.lone.push_back({settlement.middle, {{"place", kind}, {"name", settlement.name}}});
}

Tags church_tags(const Drawing& county, Dice& dice) {
  return {{"amenity", "place_of_worship"},
          {"religion", "christian"},
          {"name", unused(county, saint_names(), " Church", dice)}};
}

Tags inn_tags(const Drawing& county, Dice& dice) {
  return {{"amenity", "pub"}, {"name", unused(county, inn_names(), "", dice)}};
}

bool put_school(Ground& ground, const std::vector<Spot>& outline, Dice& dice) {
  constexpr double fence_m = 9;  // from the middle of the road
  constexpr double wide_m = 100;
  constexpr double deep_m = 80;
  const std::size_t lines = ground.county().lines.size();
  for (int attempt = 0; attempt < 400; ++attempt) {
    const Line& line = ground.line(dice.below(lines));
    if (line.kind != LineKind::road || rank(line) < 1 || rank(line) > 3 || line.layer != 0)
      continue;
    const double size = length_m(line.points);
    if (size < 80 || !inside(outline, line.points[line.points.size() / 2])) continue;
    const double at_m = 20 + (size - 40) * dice.share();
    const double side = dice.below(2) == 0 ? 1 : -1;
    const Spot foot = along(line.points, at_m);
    const Spot middle = along(line.points, at_m, side * (fence_m + deep_m / 2));
    if (!inside(outline, middle)) continue;
    Area grounds = rectangle(foot, angle_of(foot, middle), fence_m, deep_m, wide_m);
    if (!free_ground(ground, grounds.corners)) continue;
    grounds.tags = {{"amenity", "school"},
                    {"name", unused(ground.county(), school_names(), " School", dice)}};
    ground.add(std::move(grounds));
    return true;
  }
  return false;
}

}  // namespace loopwright::county
