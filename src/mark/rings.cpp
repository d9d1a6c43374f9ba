// 1. Every piece of a way with junction=roundabout or circular is driven one way: as its one-way
//    rule says. A circular road open both ways is none and is reported.
// 2. After each such stretch comes the one that leaves its end node. Where rings touch, several do;
//    the ring goes on by the one that bends most towards its middle (right, where one drives on the
//    left). Layers don't matter: ways that share a node are joined there, on a bridge or not.
// 3. Following "comes after" from each stretch leads into a cycle or to an end; the cycles are the
//    rings. Stretches in no cycle are open arcs: a mapping error, or cut by the extract's border.
// 4. The middle is the mean of the shape and the diameter twice its mean distance from it, weighted
//    by length; the sign of the area tells the sense of rotation.
// Source: OSM wiki, pages Tag:junction=roundabout and Tag:junction=circular.
#include "rings.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "loopwright/base/point_between.hpp"
#include "loopwright/mark/rules.hpp"
#include "passing.hpp"

namespace loopwright::mark {
namespace {

constexpr std::string_view open_ring = "roundabout isn't closed";
constexpr std::string_view two_way_ring = "circular road is open both ways";

bool is_ring_tagged(const Tags& tags) {
  return tags.is("junction", "roundabout") || tags.is("junction", "circular");
}

class Finder {
 public:
  Finder(Draft& draft, const road::Roads& roads) : draft_(draft), roads_(roads) {
    for (std::size_t row = 0; row < roads.pieces.size(); ++row) take(PieceId{row});
  }

  std::vector<std::vector<StretchId>> find() {
    for (const auto& [stretch, after] : after_) follow(stretch);
    report_open();
    return std::move(cycles_);
  }

 private:
  enum class Mark { none, on_path, done, in_cycle };
  struct Row {
    StretchId next;
    Mark mark = Mark::none;
  };

  void take(PieceId piece);
  StretchId next_of(StretchId stretch) const;
  void follow(StretchId start);
  void report_open();

