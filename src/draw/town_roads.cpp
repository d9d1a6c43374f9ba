// Method: the pieces near the middle whose simplified line touches the map, the small roads first, so
// that the great ones lie over them. Pieces of one rank that follow each other are drawn as one line,
// which takes half the points.
#include "draw/town_roads.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "draw/map_lines.hpp"

namespace loopwright::draw {
namespace {

constexpr double simple_off = 0.12;
// Millimetres by road::rank: motorway, trunk, primary, secondary, tertiary, unclassified and
// residential, living street, service.
constexpr std::array<double, 8> widths{2.6, 2.4, 2.2, 1.9, 1.5, 0.9, 0.9, 0.5};
// At less than this scale (1:50,000) service roads are left out, and small ones are thinner.
constexpr double small_scale = 0.02;

double width_of(const road::Piece& piece, const MapFrame& frame) {
  const auto rank = static_cast<std::size_t>(std::clamp(road::rank(piece.road_class), 0, 7));
  return rank >= 5 && frame.mm_per_m < small_scale ? widths.at(rank) * 0.7 : widths.at(rank);
}

bool shown(const road::Piece& piece, const MapFrame& frame) {
  if ((piece.flags & road::piece_flag::minor_service) != 0) return false;
  return road::rank(piece.road_class) < 7 || frame.mm_per_m >= small_scale;
}

/// In metres from the middle to the furthest corner.
double reach_of(const MapFrame& frame) {
  return std::hypot(frame.map.width, frame.map.height) / 2 / frame.mm_per_m;
}

struct Shown {
  const MapFrame& frame;
  const std::vector<Ring>& rings;
};

void draw_road(Picture& map, const Line& line, double width, const Shown& shown) {
  for (const Line& part : clipped(line, within(shown.frame.map, widths.front() / 2)))
    for (const Line& visible : outside(part, shown.rings))
      map.add(Stroke{visible, width, Ink::pale, Cap::round});
}

}  // namespace

std::vector<TownRoad> roads_of(const road::Roads& roads, const MapFrame& frame) {
  std::vector<TownRoad> town;
  for (const PieceId id : road::pieces_near(roads, frame.middle, reach_of(frame))) {
    if (!shown(roads.pieces[id.index()], frame)) continue;
    Line line;
    for (const Point at : roads.shape_of(id)) line.push_back(frame.spot_of(at));
    line = simplified(line, simple_off);
    if (!clipped(line, frame.map).empty()) town.push_back({id, std::move(line)});
  }
  return town;
}

void draw_roads(Picture& map, const road::Roads& roads, const std::vector<TownRoad>& town,
                const MapFrame& frame, const std::vector<Ring>& rings) {
  std::vector<const TownRoad*> order;
  for (const TownRoad& one : town) order.push_back(&one);
  const auto rank = [&](const TownRoad* one) {
    return road::rank(roads.pieces[one->piece.index()].road_class);
  };
  std::stable_sort(order.begin(), order.end(),
                   [&](const TownRoad* a, const TownRoad* b) { return rank(a) > rank(b); });
  for (auto first = order.begin(); first != order.end();) {
    const auto last = std::find_if(first, order.end(),
                                   [&](const TownRoad* one) { return rank(one) != rank(*first); });
    std::vector<Line> lines;
    for (; first != last; ++first) lines.push_back((*first)->line);
    const double width = width_of(roads.pieces[(*(last - 1))->piece.index()], frame);
    for (const Line& line : joined(std::move(lines)))
      draw_road(map, simplified(line, simple_off), width, {frame, rings});
  }
  for (const Ring& ring : rings)
    map.add(Disc{ring.middle, ring.radius, {}, ring.mini ? 0.8 : 1.3, Ink::pale});
}

}  // namespace loopwright::draw
