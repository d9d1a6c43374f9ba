// Why so many parts of chance: on a real map few streets carry a width, fewer the cars parked there,
// and both tagging schemes stand side by side.
#include "county/grow_tags.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace loopwright::county {
namespace {

bool one_in(Dice& dice, std::size_t n) {
  return dice.below(n) == 0;
}

template <std::size_t N>
const char* pick(Dice& dice, const std::array<const char*, N>& words) {
  return words[dice.below(N)];
}

void limit(Tags& tags, const char* speed, const char* type, const char* lit) {
  if (!tags.contains("maxspeed") && !tags.contains("maxspeed:type")) {
    tags["maxspeed"] = speed;
    tags["maxspeed:type"] = type;
  }
  tags.emplace("lit", lit);
}

/// Cars at both kerbs of a terraced street, in the current scheme or the older one.
Tags parked_terrace(Dice& dice) {
  Tags tags{{"width", pick<4>(dice, {"5.8", "6", "6", "6.2"})}};
  if (one_in(dice, 4)) {
    tags["parking:lane:both"] = "parallel";
  } else {
    tags["parking:both"] = "lane";
    tags["parking:both:orientation"] = "parallel";
  }
  return tags;
}

Tags parked_one_side(Dice& dice) {
  Tags tags{{"width", pick<3>(dice, {"6.5", "7", "7.3"})}};
  const std::string side = one_in(dice, 2) ? "left" : "right";
  if (one_in(dice, 3)) {
    tags["parking:lane:" + side] = "parallel";
  } else {
    tags["parking:" + side] = "lane";
    tags["parking:" + side + ":orientation"] = "parallel";
  }
  return tags;
}

}  // namespace

void add_town_limit(Tags& tags) {
  limit(tags, "30 mph", "GB:nsl_restricted", "yes");
}
void add_village_limit(Tags& tags) {
  limit(tags, "30 mph", "sign", "yes");
}
void add_national_limit(Tags& tags) {
  limit(tags, "60 mph", "GB:nsl_single", "no");
}

Tags street_tags(Style style, bool closed, double length_m, Dice& dice) {
  switch (style) {
    case Style::terraces:
      if (closed || one_in(dice, 4)) return {};
      return one_in(dice, 5) ? parked_one_side(dice) : parked_terrace(dice);
    case Style::crescents:
      if (closed) return one_in(dice, 5) ? Tags{{"width", "4.8"}} : Tags{};
      return one_in(dice, 3) ? Tags{{"width", pick<3>(dice, {"6", "6.5", "7"})}} : Tags{};
    case Style::avenues:
      if (!closed && length_m > 150 && one_in(dice, 6)) return parked_one_side(dice);
      return one_in(dice, 5) ? Tags{{"width", pick<3>(dice, {"5.5", "6", "7.3"})}} : Tags{};
    case Style::works:
      return {{"highway", "unclassified"}, {"width", pick<2>(dice, {"7.3", "8"})}};
    case Style::centre:
      return one_in(dice, 3) ? Tags{{"width", pick<3>(dice, {"4.2", "4.8", "5.5"})}} : Tags{};
  }
  return {};
}

}  // namespace loopwright::county
