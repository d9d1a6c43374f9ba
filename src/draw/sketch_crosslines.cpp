// 1. At every road that comes to the place, the turns from it say what the driver there must do: give
//    way (broken line, two of them off roundabouts), stop, wait for lights (unbroken). The line lies
//    where the roads met end; the area doesn't hold where it is painted.
// 2. Zebras, crossings with lights and level crossings lie where their nodes do, across the road there.
#include <algorithm>
#include <set>

#include "draw/carriageway.hpp"
#include "draw/lane_way.hpp"
#include "draw/sketch_board.hpp"
#include "draw/way.hpp"

namespace loopwright::draw {
namespace {

using road::Control;
namespace flag = road::piece_flag;
namespace node_flag = road::node_flag;

/// Rails drawn on both sides of the road.
constexpr double rails_beyond_m = 11;

enum class Must : std::uint8_t { nothing, give_way, give_way_on_ring, stop, lights };

Must must_at(Control control) {
  switch (control) {
    case Control::give_way_near:
    case Control::give_way_far:
      return Must::give_way;
    case Control::stop_near:
    case Control::stop_far:
      return Must::stop;
    case Control::signals:
    case Control::signal_roundabout:
      return Must::lights;
    case Control::mini_roundabout:
    case Control::roundabout:
    case Control::multi_lane_roundabout:
      return Must::give_way_on_ring;
    default:
      return Must::nothing;
  }
}

class Crosslines {
 public:
  explicit Crosslines(Board& board) : board_(board), roads_(board.roads) {}

  void draw() {
    for (const NodeId node : board_.scene.nodes)
      for (const StretchId away : roads_.leaving(node)) draw_approach(away);
    for (const NodeId node : shown_nodes()) draw_node(node);
    if (board_.scene.form == Form::mini) draw_mini();
  }

 private:
  [[nodiscard]] bool is_inside(PieceId piece) const {
    const auto& inside = board_.scene.inside;
    return std::find(inside.begin(), inside.end(), piece) != inside.end();
  }

  void draw_approach(StretchId away) {
    const std::uint32_t flags = roads_.piece(away).flags;
    if (is_inside(away.piece()) || (flags & (flag::ring | flag::minor_service)) != 0) return;
    Must must = Must::nothing;
    for (const road::Turn& turn : roads_.turns_from(StateId{away.back().index()}))
      must = std::max(must, must_at(turn.control));
    if (must != Must::nothing) draw_line(away, must);
  }

  void draw_line(StretchId away, Must must) {
    const Carriageway road = carriageway_of(roads_, away.back());
    const Line line = line_of(roads_, board_.scene.frame, away);
    const NodeId node = roads_.from_node(away);
    const bool at_junction = roads_.leaving(node).size() > 2;
    const double off = at_junction ? clear_of_m(roads_, node, away.piece()) + 0.8 : 0.3;
    const Spot at = along(line, off), in = -1.0 * direction_at(line, off);
    const Spot near = board_.scene.side == Side::left ? left_of(in) : -1.0 * left_of(in);
    const Spot edge = at + (road.width_m / 2) * near;
    const Spot inner = road.one_way || road.shares ? at - (road.width_m / 2) * near : at;
    stroke({inner, edge}, must);
    if (must == Must::give_way) {
      const Spot back = -0.9 * in;
      stroke({inner + back, edge + back}, must);
    }
    if (must == Must::lights) draw_lights(board_.on_sheet(edge) + 2.2 * near);
  }

  void stroke(const Line& metres, Must must) {
    Stroke stroke{board_.on_sheet(metres), must == Must::stop ? 0.9 : 0.5};
    if (must == Must::give_way || must == Must::give_way_on_ring) stroke.dashes = {0.9, 0.6};
    board_.picture.add(std::move(stroke));
  }

  void draw_lights(Spot at) {
    constexpr double tall = 4.4;
    draw_lamps(board_.picture, at, tall);
    board_.room.keep_free({at.x - tall / 4, at.y - tall / 2, tall / 2, tall});
  }

  [[nodiscard]] std::set<NodeId> shown_nodes() const {
    std::set<NodeId> nodes(board_.scene.nodes.begin(), board_.scene.nodes.end());
    Point middle = roads_.nodes[board_.scene.nodes.front().index()].at;
    for (const PieceId piece : road::pieces_near(roads_, middle, board_.shown_m * 1.5))
      nodes.insert({roads_.pieces[piece.index()].a, roads_.pieces[piece.index()].b});
    return nodes;
  }

  void draw_node(NodeId node) {
    const road::Node& row = roads_.nodes[node.index()];
    const Spot at = board_.scene.frame.spot(row.at);
    if (length_of(at) > board_.shown_m - 3) return;
    for (const StretchId away : roads_.leaving(node)) {
      if ((roads_.piece(away).flags & flag::minor_service) != 0) continue;
      const Spot ahead = direction_at(line_of(roads_, board_.scene.frame, away), 0);
      const double width = carriageway_of(roads_, away).width_m;
      if ((row.flags & node_flag::zebra) != 0) draw_zebra(at, ahead, width);
      if ((row.flags & node_flag::signal_crossing) != 0) draw_crossing(at, ahead, width);
      if ((row.flags & node_flag::level_crossing) != 0)
        draw_rails_across(board_.on_sheet(at), ahead, width);
      break;
    }
  }

  void draw_rails_across(Spot at, Spot ahead, double width) {
    const double gauge = std::max(1.4, 1.435 * board_.scale);
    const double half = board_.scale * (width / 2 + rails_beyond_m);
    draw_rails(board_.picture, at, left_of(ahead), 2 * half, gauge);
    board_.room.keep_off({at - half * left_of(ahead), at + half * left_of(ahead)}, 2 * gauge);
  }

  /// The painted dome, 1 to 4 m across (Traffic Signs Manual, chapter 3), with a fine ring.
  void draw_mini() {
    constexpr double radius_m = 1.2;
    board_.picture.add(Disc{board_.middle, (radius_m + 0.5) * board_.scale, Ink::paper, 0.3});
    board_.picture.add(Disc{board_.middle, radius_m * board_.scale * 0.7, Ink::black, 0});
  }

  void draw_zebra(Spot at, Spot ahead, double width) {
    constexpr double long_m = 2.6;
    const int bars = std::max(5, 2 * static_cast<int>(width / 1.4) + 1);
    const double step = width / bars;
    for (int i = 0; i < bars; i += 1) {
      const Spot middle = at + (step * (i + 0.5) - width / 2) * left_of(ahead);
      const Line bar =
          board_.on_sheet({middle - (long_m / 2) * ahead, middle + (long_m / 2) * ahead});
      board_.picture.add(Stroke{bar, step * board_.scale, i % 2 == 0 ? Ink::black : Ink::paper});
    }
  }

  void draw_crossing(Spot at, Spot ahead, double width) {
    for (const double off : {-1.3, 1.3}) {
      const Spot middle = at + off * ahead, across = (width / 2) * left_of(ahead);
      board_.picture.add(Stroke{board_.on_sheet({middle - across, middle + across}),
                                0.4,
                                Ink::black,
                                Cap::butt,
                                {0.5, 0.5}});
    }
    draw_lights(board_.on_sheet(at + (width / 2) * left_of(ahead)) + 2.2 * left_of(ahead));
  }

  Board& board_;
  const road::Roads& roads_;
};

}  // namespace

void draw_crosslines(Board& board) {
  Crosslines(board).draw();
}

}  // namespace loopwright::draw
