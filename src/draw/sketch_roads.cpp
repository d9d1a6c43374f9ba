// 1. Every road within the circle that hangs together with the place, and main roads that pass by, are
//    stroked twice: wide in ink, less wide in the pale tone. What is left of the ink are the edges, open
//    where roads meet.
// 2. Bridges come after the roads they cross; tunnels are left out unless the way leads through.
// 3. Lines along the road end before a junction. Two-way roads have a centre line when two lanes are
//    mapped or they are wide enough for one as is usual (5.5 m); lanes are parted where mapped.
#include <algorithm>
#include <map>
#include <set>

#include "draw/carriageway.hpp"
#include "draw/lane_way.hpp"
#include "draw/sketch_board.hpp"

namespace loopwright::draw {
namespace {

namespace flag = road::piece_flag;
constexpr double edge = 0.3, line_wide = 0.22;

/// The parts of a line inside the circle of the board, in metres, both edges of the road included.
std::vector<Line> shown_parts(const Board& board, const Line& line, double width_m) {
  constexpr double step_m = 1;
  std::vector<Line> parts;
  bool inside = false;
  for (const Step& step : steps_along(line, step_m)) {
    const Spot across = (width_m / 2) * left_of(step.towards);
    const bool in =
        std::max(length_of(step.at + across), length_of(step.at - across)) <= board.shown_m + 0.3;
    if (in && !inside) parts.emplace_back();
    if (in) parts.back().push_back(step.at);
    inside = in;
  }
  std::erase_if(parts, [](const Line& part) { return part.size() < 2; });
  return parts;
}

struct Shown {
  PieceId piece;
  double width_m = 0;
  std::vector<Line> parts;
};

class Roads {
 public:
  explicit Roads(Board& board) : board_(board) {
    for (const PieceId piece : near_pieces()) {
      const StretchId stretch(piece, false);
      const double width = carriageway_of(board.roads, stretch).width_m;
      Shown shown{piece, width,
                  shown_parts(board, line_of(board.roads, board.scene.frame, stretch), width)};
      const std::uint32_t flags = board.roads.pieces[piece.index()].flags;
      if (!shown.parts.empty())
        ((flags & flag::bridge) != 0 ? above_ : below_).push_back(std::move(shown));
    }
  }

  void draw() {
    for (const auto* level : {&below_, &above_}) {
      stroke(*level, edge, Ink::black);
      stroke(*level, 0, Ink::pale);
      for (const Shown& shown : *level) draw_lines(shown.piece);
    }
    for (const auto* level : {&below_, &above_})
      for (const Shown& shown : *level)
        for (const Line& part : shown.parts)
          board_.room.keep_off(board_.on_sheet(part), shown.width_m * board_.scale);
  }

 private:
  /// What hangs together with the place within the circle, and main roads that pass by.
  [[nodiscard]] std::vector<PieceId> near_pieces() const {
    const road::Roads& roads = board_.roads;
    const Scene& scene = board_.scene;
    std::set<PieceId> reached;
    std::vector<NodeId> front = scene.nodes;
    std::set<NodeId> seen(front.begin(), front.end());
    while (!front.empty()) {
      const NodeId node = front.back();
      front.pop_back();
      for (const StretchId away : roads.leaving(node)) {
        if (!is_drawn(away.piece())) continue;
        reached.insert(away.piece());
        const NodeId to = roads.to_node(away);
        const bool inside =
            length_of(scene.frame.spot(roads.nodes[to.index()].at)) < board_.shown_m;
        if (inside && seen.insert(to).second) front.push_back(to);
      }
    }
    const Point at = roads.nodes[scene.nodes.front().index()].at;
    for (const PieceId piece : road::pieces_near(roads, at, board_.shown_m))
      if (is_drawn(piece) && road::rank(roads.pieces[piece.index()].road_class) <= 4)
        reached.insert(piece);
    return {reached.begin(), reached.end()};
  }

  [[nodiscard]] bool is_drawn(PieceId piece) const {
    const Scene& scene = board_.scene;
    const bool used = piece == scene.entry.piece() || piece == scene.exit.piece();
    const std::uint32_t flags = board_.roads.pieces[piece.index()].flags;
    return used || (flags & (flag::minor_service | flag::tunnel)) == 0;
  }

  void stroke(const std::vector<Shown>& level, double more, Ink ink) {
    for (const Shown& shown : level)
      for (const Line& part : shown.parts)
        board_.picture.add(
            Stroke{board_.on_sheet(part), shown.width_m * board_.scale + 2 * more, ink});
    for (const auto& [node, radius_m] : joints(level))
      board_.picture.add(
          Disc{board_.on_sheet(board_.scene.frame.spot(board_.roads.nodes[node.index()].at)),
               radius_m * board_.scale + more, ink, 0});
  }

  /// Nodes where roads meet, with half the width of the second widest: what fills their bends.
  [[nodiscard]] std::map<NodeId, double> joints(const std::vector<Shown>& level) const {
    std::map<NodeId, std::vector<double>> halves;
    for (const Shown& shown : level) {
      const road::Piece& piece = board_.roads.pieces[shown.piece.index()];
      for (const NodeId node : {piece.a, piece.b}) halves[node].push_back(shown.width_m / 2);
    }
    std::map<NodeId, double> found;
    for (auto& [node, all] : halves) {
      const Spot at = board_.scene.frame.spot(board_.roads.nodes[node.index()].at);
      if (all.size() < 2) continue;
      std::sort(all.begin(), all.end());
      const double half = all[all.size() - 2];
      if (length_of(at) + half < board_.shown_m) found[node] = half;
    }
    return found;
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
    const int across = road.across();
    // Counted from the right edge, from which lines are shifted to the left.
    const bool left_driving = board_.scene.side == Side::left;
    const int parted = left_driving ? road.back : road.lanes;
    const bool narrow = across == 2 && !road.one_way && road.width_m < 5.5;
    if (road.shares || (narrow && road.from == WidthFrom::usual)) return;
    for (int i = 1; i < across; ++i) {
      const bool centre = !road.one_way && i == parted && across > 2;
      draw_line(shifted(line, road.width_m * (i / double(across) - 0.5)), road.width_m, centre);
    }
  }

  void draw_line(const Line& line, double width_m, bool unbroken) {
    for (const Line& part : shown_parts(board_, line, width_m)) {
      Stroke stroke{board_.on_sheet(part), line_wide, Ink::grey};
      if (!unbroken) stroke.dashes = {1.8, 1.4};
      board_.picture.add(std::move(stroke));
    }
  }

  Board& board_;
  std::vector<Shown> below_, above_;
};

}  // namespace

void draw_roads(Board& board) {
  Roads(board).draw();
}

}  // namespace loopwright::draw
