// 1. Pieces of a name are joined when they share a node; while more than one group is left, also when
//    an end of one lies within 500 m of another: a street may be cut by a junction, a square or a
//    mapper's slip, but two streets of one name that near would confuse the post (ours; the distance
//    is this project's definition of "far apart").
// 2. The middle: centre of all pieces weighted by length, then the nearest point on one of them.
#include "place/streets.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <numeric>

#include "loopwright/base/point_between.hpp"

namespace loopwright::place {
namespace {

constexpr double one_street_within_m = 500;

/// Rows that are joined into groups (union-find with path halving).
class Groups {
 public:
  explicit Groups(std::size_t count) : parent_(count), count_(count) {
    std::iota(parent_.begin(), parent_.end(), std::size_t{0});
  }
  std::size_t first_of(std::size_t row) {
    while (parent_[row] != row) row = parent_[row] = parent_[parent_[row]];
    return row;
  }
  void join(std::size_t a, std::size_t b) {
    a = first_of(a), b = first_of(b);
    if (a == b) return;
    parent_[std::max(a, b)] = std::min(a, b);
    --count_;
  }
  [[nodiscard]] std::size_t count() const { return count_; }

 private:
  std::vector<std::size_t> parent_;
  std::size_t count_;
};

bool may_drive(const road::Roads& roads, PieceId piece) {
  return roads.drivable(StretchId(piece, false)) || roads.drivable(StretchId(piece, true));
}

void join_at_nodes(const road::Roads& roads, const std::vector<PieceId>& pieces, Groups& groups) {
  std::map<NodeId, std::size_t> row_at;
  for (std::size_t row = 0; row < pieces.size(); ++row) {
    const road::Piece& piece = roads.pieces[pieces[row].index()];
    for (const NodeId end : {piece.a, piece.b}) {
      groups.join(row, row_at.try_emplace(end, row).first->second);
    }
  }
}

void join_near_end(const road::Roads& roads, const std::vector<PieceId>& pieces, std::size_t row,
                   Groups& groups) {
  const road::Piece& piece = roads.pieces[pieces[row].index()];
  for (const NodeId end : {piece.a, piece.b}) {
    const Point at = roads.nodes[end.index()].at;
    for (const PieceId other : road::pieces_near(roads, at, one_street_within_m)) {
      const auto found = std::ranges::lower_bound(pieces, other);
      if (found == pieces.end() || *found != other) continue;
      if (nearest_on_line(roads.shape_of(other), at).off_m > one_street_within_m) continue;
      groups.join(row, static_cast<std::size_t>(found - pieces.begin()));
    }
  }
}

std::vector<PieceId> drivable_or_all(const road::Roads& roads, const Street& street) {
  std::vector<PieceId> pieces;
  std::ranges::copy_if(street.pieces, std::back_inserter(pieces),
                       [&](PieceId piece) { return may_drive(roads, piece); });
  return pieces.empty() ? street.pieces : pieces;
}

Point centre_of(const road::Roads& roads, const std::vector<PieceId>& pieces) {
  double lat = 0, lon = 0, all_m = 0;
  Point first;
  for (const PieceId piece : pieces) {
    const double length = std::max(roads.pieces[piece.index()].length_m, 1e-3);
    const Point middle = point_along(roads.shape_of(piece), length / 2);
    if (all_m == 0) first = middle;
    lat += middle.lat() * length, all_m += length;
    lon += static_cast<double>(lon_beside_e7(middle, first)) * 1e-7 * length;
  }
  return point_of_turn(std::llround(lat / all_m * 1e7), std::llround(lon / all_m * 1e7));
}

}  // namespace

std::vector<Street> streets_of(const road::Roads& roads, const Name& name) {
  std::vector<PieceId> pieces;
  for (const std::uint32_t row : name.rows) {
    if (row < roads.pieces.size()) pieces.emplace_back(std::size_t{row});
  }
  std::ranges::sort(pieces);
  Groups groups(pieces.size());
  join_at_nodes(roads, pieces, groups);
  for (std::size_t row = 0; row < pieces.size() && groups.count() > 1; ++row) {
    join_near_end(roads, pieces, row, groups);
  }
  std::map<std::size_t, Street> streets;
  for (std::size_t row = 0; row < pieces.size(); ++row) {
    Street& street = streets[groups.first_of(row)];
    if (street.pieces.empty()) {
      street.name = roads.text(roads.pieces[pieces[row].index()].name);
    }
    street.pieces.push_back(pieces[row]);
  }
  std::vector<Street> found;
  for (auto& [first, street] : streets) found.push_back(std::move(street));
  return found;
}

Point middle_of(const road::Roads& roads, const Street& street) {
  const std::vector<PieceId> pieces = drivable_or_all(roads, street);
  const Point centre = centre_of(roads, pieces);
  Foot nearest{0, std::numeric_limits<double>::infinity(), centre};
  for (const PieceId piece : pieces) {
    const Foot foot = nearest_on_line(roads.shape_of(piece), centre);
    if (foot.off_m < nearest.off_m) nearest = foot;
  }
  return nearest.at;
}

std::vector<Point> shape_of(const road::Roads& roads, const Street& street) {
  std::vector<Point> points;
  for (const PieceId piece : street.pieces) {
    const auto shape = roads.shape_of(piece);
    points.insert(points.end(), shape.begin(), shape.end());
  }
  return points;
}

std::vector<NodeId> nodes_of(const road::Roads& roads, const Street& street) {
  std::vector<NodeId> nodes;
  for (const PieceId piece : street.pieces) {
    nodes.push_back(roads.pieces[piece.index()].a);
    nodes.push_back(roads.pieces[piece.index()].b);
  }
  std::ranges::sort(nodes);
  nodes.erase(std::unique(nodes.begin(), nodes.end()), nodes.end());
  return nodes;
}

bool is_near(const road::Roads& roads, const Street& street, Point at, double within_m) {
  return std::ranges::any_of(road::pieces_near(roads, at, within_m), [&](PieceId piece) {
    return std::ranges::binary_search(street.pieces, piece) &&
           nearest_on_line(roads.shape_of(piece), at).off_m <= within_m;
  });
}

std::vector<std::string> streets_meeting(const road::Roads& roads, const Street& street) {
  std::vector<std::string> names;
  for (const NodeId node : nodes_of(roads, street)) {
    for (const StretchId stretch : roads.leaving(node)) {
      const std::string name(roads.text(roads.piece(stretch).name));
      if (name.empty() || name == street.name) continue;
      if (std::ranges::find(names, name) == names.end()) names.push_back(name);
    }
  }
  return names;
}

}  // namespace loopwright::place
