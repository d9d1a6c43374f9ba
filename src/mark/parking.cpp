// Method, for each side (keys of the side itself before those of "both"):
// 1. The scheme of 2022: parking:<side>=lane … with parking:<side>:orientation. A side with
//    restriction no_parking, no_stopping or no_standing at all times holds no cars.
// 2. When the side has no such key, the older one: parking:lane:<side>=parallel …, with
//    parking:lane:<side>:<that value>=half_on_kerb …; parking:condition:<side>=no_parking ….
// What a side takes (ours, from the usual parallel bay of 2 m; street bays run 1.8 to 2.7 m):
// parallel 2.0, half on the kerb 1.0, diagonal 4.5, perpendicular 5.0; cars on the kerb, in bays
// beside the street or on a shoulder take nothing.
// Source: OSM wiki, pages Street parking, Key:parking:lane; both schemes are in use.
#include "parking.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "side_value.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

constexpr double parallel_m = 2.0, half_on_kerb_m = 1.0, diagonal_m = 4.5, perpendicular_m = 5.0;

struct Taken {
  double metres = 0;
  std::string tag;
  [[nodiscard]] bool free() const { return metres == 0 && !tag.empty(); }
};

double by_orientation(std::string_view orientation) {
  if (orientation == "diagonal") return diagonal_m;
  if (orientation == "perpendicular" || orientation == "orthogonal") return perpendicular_m;
  return parallel_m;  // parallel, inline, marked; and when nothing is said the usual form
}

double by_position(std::string_view position, std::string_view orientation) {
  constexpr std::array<std::string_view, 4> on_street{"lane", "yes", "on_street",
                                                      "painted_area_only"};
  if (position == "half_on_kerb") return half_on_kerb_m;
  return one_of(position, on_street) ? by_orientation(orientation) : 0;
}

bool is_ban(std::string_view value) {
  constexpr std::array<std::string_view, 3> bans{"no_parking", "no_stopping", "no_standing"};
  return one_of(value, bans);
}

Taken taken_today(const Tags& tags, const SideValue& parking, std::string_view side) {
  const std::string tag = tag_text(parking.key, parking.value);
  if (is_ban(value_of_side(tags, {"parking:", ":restriction"}, side).value)) return {0, tag};
  const auto orientation = value_of_side(tags, {"parking:", ":orientation"}, side).value;
  return {by_position(parking.value, orientation),
          parking.value == "separate" ? std::string() : tag};
}

Taken taken_before_2022(const Tags& tags, std::string_view side) {
  constexpr std::array<std::string_view, 7> kinds{
      "parallel", "inline", "diagonal", "perpendicular", "orthogonal", "marked", "yes"};
  const SideValue lane = value_of_side(tags, {"parking:lane:", ""}, side);
  const SideValue condition = value_of_side(tags, {"parking:condition:", ""}, side);
  if (is_ban(condition.value)) return {0, tag_text(condition.key, condition.value)};
  if (!one_of(lane.value, kinds)) return {0, lane.key};
  const std::string kind = ":" + std::string(lane.value);
  const auto position = value_of_side(tags, {"parking:lane:", kind}, side).value;
  return {by_position(position.empty() ? "on_street" : position, lane.value),
          tag_text(lane.key, lane.value)};
}

Taken taken_on(const Tags& tags, std::string_view side) {
  const SideValue parking = value_of_side(tags, {"parking:", ""}, side);
  return parking.key.empty() ? taken_before_2022(tags, side) : taken_today(tags, parking, side);
}

}  // namespace

Parked parked_on(const Tags& tags) {
  if (!has_key_with(tags, "parking:")) return {};
  const Taken left = taken_on(tags, "left"), right = taken_on(tags, "right");
  return {left.metres, right.metres, left.free(), right.free(),
          left.metres > 0    ? left.tag
          : right.metres > 0 ? right.tag
                             : ""};
}

}  // namespace loopwright::mark
