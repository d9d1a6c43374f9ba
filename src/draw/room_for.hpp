// Finds room for words on a drawing: never on other words, never outside, off the roads where it can be.
#pragma once

#include <span>
#include <vector>

#include "draw/lines.hpp"

namespace loopwright::draw {

class RoomFor {
 public:
  /// Words stay inside this.
  explicit RoomFor(Box frame) : frame_(frame) {}

  /// Nothing may be put here.
  void keep_free(Box box) { taken_.push_back(box); }
  /// Better not here: a line of that width.
  void keep_off(const Line& line, double width);

  /// Puts the label with its middle at, or near, one of these spots, the first being the best liked;
  /// false when there is no room at any.
  bool put(Picture& picture, Label label, std::span<const Spot> middles);

 private:
  struct Dot {
    Spot at;
    double radius = 0;
  };
  /// The box moved into the frame, as far as it fits.
  [[nodiscard]] Box inside(Box box) const;
  [[nodiscard]] bool is_free(Box box) const;
  [[nodiscard]] double covered(Box box) const;

  Box frame_;
  std::vector<Box> taken_;
  std::vector<Dot> dots_;
};

}  // namespace loopwright::draw
