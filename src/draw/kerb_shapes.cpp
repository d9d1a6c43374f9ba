// Pulling up and setting off: a way along a road that swings between its lane and a kerb.
#include "draw/shape.hpp"

namespace loopwright::draw {
namespace {

using namespace shape_mm;

constexpr double kerb_off = 3;

/// A way along a road that swings between its lane and a kerb, and that kerb.
Shape kerb_shape(double lane, double kerb, bool towards_it) {
  Shape shape;
  shape.roads.push_back({{{0, reach}, {0, -reach}}, 6});
  const double low = towards_it ? lane : kerb, high = towards_it ? kerb : lane;
  const double end = towards_it ? -6 : -reach;
  shape.way = {{low, towards_it ? reach : 7}, {low, 3}};
  append(shape.way, curve({low, 3}, {0, -1}, {high, -3}, {0, -1}));
  append(shape.way, {{high, -3}, {high, end}});
  const double edge = kerb + (kerb < 0 ? -1.6 : 1.6), mark = towards_it ? -5 : 5;
  shape.under.add(
      Stroke{{{edge, mark - 4}, {edge, mark + 4}}, 0.5, Ink::black, Cap::butt, {1.2, 0.8}});
  return shape;
}

/// Left is -1.
double sign_of(Side side) {
  return side == Side::left ? -1 : 1;
}

}  // namespace

Picture pull_up_shape(Side driving, Side kerb, Size size) {
  const double side = sign_of(kerb);
  Shape shape = kerb_shape(sign_of(driving), side * kerb_off, true);
  shape.under.add(Label{{side * 7.2, -7}, "P", {10, true, Ink::black, Align::middle}});
  return drawn(shape, size);
}

Picture set_off_shape(Side driving, Size size) {
  const double side = sign_of(driving);
  return drawn(kerb_shape(side, side * kerb_off, false), size);
}

}  // namespace loopwright::draw
