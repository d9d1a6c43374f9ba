#include "county/grow_places.hpp"

#include <algorithm>
#include <numbers>
#include <string>

#include "county/names.hpp"

namespace loopwright::county {
namespace {

bool stands(const Drawing& county, const std::string& name) {
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

}  // namespace loopwright::county
