// Method: roads as an undirected graph over the pieces in reach, the door a node of its own.
//   1. Depth first from home (Tarjan 1974, from memory): a piece whose far side has no other way back is
//      a bridge of the graph.
//   2. Over a bridge one must go and come back when the end isn't beyond it and
//      a) all chances of some want with a number lie beyond it: its metres are forced;
//      b) or what lies this side is too little road to fill the minutes. Who stays this side anyhow
//         drives at least the missing minutes on road driven before: the fewer metres of the two hold.
//   3. All forced bridges are crossed, or some b) was refused: the lesser sum is the bound.
#include "find/forced_twice.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <vector>

namespace loopwright::find {

namespace {

using Node = std::uint32_t;

struct Edge {
  Node a = 0, b = 0;
  double metres = 0;
  std::uint32_t piece = 0;  ///< dense
};

/// What lies on one side of a bridge.
struct Side {
  double free_ms = 0;  ///< all its road once, at its slower direction, with the waits before it
  double slowest_ms_per_m = 0;
  std::vector<int> candidates;  ///< by want
  bool has_end = false;

  void add(const Side& other) {
    free_ms += other.free_ms;
    slowest_ms_per_m = std::max(slowest_ms_per_m, other.slowest_ms_per_m);
    has_end = has_end || other.has_end;
    for (std::size_t w = 0; w < candidates.size(); ++w) candidates[w] += other.candidates[w];
  }
};

class BridgeSearch {
 public:
  explicit BridgeSearch(const Hunt& hunt) : hunt_(hunt) {
    measure_pieces();
    join_pieces();
  }

  double forced_m() {
    find_bridges();
    double all_crossed_m = 0, least_refused_m = std::numeric_limits<double>::infinity();
    for (const auto& [edge, beyond] : bridges_) {
      if (beyond.has_end) continue;
      if (needs(beyond)) {
        all_crossed_m += edges_[edge].metres;
        continue;
      }
      const double refused_m = metres_again_without(beyond);
      if (refused_m <= 0) continue;
      all_crossed_m += edges_[edge].metres;
      least_refused_m = std::min(least_refused_m, refused_m);
    }
    return std::min(all_crossed_m, least_refused_m);
  }

 private:
  struct Frame {
    Node node;
    std::int64_t edge;  ///< by which it was reached; -1: the root
    std::size_t next;
  };

  Side empty_side() const { return {0, 0, std::vector<int>(hunt_.of_want.size(), 0), false}; }

  void measure_pieces() {
    of_piece_.assign(hunt_.piece_m.size(), empty_side());
    for (Vertex v = 0; v < hunt_.graph.size(); ++v) {
      double ms = hunt_.graph.along_ms(v), wait_ms = 0;
      for (const reach::LocalGraph::Arc& arc : hunt_.graph.in(v))
        wait_ms = std::max(wait_ms, static_cast<double>(arc.turn_ms));
      const std::uint32_t p = hunt_.piece_of[v];
      Side& side = of_piece_[p];
      side.free_ms = std::max(side.free_ms, ms + wait_ms);
      side.slowest_ms_per_m =
          std::max(side.slowest_ms_per_m,
                   (ms + wait_ms) / std::max(0.1, static_cast<double>(hunt_.piece_m[p])));
    }
    const auto& wants = hunt_.ground.wish.wants;
    for (const Candidate& candidate : hunt_.candidates)
      for (std::size_t w = 0; w < wants.size(); ++w)
        if (hunt_.serves(candidate, wants[w]))
          ++of_piece_[hunt_.piece_of[candidate.path.front()]].candidates[w];
  }

  void join_pieces() {
    const Ground& ground = hunt_.ground;
    std::vector<PieceId> pieces(hunt_.piece_m.size());
    for (Vertex v = 0; v < hunt_.graph.size(); ++v)
      pieces[hunt_.piece_of[v]] = hunt_.graph.stretch(v).piece();
    end_ = ground.end.piece == ground.home.piece && !ground.wish.end ? home_ : Node{1};
    for (std::uint32_t p = 0; p < pieces.size(); ++p) {
      const road::Piece& piece = ground.roads.pieces[pieces[p].index()];
      Node from = node_of(piece.a);
      double from_m = 0;
      for (const auto& [node, at_m] : doors_on(pieces[p])) {
        join({from, node, std::max(0.0, at_m - from_m), p});
        from = node, from_m = std::max(from_m, at_m);
      }
      join({from, node_of(piece.b), std::max(0.0, piece.length_m - from_m), p});
      if (from != node_of(piece.a)) door_pieces_.push_back(p);
    }
  }

