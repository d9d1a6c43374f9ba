// Method: the ends first, then rails, then pull-ups (the planned ones before those that are only
// there), then names of places; each only where there is room, but the ends.
#include "draw/map_marks.hpp"

#include <algorithm>
#include <array>

#include "draw/map_lines.hpp"
#include "draw/way_ink.hpp"
#include "draw/words_near.hpp"

namespace loopwright::draw {
namespace {

/// True when its word stands there.
bool draw_end(Picture& page, const MapOf& map, Taken& taken, double at, const std::string& word) {
  const Spot spot = map.way.spot_at(at);
  if (!holds(map.frame.map, spot)) return false;
  draw_bar(page, spot, map.way.direction_at(at));
  taken.add_disc(spot, 2.6);
  const Label label{{}, word, {9, true}};
  // Long, but one must find where to begin.
  constexpr double longest_line = 30;
  return write_near(page, taken, spot, label, 1.6) ||
         write_led(page, taken, spot, label, longest_line);
}

/// True when the start is named.
bool draw_ends(Picture& page, const MapOf& map, Taken& taken) {
  const bool one = length_of(map.way.line.front() - map.way.line.back()) < 4;
  const bool named = draw_end(page, map, taken, 0, map.start);
  if (!one) draw_end(page, map, taken, map.way.length(), std::string(map.words.at("map.end")));
  return named;
}

/// Two rails and their sleepers across the way.
void draw_rails(Picture& page, Spot spot, Spot direction) {
  constexpr double half = 3.4, gauge = 1.1, sleeper = 2.3;
  const Spot across = left_of(direction);
  page.add(Stroke{{spot - half * across, spot + half * across}, sleeper + 0.5, Ink::paper});
  for (double at = -half + 0.5; at < half; at += 1.15)
    page.add(Stroke{{spot + at * across - (sleeper / 2) * direction,
                     spot + at * across + (sleeper / 2) * direction},
                    0.35});
  for (const double side : {-0.5, 0.5})
    page.add(Stroke{{spot - half * across + side * gauge * direction,
                     spot + half * across + side * gauge * direction},
                    0.4});
}

void draw_crossings(Picture& page, const MapOf& map, Taken& taken) {
  std::vector<Spot> drawn;
  for (std::size_t i = 1; i + 1 < map.loop.stretches.size(); ++i) {
    const NodeId node = map.roads.to_node(map.loop.stretches[i].stretch);
    if ((map.roads.nodes[node.index()].flags & road::node_flag::level_crossing) == 0) continue;
    const double at = map.way.along[map.way.end_of(i)];
    const Spot spot = map.frame.spot_of(map.roads.nodes[node.index()].at);
    const auto near = [&](Spot other) { return length_of(other - spot) < 4; };
    if (!holds(map.frame.map, spot) || std::any_of(drawn.begin(), drawn.end(), near)) continue;
    drawn.push_back(spot);
    draw_rails(page, spot, map.way.direction_at(at));
    taken.add({spot, 6.8, 2.8, angle_deg(map.way.direction_at(at))});
  }
}

/// Where along the way a place to pull up is.
double pull_up_at(const MapOf& map, const wish::PullUp& place) {
  const auto& way = map.way;
  const double end = way.along[way.end_of(place.stretch)];
  const double begin = place.stretch == 0 ? 0 : way.along[way.end_of(place.stretch - 1)];
  const double metres = map.loop.stretches[place.stretch].metres;
  return metres > 0 ? begin + (end - begin) * std::min(place.at_m / metres, 1.0) : end;
}

void draw_pull_up(Picture& page, const MapOf& map, Taken& taken, const wish::PullUp& place) {
  const double at = pull_up_at(map, place);
  const Spot direction = map.way.direction_at(at);
  const Spot kerb = place.left ? left_of(direction) : -1.0 * left_of(direction);
  const Spot edge = map.way.spot_at(at) + (way_thick / 2) * kerb;
  const Type type{9, !place.purpose.empty()};
  const Extent extent = extent_of(Label{{}, "P", type});
  const Area letter{edge + (1.8 + std::max(extent.width, extent.height) / 2) * kerb, extent.width,
                    extent.height};
  if (!taken.free(letter)) return;
  taken.add(letter);
  taken.add_disc(edge + 0.8 * kerb, 0.8);
  page.add(Stroke{{edge, edge + 1.8 * kerb}, 0.8});
  page.add(label_in(letter, "P", type));
}

void draw_pull_ups(Picture& page, const MapOf& map, Taken& taken) {
  for (const bool planned : {true, false})
    for (const wish::PullUp& place : map.loop.pull_ups)
      if (place.purpose.empty() != planned) draw_pull_up(page, map, taken, place);
}

void draw_settlements(Picture& page, const MapOf& map, Taken& taken) {
  constexpr std::array<const char*, 5> whats{"place=city", "place=town", "place=suburb",
                                             "place=village", "place=hamlet"};
  for (const char* what : whats)
    for (const road::NamedSpot& spot : map.roads.named_spots) {
      if (map.roads.text(spot.what) != what) continue;
      const std::string name(map.roads.text(spot.name));
      write_near(page, taken, map.frame.spot_of(spot.at), {{}, name, {10, true, Ink::grey}}, 0);
    }
}

}  // namespace

bool draw_marks(Picture& page, const MapOf& map, Taken& taken) {
  const bool named = draw_ends(page, map, taken);
  draw_crossings(page, map, taken);
  draw_pull_ups(page, map, taken);
  draw_settlements(page, map, taken);
  return named;
}

}  // namespace loopwright::draw
