// 1. Lanes of buses are no car's, where the map says which they are.
// 2. On a road up to a junction those are looked for whose arrows lead the way taken (the OSM wiki's
//    Key:turn, from left to right); without any, and on a ring, all lanes count.
// 3. Of these the nearest to the near kerb is taken, or the farthest to turn to the far side.
#include <algorithm>
#include <vector>

#include "draw/carriageway.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::draw {
namespace {

using road::Movement;

bool points(std::string_view arrow, Movement movement) {
  if (movement == Movement::ahead) return arrow == "through";
  return arrow.ends_with(movement == Movement::left ? "left" : "right") &&
         !arrow.starts_with("merge_to");
}

bool leads(std::string_view arrows, Movement movement) {
  const auto each = split(arrows, ';');
  return std::any_of(each.begin(), each.end(),
                     [&](std::string_view arrow) { return points(arrow, movement); });
}

/// Lanes of cars, from left to right.
std::vector<int> car_lanes(const road::Roads& roads, StretchId stretch, int all) {
  const auto ours = stretch.against() ? road::LaneDirection::against : road::LaneDirection::along;
  std::vector<int> lanes;
  for (int lane = 0; lane < all; ++lane) {
    const auto buses = roads.bus_lanes_of(stretch.piece());
    const bool bus = std::any_of(buses.begin(), buses.end(), [&](const road::BusLane& row) {
      return row.direction == ours && row.lane == lane + 1 && row.lanes == all;
    });
    if (!bus) lanes.push_back(lane);
  }
  return lanes.empty() ? std::vector<int>{0} : lanes;
}

std::vector<int> by_arrows(const road::Roads& roads, StretchId stretch,
                           const std::vector<int>& lanes, Movement movement) {
  std::vector<int> fit;
  const auto marks = roads.lane_marks_of(stretch);
  if (marks.empty() || roads.text(marks.front().arrows).empty()) return fit;
  const auto arrows = split(roads.text(marks.front().arrows), '|');
  for (const int lane : lanes) {
    const auto at = static_cast<std::size_t>(lane);
    if (at < arrows.size() && leads(arrows[at], movement)) fit.push_back(lane);
  }
  return fit;
}

}  // namespace

LaneChoice lane_choice(const road::Roads& roads, StretchId stretch, Movement movement) {
  const bool left_driving = roads.info().region.side == Side::left;
  const Movement far_side = left_driving ? Movement::right : Movement::left;
  if (movement == Movement::round) movement = far_side;
  const bool ring = (roads.piece(stretch).flags & road::piece_flag::ring) != 0;
  const int all = carriageway_of(roads, stretch).lanes;
  const std::vector<int> lanes = car_lanes(roads, stretch, all);
  LaneChoice choice;
  choice.lanes = static_cast<int>(lanes.size());
  std::vector<int> fit;
  if (!ring) fit = by_arrows(roads, stretch, lanes, movement);
  choice.by_arrows = !fit.empty();
  if (fit.empty()) fit = lanes;
  const bool leftmost = (movement == far_side) != left_driving;
  const int lane = leftmost ? fit.front() : fit.back();
  choice.from_left = static_cast<int>(std::find(lanes.begin(), lanes.end(), lane) - lanes.begin());
  choice.from_near = left_driving ? lane : all - 1 - lane;
  return choice;
}

}  // namespace loopwright::draw
