// Junctions: rings, minis, and where two roads meet.
#include "draw/symbol_pen.hpp"

namespace loopwright::draw {
namespace {

using road::Kind;

void three_arms(SymbolPen& pen, Spot middle, double from, double to) {
  for (const double degrees : {0.0, 90.0, 270.0})
    pen.thick({middle + from * towards_deg(degrees), middle + to * towards_deg(degrees)});
}

void roundabout(SymbolPen& pen) {
  pen.thick({{5, 10}, {5, 8}});
  three_arms(pen, {5, 5}, 3, 5);
  pen.ring({5, 5}, 2.7, 1.2);
}

void mini_roundabout(SymbolPen& pen) {
  pen.road({{5, 0}, {5, 10}}, 4.4).road({{0, 5}, {10, 5}}, 4.4).block({2.5, 2.5, 5, 5}, Ink::paper);
  pen.ring({5, 5}, 1.3, 1);
}

void multi_lane_roundabout(SymbolPen& pen) {
  pen.thick({{5, 10}, {5, 8}});
  three_arms(pen, {5, 5}, 3, 5);
  pen.ring({5, 5}, 3.4, 0.8).ring({5, 5}, 1.7, 0.8);
}

void signal_roundabout(SymbolPen& pen) {
  pen.thick({{5, 10}, {5, 8}});
  three_arms(pen, {5, 5}, 4, 5);
  pen.ring({5, 5}, 3.9, 0.8).lamps({5, 5}, 5);
}

void double_mini(SymbolPen& pen) {
  pen.thick({{5, 10}, {5, 0}}).thick({{0, 2.6}, {5, 2.6}}).thick({{5, 7.4}, {10, 7.4}});
  pen.ring({5, 2.6}, 1.3, 0.9).ring({5, 7.4}, 1.3, 0.9);
}

void emerge(SymbolPen& pen) {
  pen.road({{0, 2.6}, {10, 2.6}}, 3.6);
  pen.dashed({{2.6, 5.4}, {7.4, 5.4}});
  pen.way({{5, 10}, {5, 2.6}, {1, 2.6}});
}

void turn_off(SymbolPen& pen) {
  pen.road({{7, 0}, {7, 10}}, 4.6);
  pen.block({4, 3.2, 1.4, 3.6}, Ink::paper);
  pen.thin({{0, 3.2}, {4.7, 3.2}}).thin({{0, 6.8}, {4.7, 6.8}});
  pen.way({{7, 10}, {7, 5}, {1, 5}});
}

void narrow_mouth(SymbolPen& pen) {
  pen.road({{7.6, 0}, {7.6, 10}}, 4);
  pen.block({5, 2.6, 1.2, 4.8}, Ink::paper);
  pen.area({{5.8, 0}, {5.8, 2.6}, {3.6, 4}, {0, 4}, {0, 0}});
  pen.area({{5.8, 10}, {5.8, 7.4}, {3.6, 6}, {0, 6}, {0, 10}});
  pen.thick({{7.6, 10}, {7.6, 5}, {1, 5}});
}

void crossroads(SymbolPen& pen) {
  for (const double x : {0.0, 1.0})
    for (const double y : {0.0, 1.0}) pen.block({x * 7.2, y * 7.2, 2.8, 2.8});
  pen.way({{5, 10}, {5, 0.6}});
}

void staggered_junction(SymbolPen& pen) {
  pen.thin({{0, 3.2}, {6.2, 3.2}}).thin({{9.4, 3.2}, {10, 3.2}});
  pen.thin({{3.8, 6.8}, {10, 6.8}}).thin({{0, 6.8}, {0.6, 6.8}});
  pen.way({{2.2, 10}, {2.2, 5}, {7.8, 5}, {7.8, 0.6}});
}

void acute_junction(SymbolPen& pen) {
  pen.road({{7.2, 10}, {7.2, 0}}, 4.4).block({4.6, 2.8, 1, 5.4}, Ink::paper);
  pen.thin({{5, 8.2}, {3.8, 10}}).thin({{5, 2.8}, {0, 9.4}});
  pen.way(rounded({{7.2, 10}, {7.2, 1.4}, {2.4, 8.8}}, 1));
}

void stop_line(SymbolPen& pen) {
  pen.road({{5, 0}, {5, 10}}, 8);
  pen.block({1, 3.4, 8, 1.8});
  pen.thick({{5, 10}, {5, 6.2}});
}

void box_junction(SymbolPen& pen) {
  pen.frame({1, 1, 8, 8});
  for (const double off : {2.67, 5.33, 8.0}) {
    pen.thin({{1 + off, 1}, {1, 1 + off}}).thin({{9 - off, 1}, {9, 1 + off}});
    pen.thin({{1 + off, 9}, {9, 1 + off}}).thin({{9 - off, 9}, {1, 1 + off}});
  }
}

}  // namespace

SymbolOf junction_symbol(Kind kind) {
  switch (kind) {
    case Kind::roundabout:
      return roundabout;
    case Kind::mini_roundabout:
      return mini_roundabout;
    case Kind::multi_lane_roundabout:
      return multi_lane_roundabout;
    case Kind::signal_roundabout:
      return signal_roundabout;
    case Kind::double_mini:
      return double_mini;
    case Kind::emerge:
      return emerge;
    case Kind::turn_off:
      return turn_off;
    case Kind::narrow_mouth:
      return narrow_mouth;
    case Kind::crossroads:
      return crossroads;
    case Kind::staggered_junction:
      return staggered_junction;
    case Kind::acute_junction:
      return acute_junction;
    case Kind::stop_line:
      return stop_line;
    case Kind::box_junction:
      return box_junction;
    default:
      return nullptr;
  }
}

}  // namespace loopwright::draw
