// 1. Every road within the circle is stroked twice: wide in ink, less wide in the pale tone. What is
//    left of the ink are the edges, open where roads meet.
// 2. Bridges come after the roads they cross; tunnels are left out unless the way leads through.
// 3. Lines along the road end before a junction. Two-way roads have a centre line when two lanes are
//    mapped or they are wide enough for one as is usual (5.5 m); lanes are parted where mapped.
#include <algorithm>

#include "draw/carriageway.hpp"
#include "draw/lane_way.hpp"
#include "draw/sketch_board.hpp"

namespace loopwright::draw {
namespace {

namespace flag = road::piece_flag;
constexpr double edge = 0.3, line_wide = 0.22;

/// The parts of a line inside the circle of the board, in metres.
std::vector<Line> shown_parts(const Board& board, const Line& line) {
  constexpr double step_m = 1;
  std::vector<Line> parts;
  bool inside = false;
  for (double at = 0, all = length_of(line);; at += step_m) {
    const Spot spot = along(line, std::min(at, all));
    const bool in = length_of(spot) <= board.shown_m;
    if (in && !inside) parts.emplace_back();
    if (in) parts.back().push_back(spot);
    inside = in;
    if (at >= all) break;
  }
  std::erase_if(parts, [](const Line& part) { return part.size() < 2; });
  return parts;
}

class Roads {
 public:
  explicit Roads(Board& board) : board_(board) {
    const Scene& scene = board.scene;
    for (const PieceId piece : near_pieces()) {
      const std::uint32_t flags = board.roads.pieces[piece.index()].flags;
      const bool used = piece == scene.entry.piece() || piece == scene.exit.piece();
      if ((flags & (flag::minor_service | flag::tunnel)) != 0 && !used) continue;
      ((flags & flag::bridge) != 0 ? above_ : below_).push_back(piece);
    }
  }

  void draw() {
    for (const auto* pieces : {&below_, &above_}) {
      for (const PieceId piece : *pieces) stroke(piece, 2 * edge, Ink::black);
      for (const PieceId piece : *pieces) stroke(piece, 0, Ink::pale);
      for (const PieceId piece : *pieces) draw_lines(piece);
    }
  }

 private:
  [[nodiscard]] std::vector<PieceId> near_pieces() const {
    const road::Roads& roads = board_.roads;
    Point at;
    if (board_.scene.place.known())
      at = roads.places[board_.scene.place.index()].at;
    else
      at = roads.nodes[board_.scene.nodes.front().index()].at;
    return road::pieces_near(roads, at, board_.shown_m * 1.5);
  }

  void stroke(PieceId piece, double more, Ink ink) {
    const StretchId stretch(piece, false);
    const double width = carriageway_of(board_.roads, stretch).width_m * board_.scale;
    for (const Line& part :
         shown_parts(board_, line_of(board_.roads, board_.scene.frame, stretch))) {
      const Line line = board_.on_sheet(part);
      board_.picture.add(Stroke{line, width + more, ink});
      if (more > 0) board_.room.keep_off(line, width);
    }
  }

  /// Metres to leave clear at a node; nothing where the road only goes on.
  [[nodiscard]] double clear_m(NodeId node, PieceId of) const {
    return board_.roads.leaving(node).size() < 3 ? 0 : clear_of_m(board_.roads, node, of) + 1;
  }

  void draw_lines(PieceId piece) {
    const StretchId stretch(piece, false);
    const Carriageway road = carriageway_of(board_.roads, stretch);
    const Line all = line_of(board_.roads, board_.scene.frame, stretch);
    const double from = clear_m(board_.roads.from_node(stretch), piece);
    const double to = length_of(all) - clear_m(board_.roads.to_node(stretch), piece);
    if (to - from < 3) return;
    const Line line = part_of(all, from, to);
    const int across = road.one_way ? road.lanes : 2 * road.lanes + (road.odd ? 1 : 0);
    if (road.shares ||
        (across == 2 && !road.one_way && road.width_m < 5.5 && road.from == WidthFrom::usual))
      return;
    for (int i = 1; i < across; ++i) {
      const bool centre = !road.one_way && 2 * i == across && across > 2;
      draw_line(shifted(line, road.width_m * (i / double(across) - 0.5)), centre);
    }
  }

  void draw_line(const Line& line, bool unbroken) {
    for (const Line& part : shown_parts(board_, line)) {
      Stroke stroke{board_.on_sheet(part), line_wide, Ink::grey};
      if (!unbroken) stroke.dashes = {1.8, 1.4};
      board_.picture.add(std::move(stroke));
    }
  }

  Board& board_;
  std::vector<PieceId> below_, above_;
};

}  // namespace

void draw_roads(Board& board) {
  Roads(board).draw();
}

}  // namespace loopwright::draw
