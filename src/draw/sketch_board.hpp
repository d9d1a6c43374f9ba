// What the parts of a briefing picture share while it is drawn.
#pragma once

#include <optional>

#include "draw/room_for.hpp"
#include "draw/scene.hpp"
#include "loopwright/say/words.hpp"

namespace loopwright::draw {

/// A place drawn to scale in a circle on the sheet.
struct Board {
  const road::Roads& roads;
  const Scene& scene;
  const say::Words& words;
  Picture& picture;
  RoomFor room;
  Spot middle;         ///< of the circle, on the sheet
  double shown_m = 0;  ///< radius of the circle on the ground
  double scale = 1;    ///< millimetres for a metre
  Line looks = {};     ///< spots of the wedges that say where to look

  [[nodiscard]] Line on_sheet(const Line& metres) const { return scaled(metres, scale, middle); }
  [[nodiscard]] Spot on_sheet(Spot metres) const { return middle + scale * metres; }
};

/// Road edges, the tone of the road, centre and lane lines.
void draw_roads(Board& board);
/// Box junctions and boxes for cyclists, where the map has them.
void draw_boxes(Board& board);
/// Metres out along a road, at most 40, to the box for cyclists that is mapped for who comes in by it.
std::optional<double> cycle_box_m(const road::Roads& roads, StretchId away);
/// Lines and crossings across the roads: give way, stop, lights, zebras, rails.
void draw_crosslines(Board& board);
/// Scale bar and north.
void draw_scale(Board& board);
/// The numbers of the exits, and the names on the arms.
void draw_arm_words(Board& board, const Line& way);
/// Where to look before going on.
void draw_looks(Board& board, const Line& way);

/// What is said below the picture; the first is the most important.
std::vector<std::string> sketch_words(const road::Roads& roads, const Scene& scene,
                                      const say::Words& words);

}  // namespace loopwright::draw
