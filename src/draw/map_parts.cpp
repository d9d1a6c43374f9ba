// Method: of the windows round each spot the one that holds most spots is taken, then made as small as
// they allow, so that its scale is large; the rest are looked at again.
#include "draw/map_parts.hpp"

#include <algorithm>

#include "draw/map_lines.hpp"

namespace loopwright::draw {
namespace {

// Ours: a part is at least this much larger, at most that; so many pages; room round its spots.
constexpr double least_larger = 2.2, most_larger = 4;
constexpr std::size_t most_parts = 3;
constexpr double room = 8;

Box window_round(Spot middle, const MapFrame& whole, double larger) {
  const double width = whole.map.width / larger, height = whole.map.height / larger;
  return {middle.x - width / 2, middle.y - height / 2, width, height};
}

std::vector<Spot> spots_in(const Box& box, const std::vector<Spot>& spots) {
  std::vector<Spot> inside;
  for (const Spot spot : spots)
    if (holds(box, spot)) inside.push_back(spot);
  return inside;
}

/// The spots of the window that holds most of them, less a margin.
std::vector<Spot> most_together(const MapFrame& whole, const std::vector<Spot>& spots) {
  std::vector<Spot> most;
  for (const Spot spot : spots) {
    Box window = window_round(spot, whole, least_larger);
    window = {window.x + room, window.y + room, window.width - 2 * room, window.height - 2 * room};
    std::vector<Spot> inside = spots_in(window, spots);
    if (inside.size() > most.size()) most = std::move(inside);
  }
  return most;
}

Box bounds_of(const std::vector<Spot>& spots) {
  double left = spots.front().x, right = left, top = spots.front().y, bottom = top;
  for (const Spot spot : spots) {
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
  part.middle = point_from_degrees(
      whole.middle.lat() - (middle.y - whole.at.y) / whole.mm_per_m / whole.m_per_lat,
      whole.middle.lon() + (middle.x - whole.at.x) / whole.mm_per_m / whole.m_per_lon);
  part.mm_per_m = whole.mm_per_m * larger;
  return part;
}

}  // namespace

std::vector<MapFrame> enlarged_parts(const MapFrame& whole, std::vector<Spot> spots) {
  std::vector<MapFrame> parts;
  while (!spots.empty() && parts.size() < most_parts) {
    const std::vector<Spot> together = most_together(whole, spots);
    parts.push_back(frame_on(bounds_of(together), whole));
    const Box shown = shown_by(parts.back(), whole);
    std::erase_if(spots, [&](Spot spot) { return holds(shown, spot); });
  }
  return parts;
}

Box shown_by(const MapFrame& part, const MapFrame& whole) {
  return window_round(whole.spot_of(part.middle), whole, part.mm_per_m / whole.mm_per_m);
}

}  // namespace loopwright::draw
