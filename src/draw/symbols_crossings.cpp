// Lights, crossings and what else is met at a point of the road.
#include "draw/symbol_pen.hpp"

namespace loopwright::draw {
namespace {

using road::Kind;

void signals(SymbolPen& pen) {
  pen.lamps({5, 5}, 9.4);
}

void filter_lane(SymbolPen& pen) {
  pen.lamps({8.2, 2.9}, 5).road({{4.4, 10}, {4.4, 4}}, 5.4).dashed({{4.4, 10}, {4.4, 4}});
  pen.way({{2.9, 10}, {2.9, 2.6}, {0.8, 2.6}});
}

void advanced_stop_line(SymbolPen& pen) {
  pen.road({{5, 0}, {5, 10}}, 8.4);
  pen.block({1, 0.8, 8, 1}).block({1, 5.4, 8, 1});
  pen.ring({3.4, 3.6}, 0.9, 0.45).ring({6.6, 3.6}, 0.9, 0.45).thin({{3.4, 3.6}, {6.6, 3.6}});
  pen.thick({{5, 10}, {5, 7.4}});
}

void zebra(SymbolPen& pen) {
  for (const double x : {0.3, 2.4, 4.5, 6.6, 8.7}) pen.block({x, 2, 1.1, 6});
}

void signal_crossing(SymbolPen& pen) {
  pen.dashed({{0, 5.4}, {6.4, 5.4}}).dashed({{0, 8.6}, {6.4, 8.6}}).lamps({8.3, 4}, 6.4);
  pen.thick({{3.2, 5}, {3.2, 0}});
}

void school(SymbolPen& pen) {
  pen.area({{5, 0.6}, {10, 4.4}, {9, 5}, {5, 2}, {1, 5}, {0, 4.4}});
  pen.frame({1.4, 5, 7.2, 4.6}).block({4.1, 6.4, 1.8, 3.2}).ring({5, 4.4}, 0.7, 0.4);
}

void level_crossing(SymbolPen& pen) {
  pen.rails({{0, 5}, {10, 5}}).way({{5, 10}, {5, 0.6}});
}

void pinch_point(SymbolPen& pen) {
  pen.road({{5, 0}, {5, 10}}, 9);
  pen.area({{0.4, 2}, {3.3, 3.6}, {3.3, 6.4}, {0.4, 8}});
  pen.area({{9.6, 2}, {6.7, 3.6}, {6.7, 6.4}, {9.6, 8}});
  pen.way({{5, 10}, {5, 0.6}});
}

void calming(SymbolPen& pen) {
  for (const double y : {2.6, 5.4, 8.2}) {
    Line hump = arc({5, y + 2.4}, 4, 307, 106);
    append(hump, reversed(arc({5, y + 3.7}, 4, 307, 106)));
    pen.area(hump);
  }
}

void limit_change(SymbolPen& pen) {
  pen.thick({{0.4, 8.4}, {3.6, 8.4}, {3.6, 5}, {6.6, 5}, {6.6, 1.6}, {9.8, 1.6}});
}

void brow(SymbolPen& pen) {
  Line hill = arc({5, 12}, 8, 322, 76);
  append(hill, {{9.9, 9.6}, {0.1, 9.6}});
  pen.area(hill);
  pen.dashed({{0, 2.4}, {10, 2.4}});
}

void bus_stop(SymbolPen& pen) {
  pen.block({0.2, 1, 2.4, 2.6}).thin({{1.4, 1}, {1.4, 10}});
  pen.block({3.6, 2.6, 6.4, 5.6}).block({4.4, 3.6, 2, 1.9}, Ink::paper);
  pen.block({7.2, 3.6, 2, 1.9}, Ink::paper).dot({5.2, 8.4}, 0.95).dot({8.4, 8.4}, 0.95);
}

void tram_crossing(SymbolPen& pen) {
  pen.thin({{0, 4.2}, {10, 4.2}}).thin({{0, 6.4}, {10, 6.4}});
  pen.dashed({{0, 1.6}, {10, 1.6}}).way({{5, 10}, {5, 0.6}});
}

void ford(SymbolPen& pen) {
  pen.thick({{5, 10}, {5, 8}}).thick({{5, 2}, {5, 0}});
  for (const double y : {3.3, 5.2, 7.1})
    pen.thin(rounded({{0, y},
                      {1.7, y - 0.9},
                      {3.3, y + 0.5},
                      {5, y - 0.9},
                      {6.7, y + 0.5},
                      {8.3, y - 0.9},
                      {10, y}},
                     0.8));
}

}  // namespace

SymbolOf crossing_symbol(Kind kind) {
  switch (kind) {
    case Kind::signals:
      return signals;
    case Kind::filter_lane:
      return filter_lane;
    case Kind::advanced_stop_line:
      return advanced_stop_line;
    case Kind::zebra:
      return zebra;
    case Kind::signal_crossing:
      return signal_crossing;
    case Kind::school:
      return school;
    case Kind::level_crossing:
      return level_crossing;
    case Kind::pinch_point:
      return pinch_point;
    case Kind::calming:
      return calming;
    case Kind::limit_change:
      return limit_change;
    case Kind::brow:
      return brow;
    case Kind::bus_stop:
      return bus_stop;
    case Kind::tram_crossing:
      return tram_crossing;
    case Kind::ford:
      return ford;
    default:
      return nullptr;
  }
}

}  // namespace loopwright::draw
