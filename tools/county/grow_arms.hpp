// The roads of a town that its quarters lie between.
#pragma once

#include <vector>

#include "county/grow.hpp"
#include "county/grow_trace.hpp"

namespace loopwright::county {

class Arms {
 public:
  /// Rules: all four outlive it; the town's tags say its limit.
  Arms(Ground& ground, const Settlement& town, const std::vector<Spot>& outline, Dice& dice)
      : ground_(ground), town_(town), outline_(outline), dice_(dice) {}

  /// A one-way loop round the middle, clockwise, that shares a Spot with each road it crosses.
  void draw_loop(double radius_m);
  /// Roads from the loop outwards, until there are five arms or no wide gap between two.
  void draw_roads_out();
  /// From arm to arm at about a distance from the middle.
  void draw_distributor(double radius_m);
  /// Directions in which roads cross a circle about the middle, ascending from 0 to 2 pi; those
  /// nearer to each other than 0.35 count once.
  [[nodiscard]] std::vector<double> angles(double radius_m) const;

 private:
  struct Crossing {
    double angle = 0;  ///< from the middle, 0 to 2 pi
    std::size_t line = 0;
    Spot at;
  };
  [[nodiscard]] std::vector<Crossing> crossings(double radius_m) const;
  [[nodiscard]] Tags road_tags(const char* highway) const;
  void draw_road_out(double angle);
  void draw_link(const Crossing& from, const Crossing& to, double radius_m);

  Ground& ground_;
  const Settlement& town_;
  const std::vector<Spot>& outline_;
  Dice& dice_;
  double loop_m_ = 0;
};

}  // namespace loopwright::county
