// Method: of the windows round each spot the one that holds most spots is taken, then made as small as
// they allow, so that its scale is large.
#include "draw/map_parts.hpp"

#include <algorithm>
#include <cmath>

#include "draw/map_lines.hpp"
#include "loopwright/base/point_between.hpp"

namespace loopwright::draw {
namespace {

// Ours: a part is at least this much larger, at most that; room round its spots.
constexpr double least_larger = 2.2, most_larger = 5;
constexpr double room = 8, worth_a_page = 3;

Box window_round(Spot middle, const MapFrame& whole, double larger) {
  const double width = whole.map.width / larger, height = whole.map.height / larger;
  return {middle.x - width / 2, middle.y - height / 2, width, height};
}

std::vector<Crowded> spots_in(const Box& box, const std::vector<Crowded>& spots) {
  std::vector<Crowded> inside;
  for (const Crowded& one : spots)
    if (holds(box, one.spot)) inside.push_back(one);
  return inside;
}

double worth_of(const std::vector<Crowded>& spots) {
  double worth = 0;
  for (const Crowded& one : spots) worth += one.worth;
  return worth;
}

/// The spots of the window, less a margin, that is worth most.
std::vector<Crowded> most_together(const MapFrame& whole, const std::vector<Crowded>& spots) {
  std::vector<Crowded> most;
  for (const Crowded& one : spots) {
    const Box window = within(window_round(one.spot, whole, least_larger), room);
    std::vector<Crowded> inside = spots_in(window, spots);
    if (worth_of(inside) > worth_of(most)) most = std::move(inside);
  }
  return most;
}

Box bounds_of(const std::vector<Crowded>& spots) {
  const Spot first = spots.front().spot;
  double left = first.x, right = left, top = first.y, bottom = top;
  for (const auto& [spot, worth] : spots) {
    left = std::min(left, spot.x), right = std::max(right, spot.x);
    top = std::min(top, spot.y), bottom = std::max(bottom, spot.y);
  }
  return {left - room, top - room, right - left + 2 * room, bottom - top + 2 * room};
}

MapFrame frame_on(const Box& box, const MapFrame& whole) {
  const double larger = std::clamp(
      std::min(whole.map.width / box.width, whole.map.height / box.height), 1.0, most_larger);
  const Spot middle{box.x + box.width / 2, box.y + box.height / 2};
  MapFrame part = whole;
  const double lat =
      whole.middle.lat() - (middle.y - whole.at.y) / whole.mm_per_m / whole.m_per_lat;
  const double lon =
      whole.middle.lon() + (middle.x - whole.at.x) / whole.mm_per_m / whole.m_per_lon;
  part.middle = point_of_turn(std::llround(lat * 1e7), std::llround(lon * 1e7));
  part.mm_per_m = whole.mm_per_m * larger;
  return part;
}

}  // namespace

std::optional<Part> best_part(const MapFrame& sheet, const std::vector<Crowded>& spots) {
  const std::vector<Crowded> together = most_together(sheet, spots);
  const double worth = worth_of(together);
  if (worth < worth_a_page) return std::nullopt;
  return Part{frame_on(bounds_of(together), sheet), worth};
}

Box shown_by(const MapFrame& part, const MapFrame& whole) {
  return window_round(whole.spot_of(part.middle), whole, part.mm_per_m / whole.mm_per_m);
}

}  // namespace loopwright::draw
