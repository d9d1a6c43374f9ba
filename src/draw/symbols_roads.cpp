// Runs of road.
#include "draw/symbol_pen.hpp"

namespace loopwright::draw {
namespace {

using road::Kind;

void narrow_road(SymbolPen& pen) {
  pen.thick({{0.6, 10}, {3.8, 0}}).thick({{9.4, 10}, {6.2, 0}});
}

void single_track(SymbolPen& pen) {
  pen.thin({{3, 10}, {3, 7.6}, {0.8, 6.4}, {0.8, 3.6}, {3, 2.4}, {3, 0}}).thin({{7, 0}, {7, 10}});
  pen.thick({{5, 10}, {5, 0}});
}

void meeting_traffic(SymbolPen& pen) {
  pen.frame({0.4, 2.2, 2.4, 5.6}).frame({7.2, 2.2, 2.4, 5.6});
  pen.way({{5, 10}, {5, 6.3}}).way({{5, 0}, {5, 3.7}});
}

void twenty_zone(SymbolPen& pen) {
  for (int i = 0; i < 12; ++i) pen.dot(Spot{5, 5} + 4.6 * towards_deg(30.0 * i), 0.4);
  pen.number("20", 15);
}

void twenty_limit(SymbolPen& pen) {
  pen.thick({{0, 1}, {10, 1}}).thick({{0, 9}, {10, 9}}).number("20", 15);
}

void country_road(SymbolPen& pen) {
  for (const Spot tree : {Spot{1.8, 2}, Spot{8.2, 7}})
    pen.dot(tree, 1.7).thin({tree, tree + Spot{0, 2.9}});
  pen.thick(rounded({{3, 10}, {3, 7.4}, {7, 3.4}, {7, 0}}, 2.4));
}

void bends(SymbolPen& pen) {
  pen.way(rounded({{5, 10}, {5, 8.6}, {1.4, 7.2}, {8.6, 3.4}, {5, 2.2}, {5, 0.6}}, 1.4));
}

void downhill(SymbolPen& pen) {
  pen.area({{0, 2}, {10, 9}, {0, 9}});
}

void dual_carriageway(SymbolPen& pen) {
  pen.block({4.4, 0, 1.2, 10}, Ink::black);
  pen.way({{2, 10}, {2, 0.6}}).way({{8, 0}, {8, 9.4}});
}

void slip_road(SymbolPen& pen) {
  pen.road({{7.4, 0}, {7.4, 10}}, 4.6)
      .block({4.6, 0.4, 1, 5}, Ink::paper)
      .dashed({{5.1, 0}, {5.1, 5}});
  pen.way({{1, 10}, {3.6, 4}, {3.6, 0.6}});
}

void motorway(SymbolPen& pen) {
  for (const double x : {0.4, 4.3, 5.7, 9.6}) pen.thick({{x, 0}, {x, 10}});
  for (const double x : {1.7, 3.0, 7.0, 8.3}) pen.dashed({{x, 0}, {x, 10}});
}

void one_way(SymbolPen& pen) {
  pen.way({{1.8, 10}, {1.8, 4.6}}).way({{5, 10}, {5, 0.6}}).way({{8.2, 10}, {8.2, 4.6}});
}

void bus_lane(SymbolPen& pen) {
  pen.thin({{0.4, 0}, {0.4, 10}}).thick({{4.6, 0}, {4.6, 10}}).thin({{9.6, 0}, {9.6, 10}});
  for (const double y : {3.2, 5.4, 7.6, 9.8}) pen.thin({{0.4, y}, {4.6, y - 2.2}});
  pen.thick({{7.2, 10}, {7.2, 4}});
}

void wheels(SymbolPen& pen, Spot at) {
  pen.ring(at - Spot{1.6, 0}, 1.3, 0.5).ring(at + Spot{1.6, 0}, 1.3, 0.5);
  pen.thin({at - Spot{1.6, 0}, at + Spot{-0.6, -1.9}, at + Spot{1.0, -1.9}, at + Spot{1.6, 0}});
}

void cycle_lane(SymbolPen& pen) {
  pen.thin({{0.4, 0}, {0.4, 10}}).dashed({{7.2, 0}, {7.2, 10}}).thin({{9.6, 0}, {9.6, 10}});
  wheels(pen, {3.8, 6});
}

void cycle_lane_mouth(SymbolPen& pen) {
  pen.dashed({{0, 0.6}, {10, 0.6}}).dashed({{0, 5.4}, {10, 5.4}});
  wheels(pen, {5, 3.8});
  pen.thick({{5, 10}, {5, 6.4}}).thin({{1.6, 10}, {1.6, 6}}).thin({{8.4, 10}, {8.4, 6}});
}

void lanes_merge(SymbolPen& pen) {
  pen.thin({{0.6, 0}, {0.6, 10}}).thin({{9.4, 10}, {9.4, 7}, {6, 3}, {6, 0}});
  pen.dashed({{5, 10}, {5, 7.2}});
  pen.thick(rounded({{7.2, 10}, {7.2, 7.4}, {3.2, 3.8}}, 1.6)).way({{3, 10}, {3, 0.6}});
}

void tram(SymbolPen& pen) {
  pen.frame({1.8, 2.4, 6.4, 6}).block({2.8, 3.4, 4.4, 2}).thin({{3.2, 0.4}, {6.8, 0.4}});
  pen.thin({{5, 0.4}, {5, 2.4}}).dot({3.4, 7}, 0.5).dot({6.6, 7}, 0.5);
  pen.thin({{3, 8.4}, {2, 10}}).thin({{7, 8.4}, {8, 10}});
}

void independent_stretch(SymbolPen& pen) {
  pen.thick({{5, 10}, {5, 0}});
  pen.block({0, 1, 8.4, 2.4}).block({1.6, 4.4, 8.4, 2.4});
  pen.block({0.8, 1.9, 5, 0.6}, Ink::paper).block({4, 5.3, 5, 0.6}, Ink::paper);
}

}  // namespace

SymbolOf road_symbol(Kind kind) {
  switch (kind) {
    case Kind::narrow_road:
      return narrow_road;
    case Kind::single_track:
      return single_track;
    case Kind::meeting_traffic:
      return meeting_traffic;
    case Kind::twenty_zone:
      return twenty_zone;
    case Kind::twenty_limit:
      return twenty_limit;
    case Kind::country_road:
      return country_road;
    case Kind::bends:
      return bends;
    case Kind::downhill:
      return downhill;
    case Kind::dual_carriageway:
      return dual_carriageway;
    case Kind::slip_road:
      return slip_road;
    case Kind::motorway:
      return motorway;
    case Kind::one_way:
      return one_way;
    case Kind::bus_lane:
      return bus_lane;
    case Kind::cycle_lane:
      return cycle_lane;
    case Kind::cycle_lane_mouth:
      return cycle_lane_mouth;
    case Kind::lanes_merge:
      return lanes_merge;
    case Kind::tram:
      return tram;
    case Kind::independent_stretch:
      return independent_stretch;
    default:
      return nullptr;
  }
}

}  // namespace loopwright::draw
