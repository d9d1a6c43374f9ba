// 1. Both points go to the nearest road (room reach snaps them). On one piece the line is a part of
//    its shape.
// 2. Else a shortest-way search by length from the first piece's two ends over the pieces, whichever
//    way they are driven, until the cheaper end of the last one is settled. Notes are short, so it
//    looks no farther than 5 km.
#include "command/road_between.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <queue>

#include "command/print.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/road/note.hpp"

namespace loopwright::command {
namespace {

constexpr double farthest_m = 5000;

using reach::Snap;

Snap snap(const road::Roads& roads, Point at) {
  const auto found = reach::snap_home(roads, at, road::note_reach_m);
  if (found) return *found;
  throw UsageError(degrees(at) + ": no road a learner may drive within " +
                   fixed(road::note_reach_m, 0) + " m");
}

/// Points of a piece between two places on it, in that order.
std::vector<Point> part_of(const road::Roads& roads, PieceId piece, double from_m, double to_m) {
  const auto shape = roads.shape_of(piece);
  const auto [low, high] = std::minmax(from_m, to_m);
  std::vector<Point> line{point_along(shape, low)};
  double along = 0;
  for (std::size_t i = 1; i < shape.size(); ++i) {
    along += distance_m(shape[i - 1], shape[i]);
    if (along > low && along < high) line.push_back(shape[i]);
  }
  line.push_back(point_along(shape, high));
  if (from_m > to_m) std::ranges::reverse(line);
  return line;
}

/// Where the search stands: metres to a node, and the stretch it was reached by.
struct Reached {
  double metres = 0;
  StretchId by;  ///< none: an end of the first piece
};

class Search {
 public:
  explicit Search(const road::Roads& roads) : roads_(roads) {}

  void from(const Snap& snap) {
    const road::Piece& piece = roads_.pieces[snap.piece.index()];
    offer(piece.a, {snap.along_m, {}});
    offer(piece.b, {piece.length_m - snap.along_m, {}});
    while (!open_.empty()) {
      const auto [metres, node] = open_.top();
      open_.pop();
      if (metres > reached_.at(node).metres || metres > farthest_m) continue;
      for (const StretchId s : roads_.leaving(node)) {
        if (!roads_.drivable(s) && !roads_.drivable(s.back())) continue;
        offer(roads_.to_node(s), {metres + roads_.piece(s).length_m, s});
      }
    }
  }
  [[nodiscard]] const Reached* at(NodeId node) const {
    const auto found = reached_.find(node);
    return found == reached_.end() ? nullptr : &found->second;
  }
  /// Stretches driven to a node, in order.
  [[nodiscard]] std::vector<StretchId> way_to(NodeId node) const {
    std::vector<StretchId> way;
    for (const Reached* r = at(node); r->by.known(); r = at(roads_.from_node(r->by))) {
      way.push_back(r->by);
    }
    std::ranges::reverse(way);
    return way;
  }

 private:
  void offer(NodeId node, const Reached& reached) {
    const auto [at, is_new] = reached_.try_emplace(node, reached);
    if (!is_new && at->second.metres <= reached.metres) return;
    at->second = reached;
    open_.emplace(reached.metres, node);
  }

  using Open = std::pair<double, NodeId>;
  const road::Roads& roads_;
  std::map<NodeId, Reached> reached_;
  std::priority_queue<Open, std::vector<Open>, std::greater<>> open_;
};

void append(std::vector<Point>& line, const std::vector<Point>& part) {
  for (const Point at : part) {
    if (line.empty() || line.back() != at) line.push_back(at);
  }
}

}  // namespace

std::vector<Point> road_between(const road::Roads& roads, Point from, Point to) {
  const Snap first = snap(roads, from), last = snap(roads, to);
  if (first.piece == last.piece) return part_of(roads, first.piece, first.along_m, last.along_m);
  Search search(roads);
  search.from(first);
  const road::Piece& goal = roads.pieces[last.piece.index()];
  const Reached *a = search.at(goal.a), *b = search.at(goal.b);
  if (a == nullptr || b == nullptr) {
    throw UsageError(degrees(to) + ": no road from " + degrees(from) + " within 5 km");
  }
  const bool by_a = a->metres + last.along_m <= b->metres + goal.length_m - last.along_m;
  const std::vector<StretchId> way = search.way_to(by_a ? goal.a : goal.b);
  const road::Piece& start = roads.pieces[first.piece.index()];
  const NodeId out = way.empty() ? (by_a ? goal.a : goal.b) : roads.from_node(way.front());
  std::vector<Point> line;
  append(line, part_of(roads, first.piece, first.along_m, out == start.a ? 0 : start.length_m));
  for (const StretchId s : way) {
    const double length = roads.piece(s).length_m;
    append(line, s.against() ? part_of(roads, s.piece(), length, 0)
                             : part_of(roads, s.piece(), 0, length));
  }
  append(line, part_of(roads, last.piece, by_a ? 0 : goal.length_m, last.along_m));
  return line;
}

}  // namespace loopwright::command
