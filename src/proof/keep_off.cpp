// Method, for each keep-off whose hours touch the lesson, or can't be told for it:
// 1. An outline: no piece driven has a point inside it or a part that crosses it.
// 2. A point at a junction, within 5 m: the drive doesn't go through that node.
// 3. Any other point: the nearest road within 150 m, and all road of its name that hangs together with it
//    over gaps of up to 500 m. Gathered from the whole area here, by spreading over pieces of the name.
// What must be taken is looked up in the same way.
#include <algorithm>
#include <cmath>

#include "loopwright/base/point.hpp"
#include "loopwright/hours/timetable.hpp"
#include "loopwright/wish/lesson.hpp"
#include "proof/checks.hpp"

namespace loopwright::proof {
namespace {

constexpr double junction_within_m = 5, road_within_m = 150, gap_m = 500;

bool holds_then(const Drive& drive, const wish::KeepOff& keep_off) {
  if (keep_off.hours.empty()) return true;
  const road::LessonTime lesson = wish::lesson_time(drive.wish, drive.setting);
  const hours::Timetable hours(keep_off.hours);
  return hours.through(lesson.from, lesson.to, drive.setting).in_force != hours::Tri::no;
}

// --- outlines ----------------------------------------------------------------------------------

struct Flat {
  double x = 0, y = 0;
};
Flat flat(Point at) {
  return {static_cast<double>(at.lon_e7), static_cast<double>(at.lat_e7)};
}

/// Positive when c lies to the left of the way from a to b.
double left_of(Flat a, Flat b, Flat c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/// By the edges that a ray to the east meets: an odd number inside.
bool contains(const std::vector<Point>& outline, Point at) {
  const Flat p = flat(at);
  int met = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    Flat low = flat(outline[i]), high = flat(outline[(i + 1) % outline.size()]);
    if (low.y > high.y) std::swap(low, high);
    if (low.y <= p.y && p.y < high.y && left_of(low, high, p) > 0) ++met;
  }
  return met % 2 == 1;
}

bool meet(Flat a, Flat b, Flat c, Flat d) {
  const bool parted = (left_of(a, b, c) > 0) != (left_of(a, b, d) > 0);
  return parted && (left_of(c, d, a) > 0) != (left_of(c, d, b) > 0);
}

bool lies_in(const std::vector<Point>& outline, std::span<const Point> line) {
  if (std::any_of(line.begin(), line.end(), [&](Point at) { return contains(outline, at); }))
    return true;
  for (std::size_t i = 0; i < outline.size(); ++i)
    for (std::size_t k = 1; k < line.size(); ++k)
      if (meet(flat(outline[i]), flat(outline[(i + 1) % outline.size()]), flat(line[k - 1]),
               flat(line[k])))
        return true;
  return false;
}

// --- points ------------------------------------------------------------------------------------

std::string_view known_as(const road::Roads& roads, const road::Piece& piece) {
  return piece.name.known() && !roads.text(piece.name).empty() ? roads.text(piece.name)
                                                               : roads.text(piece.ref);
}

bool is_junction(const road::Roads& roads, NodeId node) {
  int roads_met = 0;
  for (const StretchId away : roads.leaving(node))
    if ((roads.piece(away).flags & road::piece_flag::minor_service) == 0) ++roads_met;
  return roads_met > 2;
}

bool is_at(const road::Roads& roads, NodeId node, Point at) {
  return is_junction(roads, node) &&
         distance_m(at, roads.nodes[node.index()].at) <= junction_within_m;
}

/// Some junction lies at the point.
bool at_junction(const road::Roads& roads, Point at) {
  for (const PieceId piece : road::pieces_near(roads, at, junction_within_m)) {
    const road::Piece& row = roads.pieces[piece.index()];
    if (is_at(roads, row.a, at) || is_at(roads, row.b, at)) return true;
  }
  return false;
}

PieceId road_at(const road::Roads& roads, Point at) {
  PieceId nearest;
  double least_m = road_within_m;
  for (const PieceId piece : road::pieces_near(roads, at, road_within_m)) {
    const double off_m = nearest_on_line(roads.shape_of(piece), at).off_m;
    if (off_m < least_m) nearest = piece, least_m = off_m;
  }
  return nearest;
}

double gap_between(const road::Roads& roads, PieceId one, PieceId other) {
  const road::Piece& a = roads.pieces[one.index()];
  const road::Piece& b = roads.pieces[other.index()];
  double least = distance_m(roads.nodes[a.a.index()].at, roads.nodes[b.a.index()].at);
  least = std::min(least, distance_m(roads.nodes[a.a.index()].at, roads.nodes[b.b.index()].at));
  least = std::min(least, distance_m(roads.nodes[a.b.index()].at, roads.nodes[b.a.index()].at));
  return std::min(least, distance_m(roads.nodes[a.b.index()].at, roads.nodes[b.b.index()].at));
}

std::vector<PieceId> street_at(const road::Roads& roads, Point at) {
  const PieceId first = road_at(roads, at);
  if (!first.known()) return {};
  std::vector<PieceId> street{first}, others;
  const std::string_view name = known_as(roads, roads.pieces[first.index()]);
  if (name.empty()) return street;
  for (std::size_t row = 0; row < roads.pieces.size(); ++row)
    if (row != first.index() && known_as(roads, roads.pieces[row]) == name)
      others.push_back(PieceId{row});
  for (std::size_t next = 0; next < street.size(); ++next) {
    const PieceId from = street[next];
    const auto joined = std::stable_partition(others.begin(), others.end(), [&](PieceId other) {
      return gap_between(roads, from, other) > gap_m;
    });
    const std::vector<PieceId> found(joined, others.end());
    street.insert(street.end(), found.begin(), found.end());
    others.resize(others.size() - found.size());
  }
  return street;
}

bool nothing_on(const Drive& drive, const wish::KeepOff& keep_off,
                const std::vector<PieceId>& pieces, Claims& claims) {
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) {
    const PieceId piece = drive.stretches[i].piece();
    if (!claims.hold(std::find(pieces.begin(), pieces.end(), piece) == pieces.end(), [&] {
          return at_stretch(drive, i) + ": it is on '" + keep_off.name +
                 "', which the wish keeps off";
        }))
      return false;
  }
  return true;
}

bool nothing_through(const Drive& drive, const wish::KeepOff& keep_off, Claims& claims) {
  const Point at = keep_off.outline.front();
  for (std::size_t i = 0; i + 1 < drive.stretches.size(); ++i) {
    const NodeId node = drive.roads.to_node(drive.stretches[i]);
    if (!claims.hold(!is_at(drive.roads, node, at), [&] {
          return at_stretch(drive, i) + ": it goes through '" + keep_off.name +
                 "', which the wish keeps off";
        }))
      return false;
  }
  return true;
}

bool nothing_inside(const Drive& drive, const wish::KeepOff& keep_off, Claims& claims) {
  for (std::size_t i = 0; i < drive.stretches.size(); ++i)
    if (!claims.hold(!lies_in(keep_off.outline, drive.roads.shape_of(drive.stretches[i].piece())),
                     [&] {
                       return at_stretch(drive, i) + ": it lies in the area '" + keep_off.name +
                              "', which the wish keeps off";
                     }))
      return false;
  return true;
}

bool keep_off_holds(const Drive& drive, const wish::KeepOff& keep_off, Claims& claims) {
  if (!claims.hold(!keep_off.outline.empty(),
                   [] { return std::string("wish: a place to keep off has no point"); }))
    return false;
  if (!holds_then(drive, keep_off)) return true;
  if (keep_off.outline.size() > 1) return nothing_inside(drive, keep_off, claims);
  const Point at = keep_off.outline.front();
  if (at_junction(drive.roads, at)) return nothing_through(drive, keep_off, claims);
  return nothing_on(drive, keep_off, street_at(drive.roads, at), claims);
}

}  // namespace

