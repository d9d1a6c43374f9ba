// 1. A box junction is hatched between the mouths of the roads that leave its nodes: the map has where
//    it is, not how far it is painted.
// 2. Before lights a box for cyclists lies between two lines across the lanes that come in; drivers stop
//    at the outer. Where the inner would lie nearer to it than boxes are long (4 m at least), the outer
//    is moved out.
// Source: Highway Code rules 174 and 178; Traffic Signs Manual, chapter 6 (2019), advanced stop lines.
#include <algorithm>
#include <optional>
#include <set>

#include "draw/carriageway.hpp"
#include "draw/hatching.hpp"
#include "draw/lane_way.hpp"
#include "draw/sketch_board.hpp"

namespace loopwright::draw {
namespace {

using road::Kind;
constexpr double line_mm = 0.5;

/// The places of that kind that are passed by a road into the scene.
std::set<PlaceId> places_met(const Board& board, Kind kind) {
  std::set<PlaceId> places;
  for (const SceneArm& arm : board.scene.arms)
    for (const road::Chance& chance : board.roads.chances_from(arm.in))
      if (chance.kind == kind) places.insert(chance.place);
  return places;
}

/// Both edges of a road where it leaves a node, in metres.
void add_mouth(const Board& board, StretchId away, Line& corners) {
  const Line line = line_of(board.roads, board.scene.frame, away);
  const double off = clear_of_m(board.roads, board.roads.from_node(away), away.piece()) + 0.3;
  const Spot at = along(line, off);
  const Spot half =
      (carriageway_of(board.roads, away).width_m / 2) * left_of(direction_at(line, off));
  append(corners, {at + half, at - half});
}

void draw_hatched(Board& board, PlaceId place) {
  constexpr double hatch_mm = 1.7, fine_mm = 0.2;
  const auto inside = board.roads.pieces_of(place);
  Line corners;
  for (const NodeId node : board.roads.nodes_of(place))
    for (const StretchId away : board.roads.leaving(node))
      if (std::find(inside.begin(), inside.end(), away.piece()) == inside.end() &&
          (board.roads.piece(away).flags & road::piece_flag::minor_service) == 0)
        add_mouth(board, away, corners);
  Line edge = hull_of(board.on_sheet(corners));
  if (edge.size() < 3) return;
  for (const double course : {45.0, 135.0})
    for (Line& line : hatching(edge, course, hatch_mm))
      board.picture.add(Stroke{std::move(line), fine_mm});
  edge.push_back(edge.front());
  board.picture.add(Stroke{std::move(edge), fine_mm});
}

bool has_box(const road::Roads& roads, StretchId in) {
  const auto chances = roads.chances_from(in);
  return std::any_of(chances.begin(), chances.end(), [](const road::Chance& chance) {
    return chance.kind == Kind::advanced_stop_line;
  });
}

class CycleBox {
 public:
  CycleBox(Board& board, StretchId away) : board_(board), away_(away) {}

  /// When who comes in by this road meets one.
  void draw() {
    const std::optional<double> mapped = cycle_box_m(board_.roads, away_);
    if (!mapped) return;
    const double inner =
        clear_of_m(board_.roads, board_.roads.from_node(away_), away_.piece()) + 0.8;
    const double outer = std::max(*mapped, inner + least_long_m);
    if (outer > board_.shown_m) return;
    line_ = follow(board_.roads, board_.scene.frame, away_, outer + 1);
    draw_line(inner), draw_line(outer);
    draw_cycle((inner + outer) / 2);
  }

 private:
  static constexpr double least_long_m = 4;

  /// Across the lanes that come in: 0 is their edge in the middle of the road, 1 that at the kerb.
  [[nodiscard]] Spot across(double off, double part) const {
    const Carriageway road = carriageway_of(board_.roads, away_.back());
    const Spot in = -1.0 * direction_at(line_, off);
    const Spot near = board_.scene.side == Side::left ? left_of(in) : -1.0 * left_of(in);
    const double inner = road.one_way || road.shares ? -road.width_m / 2 : 0;
    return board_.on_sheet(along(line_, off) + (inner + part * (road.width_m / 2 - inner)) * near);
  }

  void draw_line(double off) {
    board_.picture.add(Stroke{{across(off, 0), across(off, 1)}, line_mm});
  }

  /// Two wheels and what joins them.
  void draw_cycle(double off) {
    constexpr double wheel_mm = 0.55, fine_mm = 0.25;
    const Spot middle = across(off, 0.5), along_line = unit(across(off, 1) - across(off, 0));
    const Spot left = middle - 0.9 * along_line, right = middle + 0.9 * along_line;
    board_.picture.add(Stroke{{left, right}, fine_mm});
    for (const Spot wheel : {left, right})
      board_.picture.add(Disc{wheel, wheel_mm, Ink::paper, fine_mm});
  }

  Board& board_;
  StretchId away_;
  Line line_;
};

}  // namespace

std::optional<double> cycle_box_m(const road::Roads& roads, StretchId away) {
  constexpr double furthest_m = 40;
  StretchId out = away;
  for (double at = roads.piece(out).length_m; at <= furthest_m; at += roads.piece(out).length_m) {
    const auto on = roads.leaving(roads.to_node(out));
    for (const StretchId further : on)
      if (further.piece() != out.piece() && has_box(roads, further.back())) return at;
    if (on.size() != 2) break;
    out = on[0].piece() == out.piece() ? on[1] : on[0];
  }
  return std::nullopt;
}

void draw_boxes(Board& board) {
  for (const PlaceId place : places_met(board, Kind::box_junction)) draw_hatched(board, place);
  const auto& inside = board.scene.inside;
  for (const NodeId node : board.scene.nodes)
    for (const StretchId away : board.roads.leaving(node))
      if (std::find(inside.begin(), inside.end(), away.piece()) == inside.end())
        CycleBox(board, away).draw();
}

}  // namespace loopwright::draw