  std::vector<std::pair<Node, double>> doors_on(PieceId piece) const {
    std::vector<std::pair<Node, double>> doors;
    if (hunt_.ground.home.piece == piece) doors.emplace_back(home_, hunt_.ground.home.along_m);
    if (end_ != home_ && hunt_.ground.end.piece == piece)
      doors.emplace_back(end_, hunt_.ground.end.along_m);
    std::sort(doors.begin(), doors.end(),
              [](const auto& x, const auto& y) { return x.second < y.second; });
    return doors;
  }

  Node node_of(NodeId id) {
    const auto [it, fresh] = nodes_.try_emplace(id.index(), static_cast<Node>(nodes_.size() + 2));
    return it->second;
  }

  void join(const Edge& edge) {
    edges_.push_back(edge);
    const Node most = std::max({edge.a, edge.b, Node{1}});
    if (at_node_.size() <= most) at_node_.resize(most + 1);
    at_node_[edge.a].push_back(edges_.size() - 1);
    at_node_[edge.b].push_back(edges_.size() - 1);
  }

  void find_bridges() {
    std::vector<std::uint32_t> order(at_node_.size(), 0), low(at_node_.size(), 0);
    std::vector<Side> beyond(at_node_.size(), empty_side());
    std::vector<std::uint8_t> counted(of_piece_.size(), 0);
    // A door's own road lies on both sides of it: it is counted beyond no bridge, and added at last.
    for (const std::uint32_t p : door_pieces_) counted[p] = 1;
    std::vector<Frame> stack{{home_, -1, 0}};
    std::uint32_t count = 0;
    while (!stack.empty()) {
      Frame& frame = stack.back();
      const Node at = frame.node;
      if (frame.next == 0) {
        order[at] = low[at] = ++count;
        beyond[at].has_end = at == end_;
      }
      if (frame.next < at_node_[at].size()) {
        const std::size_t edge = at_node_[at][frame.next++];
        if (static_cast<std::int64_t>(edge) == frame.edge) continue;
        const Node other = edges_[edge].a == at ? edges_[edge].b : edges_[edge].a;
        if (order[other] != 0) {
          low[at] = std::min(low[at], order[other]);
          count_piece(edge, beyond[at], counted);
        } else {
          stack.push_back({other, static_cast<std::int64_t>(edge), 0});
        }
        continue;
      }
      const Frame done = frame;
      stack.pop_back();
      if (stack.empty()) break;
      const auto edge = static_cast<std::size_t>(done.edge);
      count_piece(edge, beyond[at], counted);
      if (low[at] == order[at]) bridges_.emplace_back(edge, beyond[at]);
      const Node before = stack.back().node;
      low[before] = std::min(low[before], low[at]);
      beyond[before].add(beyond[at]);
    }
    all_ = beyond[home_];
    for (const std::uint32_t p : door_pieces_) all_.add(of_piece_[p]);
  }

  /// Each piece is counted once, at the edge that is met first.
  void count_piece(std::size_t edge, Side& side, std::vector<std::uint8_t>& counted) const {
    const std::uint32_t p = edges_[edge].piece;
    if (counted[p]++ == 0) side.add(of_piece_[p]);
  }

  /// All chances of some want with a number lie there. Of junctions alone: a run or a roadside chance at
  /// the door is no candidate, yet may be passed.
  [[nodiscard]] bool needs(const Side& beyond) const {
    const auto& wants = hunt_.ground.wish.wants;
    for (std::size_t w = 0; w < wants.size(); ++w)
      if (road::form_of(wants[w].kind) == road::KindForm::junction &&
          wants[w].count.value_or(0) > 0 && all_.candidates[w] > 0 &&
          beyond.candidates[w] == all_.candidates[w])
        return true;
    return false;
  }

  /// Metres driven again by who fills the minutes without what lies beyond the bridge; 0: none need be.
  [[nodiscard]] double metres_again_without(const Side& beyond) const {
    // Minutes spent at stops need no road.
    if (hunt_.with_stops) return 0;
    const double lacking_ms = static_cast<double>(hunt_.low_ms) - (all_.free_ms - beyond.free_ms);
    return lacking_ms <= 0 || all_.slowest_ms_per_m <= 0 ? 0 : lacking_ms / all_.slowest_ms_per_m;
  }

  const Hunt& hunt_;
  const Node home_ = 0;
  Node end_ = 0;
  std::map<std::size_t, Node> nodes_;
  std::vector<Edge> edges_;
  std::vector<std::vector<std::size_t>> at_node_;
  std::vector<Side> of_piece_;
  std::vector<std::pair<std::size_t, Side>> bridges_;
  std::vector<std::uint32_t> door_pieces_;
  Side all_;
};

}  // namespace

double forced_twice_m(const Hunt& hunt) {
  return BridgeSearch(hunt).forced_m();
}

}  // namespace loopwright::find
