// 1. A ring is drawn clockwise as 24 points.
// 2. A road that ends at a ring is cut where it meets it; one that forks parts before an island, into
//    a one-way road in and one out.
// 3. A dual carriageway is two one-way roads, each to the left of its middle line.
#include <cmath>
#include <numbers>

#include "county/draft.hpp"
#include "county/joining.hpp"

namespace loopwright::county {
namespace {

constexpr int ring_points = 24;
constexpr double carriageway_m = 7;  // middle of a dual carriageway to the middle of a side, ours
constexpr double flare_m = 38;       // length and half width of a splitter island, ours
constexpr double flare_half_m = 8;
constexpr double ring_merge_m = 3;
constexpr double tracks_m = 1.9;  // from the middle of two tracks to each, ours

enum class Way { in = 1, out = -1, both = 0 };

class Pen {
 public:
  explicit Pen(Draft& draft) : draft_(draft) {}
  void operator()(const PlanRing& ring);
  void operator()(const PlanRoad& road);
  void operator()(const PlanTrack& track);

 private:
  void add(Line line);
  Spot meet(const std::string& ring, Spot from, Way way, double half_m);
  Spot fork(const PlanRoad& road, const std::string& ring, Spot from);
  void single(const PlanRoad& road);
  void dual(const PlanRoad& road);
  void carriageway(const PlanRoad& road, std::span<const PlanPoint> points,
                   std::array<End, 2> ends);

  Draft& draft_;
  int number_ = 0;
};

void Pen::add(Line line) {
  line.layer = layer_of(line.tags);
  draft_.county.lines.push_back(std::move(line));
  draft_.numbers.push_back(number_);
}

void Pen::operator()(const PlanRing& ring) {
  number_ = ring.number;
  Line line{.kind = LineKind::ring, .tags = ring.tags};
  for (int i = 0; i < ring_points; ++i)
    line.points.push_back(
        on_circle(ring.centre, ring.radius_m, -2 * std::numbers::pi * i / ring_points));
  line.points.push_back(line.points.front());
  draft_.rings[ring.name] = draft_.county.rings.size();
  draft_.county.rings.push_back({.name = ring.name,
                                 .centre = ring.centre,
                                 .radius_m = ring.radius_m,
                                 .signals = ring.signals,
                                 .line = draft_.county.lines.size()});
  add(std::move(line));
}

/// Where a road, or a one-way side of one, meets a ring: to the left of whoever drives in.
Spot Pen::meet(const std::string& name, Spot from, Way way, double half_m) {
  const std::size_t number = draft_.rings.at(name);
  const Ring& ring = draft_.county.rings[number];
  if (ring.radius_m <= half_m) {
    trouble(draft_, number_,
            "the ring " + name + " is too small for this road; give it a radius over " +
                std::to_string(static_cast<int>(half_m)) + " m");
    return ring.centre;
  }
  const double inward = way == Way::out ? -1 : 1;
  const double angle = angle_of(ring.centre, from) - inward * std::asin(half_m / ring.radius_m);
  const Spot place = on_circle(ring.centre, ring.radius_m, angle);
  Line& line = draft_.county.lines[ring.line];
  if (way != Way::out && ring.signals) draft_.lights.push_back({.ring = number, .angle = angle});
  return add_point(line, nearest(line.points, place).segment, place, ring_merge_m);
}

/// Both sides of a splitter island; the point where they part.
Spot Pen::fork(const PlanRoad& road, const std::string& name, Spot from) {
  const Ring& ring = draft_.county.rings[draft_.rings.at(name)];
  const Spot part = towards(ring.centre, from, ring.radius_m + flare_m);
  Tags kept{{"oneway", "yes"}};
  for (const char* key : {"name", "highway", "ref", "maxspeed", "maxspeed:type", "lit"})
    if (const auto tag = road.tags.find(key); tag != road.tags.end()) kept.insert(*tag);
  const Spot entry = meet(name, part, Way::in, flare_half_m);
  add({.points = {part, entry},
       .tags = kept,
       .ends = {End::meets, ring.signals ? End::signals : End::meets}});
  add({.points = {meet(name, part, Way::out, flare_half_m), part}, .tags = kept});
  return part;
}

void Pen::operator()(const PlanRoad& road) {
  number_ = road.number;
  road.dual ? dual(road) : single(road);
}

void Pen::single(const PlanRoad& road) {
  std::vector<Spot> points;
  for (const PlanPoint& point : road.points) points.push_back(point.at);
  const std::size_t last = points.size() - 1;
  for (const auto& [end, beyond] : {std::pair{std::size_t{0}, std::size_t{1}}, {last, last - 1}}) {
    const PlanPoint& point = road.points[end];
    if (point.ring.empty()) continue;
    points[end] = point.forked ? fork(road, point.ring, points[beyond])
                               : meet(point.ring, points[beyond], Way::both, 0);
  }
  const auto highway = road.tags.find("highway");
  const bool service = highway != road.tags.end() && highway->second == "service";
  add({.kind = service ? LineKind::service : LineKind::road,
       .points = bend(points),
       .tags = road.tags,
       .ends = road.ends});
}

/// One side of a dual carriageway, drawn as it is driven. Rules: points and ends are in that order.
void Pen::carriageway(const PlanRoad& road, std::span<const PlanPoint> points,
                      std::array<End, 2> ends) {
  std::vector<Spot> middle;
  for (const PlanPoint& point : points)
    if (point.ring.empty()) middle.push_back(point.at);
  std::vector<Spot> left = beside(middle, carriageway_m);
  // A ring is met as seen from the middle, as its arms are laid out.
  if (const std::string& ring = points.front().ring; !ring.empty())
    left.insert(left.begin(), meet(ring, middle.front(), Way::out, carriageway_m));
  else if (ends[0] != End::edge)
    left.front() = middle.front();
  if (const std::string& ring = points.back().ring; !ring.empty())
    left.push_back(meet(ring, middle.back(), Way::in, carriageway_m));
  else if (ends[1] != End::edge)
    left.back() = middle.back();
  // No sign faces the traffic that comes out of a junction.
  if (ends[0] != End::edge) ends[0] = End::meets;
  add({.points = bend(left), .tags = road.tags, .ends = ends});
}

void Pen::dual(const PlanRoad& road) {
  const std::vector<PlanPoint> back(road.points.rbegin(), road.points.rend());
  carriageway(road, road.points, road.ends);
  carriageway(road, back, {road.ends[1], road.ends[0]});
}

void Pen::operator()(const PlanTrack& track) {
  number_ = track.number;
  if (!track.along.empty()) return;  // laid when the roads are joined
  const std::vector<Spot>& middle = track.points;
  for (const double side : {tracks_m, -tracks_m}) {
    const double left = track.tracks == 1 ? 0 : side;
    std::vector<Spot> line = beside(middle, left);
    line.front() = middle.front();
    line.back() = middle.back();
    add({.kind = track.kind, .points = bend(line), .tags = track.tags});
    if (track.tracks == 1) break;
  }
}

}  // namespace

void draw_lines(Draft& draft, const Plan& plan) {
  Pen pen(draft);
  for (const PlanLine& line : plan.lines) std::visit(pen, line);
}

}  // namespace loopwright::county