namespace {

bool is_taken(const Drive& drive, const wish::Take& take) {
  if (at_junction(drive.roads, take.at)) {
    for (std::size_t i = 0; i + 1 < drive.stretches.size(); ++i)
      if (is_at(drive.roads, drive.roads.to_node(drive.stretches[i]), take.at)) return true;
    return false;
  }
  const std::vector<PieceId> street = street_at(drive.roads, take.at);
  return std::ranges::any_of(drive.stretches, [&](StretchId stretch) {
    return std::ranges::find(street, stretch.piece()) != street.end();
  });
}

/// What is told as not taken is asked for, and the first loop doesn't take it.
bool not_taken_holds(std::span<const Drive> drives, const wish::Answer& answer,
                     const std::string& name, Claims& claims) {
  const auto& takes = answer.wish.takes;
  const auto take = std::ranges::find(takes, name, &wish::Take::name);
  return claims.hold(take != takes.end() && (drives.empty() || !is_taken(drives.front(), *take)),
                     [&] { return "shortfall: '" + name + "' is taken, or needn't be"; });
}

}  // namespace

bool takes_are_told(std::span<const Drive> drives, const wish::Answer& answer, Claims& claims) {
  const std::vector<std::string> none;
  const auto& told = answer.shortfall ? answer.shortfall->not_taken : none;
  for (const std::string& name : told)
    if (!not_taken_holds(drives, answer, name, claims)) return false;
  for (const Drive& drive : drives)
    for (const wish::Take& take : drive.wish.takes) {
      const bool is_told = std::ranges::find(told, take.name) != told.end();
      if (!claims.hold(is_told || is_taken(drive, take), [&] {
            return at_loop(drive) + ": it doesn't take '" + take.name +
                   "', and the shortfall doesn't say so";
          }))
        return false;
    }
  return true;
}

bool keep_offs_hold(const Drive& drive, Claims& claims) {
  for (const wish::KeepOff& keep_off : drive.wish.keep_offs)
    if (!keep_off_holds(drive, keep_off, claims)) return false;
  return true;
}

}  // namespace loopwright::proof