  Draft& draft_;
  const road::Roads& roads_;
  std::map<StretchId, Row> after_;  // every ring stretch, in the direction it is driven
  std::vector<std::vector<StretchId>> cycles_;
};

void Finder::take(PieceId piece) {
  const road::Piece& row = roads_.pieces[piece.index()];
  const Tags& tags = draft_.way_tags(piece);
  if (!is_ring_tagged(tags)) return;
  const OneWay one_way = one_way_of(tags, row.road_class);
  if (one_way.along == one_way.against) {
    if (row.from_index == 0) draft_.report.odd(way_object(row.way), two_way_ring);
    return;
  }
  after_.emplace(StretchId(piece, one_way.against), Row{});
}

StretchId Finder::next_of(StretchId stretch) const {
  StretchId best;
  double most = -361;
  const double inward = draft_.side() == Side::left ? 1 : -1;
  for (const StretchId next : roads_.leaving(roads_.to_node(stretch))) {
    if (!after_.contains(next)) continue;
    const double bend = inward * heading_change_deg(road::bearing_in_deg(roads_, stretch),
                                                    road::bearing_out_deg(roads_, next));
    if (bend > most) best = next, most = bend;
  }
  return best;
}

void Finder::follow(StretchId start) {
  std::vector<StretchId> path;
  StretchId at = start;
  while (at.known() && after_.at(at).mark == Mark::none) {
    Row& row = after_.at(at);
    row.mark = Mark::on_path;
    path.push_back(at);
    at = row.next = next_of(at);
  }
  const bool closes = at.known() && after_.at(at).mark == Mark::on_path;
  const auto cycle = closes ? std::ranges::find(path, at) : path.end();
  for (const StretchId s : path) after_.at(s).mark = Mark::done;
  for (auto s = cycle; s != path.end(); ++s) after_.at(*s).mark = Mark::in_cycle;
  if (closes) cycles_.emplace_back(cycle, path.end());
}

void Finder::report_open() {
  std::int64_t last_way = 0;  // rows are in order of way
  for (const auto& [stretch, row] : after_) {
    const std::int64_t way = roads_.piece(stretch).way;
    if (row.mark == Mark::in_cycle || way == last_way) continue;
    draft_.report.odd(way_object(way), open_ring);
    last_way = way;
  }
}

double area_of(const std::vector<Point>& shape) {
  double area = 0;  // east to the right, north up: negative when clockwise
  for (std::size_t i = 1; i < shape.size(); ++i) {
    const auto x0 = static_cast<double>(lon_difference_e7(shape[0], shape[i - 1]));
    const double y0 = shape[i - 1].lat_e7 - shape[0].lat_e7;
    const auto x1 = static_cast<double>(lon_difference_e7(shape[0], shape[i]));
    const double y1 = shape[i].lat_e7 - shape[0].lat_e7;
    area += x0 * y1 - x1 * y0;
  }
  return area;
}

Point middle_of_line(const std::vector<Point>& shape) {
  double length = 0;
  double lat = 0;
  double lon = 0;
  const auto lon_of = [&](Point at) {
    return static_cast<double>(lon_beside_e7(at, shape.front())) * 1e-7;
  };
  for (std::size_t i = 1; i < shape.size(); ++i) {
    const double metres = distance_m(shape[i - 1], shape[i]);
    length += metres;
    lat += metres * (shape[i - 1].lat() + shape[i].lat()) / 2;
    lon += metres * (lon_of(shape[i - 1]) + lon_of(shape[i])) / 2;
  }
  if (length == 0) return shape.front();
  return point_of_turn(std::llround(lat / length * 1e7), std::llround(lon / length * 1e7));
}

double diameter_of(const std::vector<Point>& shape, Point middle) {
  double length = 0;
  double sum = 0;
  for (std::size_t i = 1; i < shape.size(); ++i) {
    const double metres = distance_m(shape[i - 1], shape[i]);
    length += metres;
    sum += metres * (distance_m(middle, shape[i - 1]) + distance_m(middle, shape[i])) / 2;
  }
  return length > 0 ? 2 * sum / length : 0;
}

Ring ring_of(const road::Roads& roads, std::vector<StretchId> cycle) {
  const auto first = std::ranges::min_element(
      cycle, {}, [&](StretchId s) { return std::pair(roads.from_node(s), s); });
  std::rotate(cycle.begin(), first, cycle.end());
  Ring ring;
  ring.least_way = roads.piece(cycle.front()).way;
  for (const StretchId s : cycle) {
    ring.least_way = std::min(ring.least_way, roads.piece(s).way);
    const auto shape = roads.shape_of(s.piece());
    ring.shape.insert(ring.shape.end(), shape.begin(), shape.end());
    if (s.against()) std::reverse(ring.shape.end() - std::ssize(shape), ring.shape.end());
  }
  ring.stretches = std::move(cycle);
  ring.middle = middle_of_line(ring.shape);
  ring.diameter_m = diameter_of(ring.shape, ring.middle);
  ring.is_clockwise = area_of(ring.shape) < 0;
  return ring;
}

}  // namespace

bool Ring::holds(Point point) const {
  bool inside = false;  // crossings of the line to the east
  for (std::size_t i = 1; i < shape.size(); ++i) {
    const Point a = shape[i - 1];
    const Point b = shape[i];
    if ((a.lat_e7 > point.lat_e7) == (b.lat_e7 > point.lat_e7)) continue;
    const double share = (point.lat() - a.lat()) / (b.lat() - a.lat());
    if (point.lon() < a.lon() + share * (b.lon() - a.lon())) inside = !inside;
  }
  return inside;
}

std::vector<Ring> find_rings(Draft& draft, const road::Roads& roads) {
  std::vector<Ring> rings;
  for (auto& cycle : Finder(draft, roads).find()) rings.push_back(ring_of(roads, std::move(cycle)));
  std::ranges::sort(rings, {}, [](const Ring& r) { return std::pair(r.least_way, r.middle); });
  return rings;
}

}  // namespace loopwright::mark
