// The bar stands in the lower left corner of the drawing, the line to the north in the upper right.
#include "draw/sketch_board.hpp"

namespace loopwright::draw {
namespace {

/// About a quarter of the circle, in a round number of metres.
int bar_m(const Board& board) {
  for (const int metres : {50, 20, 10})
    if (metres <= board.shown_m * 0.6) return metres;
  return 5;
}

}  // namespace

void draw_scale(Board& board) {
  const double radius = board.shown_m * board.scale;
  const int metres = bar_m(board);
  const Spot left = board.middle + Spot{-radius, radius - 0.5};
  const Spot right = left + Spot{metres * board.scale, 0};
  board.picture.add(Stroke{{left - Spot{0, 1}, left, right, right - Spot{0, 1}}, 0.35});
  Label label{
      left - Spot{0, 4.8}, board.words.count("map.metres", static_cast<std::size_t>(metres)), {9}};
  label.at.x += 0.6;
  board.picture.add(label);
  const Extent extent = extent_of(label);
  board.room.keep_free({left.x, label.at.y, std::max(extent.width + 1, right.x - left.x), 5.2});

  const Spot north = towards_deg(board.scene.frame.angle_of_bearing(0));
  const Spot at = board.middle + Spot{radius - 5, 6 - radius};
  board.picture.add(Stroke{{at - 4.0 * north, at + 1.6 * north}, 0.35});
  Label letter{at + 4.0 * north,
               std::string(board.words.at("map.north")),
               {9, true, Ink::black, Align::middle}};
  letter.at.y -= extent_of(letter).height / 2;
  board.picture.add(letter);
  board.room.keep_free({at.x - 6, at.y - 6, 12, 12});
}

}  // namespace loopwright::draw
