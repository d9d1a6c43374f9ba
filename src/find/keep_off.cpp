// Method:
//   1. One point within `junction_m` of junctions: their nodes. Any other: the nearest road, and from its ends
//      on all road of its name, as long as the next piece ends within `gap_m`.
//   2. An outline: every piece near it with a point inside, or a part that crosses it. Degrees are taken as
//      plane, as a map shows them.
//   3. Hours as with a note that says never (road/note.hpp).
#include "find/keep_off.hpp"

#include <algorithm>
#include <cmath>

#include "find/turn_bans.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/point.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::find {

namespace {

// Ours; the proof has the same in src/proof/keep_off.cpp. A street counts as one over such a gap (as for
// names: DEVELOPERS.md).
constexpr double junction_m = 5, reach_m = 150, gap_m = 500;

std::string_view name_of(const road::Roads& roads, PieceId piece) {
  const road::Piece& row = roads.pieces[piece.index()];
  const std::string_view name = roads.text(row.name);
  return name.empty() ? roads.text(row.ref) : name;
}

Point end_of(const road::Roads& roads, PieceId piece, bool last) {
  const road::Piece& row = roads.pieces[piece.index()];
  return roads.nodes[(last ? row.b : row.a).index()].at;
}

/// Three roads or more meet; driveways are none.
bool is_junction(const road::Roads& roads, NodeId node) {
  const auto away = roads.leaving(node);
  return std::count_if(away.begin(), away.end(), [&](StretchId stretch) {
           return (roads.piece(stretch).flags & road::piece_flag::minor_service) == 0;
         }) >= 3;
}

std::vector<NodeId> junctions_at(const road::Roads& roads, Point at) {
  std::vector<NodeId> nodes;
  for (const PieceId piece : road::pieces_near(roads, at, junction_m))
    for (const NodeId node : {roads.pieces[piece.index()].a, roads.pieces[piece.index()].b})
      if (is_junction(roads, node) && distance_m(at, roads.nodes[node.index()].at) <= junction_m)
        nodes.push_back(node);
  std::sort(nodes.begin(), nodes.end());
  nodes.erase(std::unique(nodes.begin(), nodes.end()), nodes.end());
  return nodes;
}

PieceId nearest_piece(const road::Roads& roads, Point at) {
  PieceId nearest;
  double nearest_m = reach_m;
  for (const PieceId piece : road::pieces_near(roads, at, reach_m)) {
    const double off_m = nearest_on_line(roads.shape_of(piece), at).off_m;
    if (off_m < nearest_m) nearest = piece, nearest_m = off_m;
  }
  return nearest;
}

/// Some end of one lies within the gap of some end of the other.
bool hang_together(const road::Roads& roads, PieceId one, PieceId other) {
  for (const bool a : {false, true})
    for (const bool b : {false, true})
      if (distance_m(end_of(roads, one, a), end_of(roads, other, b)) <= gap_m) return true;
  return false;
}

std::vector<PieceId> street_of(const road::Roads& roads, PieceId first) {
  std::vector<PieceId> street{first};
  const std::string_view name = name_of(roads, first);
  if (name.empty()) return street;
  for (std::size_t next = 0; next < street.size(); ++next) {
    const PieceId at = street[next];
    for (const bool last : {false, true})
      for (const PieceId piece : road::pieces_near(roads, end_of(roads, at, last), gap_m))
        if (name_of(roads, piece) == name && hang_together(roads, at, piece) &&
            std::find(street.begin(), street.end(), piece) == street.end())
          street.push_back(piece);
  }
  std::sort(street.begin(), street.end());
  return street;
}

/// Twice the area of the triangle, positive when it is gone round against the clock.
double turn_of(Point a, Point b, Point c) {
  return (static_cast<double>(b.lon_e7) - a.lon_e7) * (static_cast<double>(c.lat_e7) - a.lat_e7) -
         (static_cast<double>(b.lat_e7) - a.lat_e7) * (static_cast<double>(c.lon_e7) - a.lon_e7);
}

bool is_inside(const std::vector<Point>& outline, Point at) {
  bool inside = false;
  for (std::size_t i = 0, before = outline.size() - 1; i < outline.size(); before = i++) {
    const Point a = outline[before], b = outline[i];
    if ((a.lat_e7 > at.lat_e7) == (b.lat_e7 > at.lat_e7)) continue;
    const bool left = turn_of(a, b, at) > 0;
    if (left == (b.lat_e7 > a.lat_e7)) inside = !inside;
  }
  return inside;
}

bool cross(Point a, Point b, Point c, Point d) {
  return (turn_of(a, b, c) > 0) != (turn_of(a, b, d) > 0) &&
         (turn_of(c, d, a) > 0) != (turn_of(c, d, b) > 0);
}

bool touches(const std::vector<Point>& outline, std::span<const Point> line) {
  for (const Point at : line)
    if (is_inside(outline, at)) return true;
  for (std::size_t k = 1; k < line.size(); ++k)
    for (std::size_t i = 0, before = outline.size() - 1; i < outline.size(); before = i++)
      if (cross(line[k - 1], line[k], outline[before], outline[i])) return true;
  return false;
}

std::vector<PieceId> pieces_in(const road::Roads& roads, const std::vector<Point>& outline) {
  double radius_m = 0;
  for (const Point corner : outline)
    radius_m = std::max(radius_m, distance_m(outline.front(), corner));
  std::vector<PieceId> pieces;
  for (const PieceId piece : road::pieces_near(roads, outline.front(), radius_m + 1))
    if (touches(outline, roads.shape_of(piece))) pieces.push_back(piece);
  return pieces;
}

void refuse_doors_on(const KeptOff& kept, const wish::KeepOff& keep_off,
                     const std::vector<Door>& doors) {
  for (const Door& door : doors)
    if (std::binary_search(kept.pieces.begin(), kept.pieces.end(), door.piece))
      throw UsageError("--keep-off '" + keep_off.name + "': " + door.name +
                       " itself lies there; leave it out, or give hours outside the lesson");
}

}  // namespace

KeptOff kept_off(const road::Roads& roads, const wish::KeepOff& keep_off) {
  if (keep_off.outline.size() > 1) return {pieces_in(roads, keep_off.outline), {}};
  const Point at = keep_off.outline.front();
  if (auto nodes = junctions_at(roads, at); !nodes.empty()) return {{}, std::move(nodes)};
  const PieceId nearest = nearest_piece(roads, at);
  if (!nearest.known()) return {};
  return {street_of(roads, nearest), {}};
}

bool holds_in_lesson(const wish::Wish& wish, const wish::KeepOff& keep_off,
                     const hours::Setting& setting) {
  const road::Note never{.says = road::NoteKind::never, .hours = keep_off.hours};
  return road::may_shut(never, wish::lesson_time(wish, setting));
}

void apply_keep_offs(const road::Roads& roads, const wish::Wish& wish,
                     const hours::Setting& setting, const std::vector<Door>& doors,
                     reach::Costs& costs) {
  for (const wish::KeepOff& keep_off : wish.keep_offs) {
    if (!holds_in_lesson(wish, keep_off, setting)) continue;
    const KeptOff kept = kept_off(roads, keep_off);
    refuse_doors_on(kept, keep_off, doors);
    for (const PieceId piece : kept.pieces) costs.shut(piece);
    if (kept.nodes.empty()) continue;
    TurnBans bans(roads, costs);
    for (const NodeId node : kept.nodes)
      for (const StretchId away : roads.leaving(node))
        bans.shut_all_from(StretchId(away.piece(), !away.against()));
  }
}

}  // namespace loopwright::find
