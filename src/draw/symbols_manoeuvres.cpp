// Spots to stop at and practise.
#include "draw/symbol_pen.hpp"

namespace loopwright::draw {
namespace {

using road::Kind;

void parked(SymbolPen& pen, Spot corner) {
  pen.frame({corner.x, corner.y, 2.2, 3.4});
}

void move_off(SymbolPen& pen) {
  pen.thick({{0.6, 0}, {0.6, 10}});
  Line line{{2.6, 9.6}, {2.6, 8}};
  append(line, curve({2.6, 8}, {0, -1}, {7, 3.4}, {0, -1}));
  append(line, {{7, 3.4}, {7, 0.6}});
  pen.way(line);
}

void uphill_start(SymbolPen& pen) {
  pen.thin({{0, 9.4}, {10, 9.4}, {10, 3}, {0, 9.4}});
  pen.way({{2, 5.8}, {8, 2}});
}

void bay_park(SymbolPen& pen) {
  for (const double x : {0.4, 3.5, 6.6, 9.6}) pen.thin({{x, 0}, {x, 5.4}});
  pen.thin({{0.2, 0.3}, {9.8, 0.3}});
  pen.way(rounded({{0.6, 8.4}, {5, 8.4}, {5, 2}}, 2));
}

void parallel_park(SymbolPen& pen) {
  pen.thick({{0.6, 0}, {0.6, 10}});
  parked(pen, {1.8, 0.3}), parked(pen, {1.8, 6.3});
  Line line{{7.6, 0.6}, {7.6, 2}};
  append(line, curve({7.6, 2}, {0, 1}, {3, 4.9}, {-1, 0.25}));
  line.push_back({3, 4.9});
  pen.thick(line);
}

void pull_up_right(SymbolPen& pen) {
  pen.thin({{0.6, 0}, {0.6, 10}}).thick({{9.6, 0}, {9.6, 10}}).dashed({{5, 0}, {5, 10}});
  Line line{{2.8, 10}, {2.8, 8}};
  append(line, curve({2.8, 8}, {0, -1}, {7.4, 3.6}, {0, -1}));
  append(line, {{7.4, 3.6}, {7.4, 1.4}});
  pen.way(line);
}

void turn_in_road(SymbolPen& pen) {
  pen.thin({{0.6, 0}, {0.6, 10}}).thin({{9.4, 0}, {9.4, 10}});
  Line line{{3, 10}};
  append(line, curve({3, 8.6}, {0, -1}, {8.2, 3}, {1, -0.2}));
  append(line, {{8.2, 3}, {2.2, 4.2}});
  append(line, curve({2.2, 4.2}, {1, 0}, {7, 8}, {0, 1}));
  append(line, {{7, 8}, {7, 9.2}});
  pen.way(line);
}

void emergency_stop(SymbolPen& pen) {
  pen.block({1, 0.4, 8, 2.2}).thick({{5, 2.4}, {5, 5}});
  for (const double x : {3.2, 6.8})
    for (const double y : {5.2, 7.8}) pen.block({x - 0.6, y, 1.2, 1.6});
}

}  // namespace

SymbolOf manoeuvre_symbol(Kind kind) {
  switch (kind) {
    case Kind::uphill_start:
      return uphill_start;
    case Kind::move_off:
      return move_off;
    case Kind::bay_park:
      return bay_park;
    case Kind::parallel_park:
      return parallel_park;
    case Kind::pull_up_right:
      return pull_up_right;
    case Kind::turn_in_road:
      return turn_in_road;
    case Kind::emergency_stop:
      return emergency_stop;
    default:
      return nullptr;
  }
}

}  // namespace loopwright::draw
