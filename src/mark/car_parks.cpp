// Car parks where bays can be practised in: the owner must agree, and opening hours are his.
//
// 1. amenity=parking as an area, at ground level (parking=surface or nothing said), open to all or
//    to customers; with the table's capacity, or as many mapped bays (amenity=parking_space) inside,
//    or an aisle (service=parking_aisle) inside.
// 2. Its way in: service ways are followed from any of their nodes inside, at most a few ways, to a
//    node on a road of the graph. Without one, the nearest road within the table's metres.
// 3. One place at the way in; a chance for each direction in which the road there may be driven.
// Source: OSM wiki, page Tag:amenity=parking; Highway Code rules 200 to 203, 239 (off-street first).
#include <algorithm>
#include <array>
#include <limits>
#include <map>
#include <optional>
#include <set>
#include <unordered_map>

#include "box.hpp"
#include "loopwright/base/equal_rows.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/mark/rules.hpp"
#include "loopwright/road/kind_table.hpp"
#include "manoeuvres.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

constexpr std::size_t most_ways_in = 12;  // ours: a longer way in leads through somewhere else

/// Where the road is left for the car park.
struct WayIn {
  PieceId piece;
  double along_m = 0;
};

bool could_be_one(const Tags& tags) {
  constexpr std::array<std::string_view, 2> at_ground{"", "surface"};
  constexpr std::array<std::string_view, 5> open{"", "yes", "permissive", "public", "customers"};
  return tags.is("amenity", "parking") && one_of(tags.get("parking"), at_ground) &&
         one_of(tags.get("access"), open);
}

class CarParks {
 public:
  CarParks(Draft& draft, const road::Roads& roads, const PullUpRules& rules);
  void mark();

 private:
  void learn_way(const RawWay& way, const std::vector<std::uint64_t>& cells);
  [[nodiscard]] bool has_bays(const RawFeature& park) const;
  [[nodiscard]] std::vector<std::size_t> ways_inside(const RawFeature& park) const;
  [[nodiscard]] std::optional<WayIn> way_in(const RawFeature& park) const;
  [[nodiscard]] std::optional<WayIn> on_road(std::int64_t node) const;
  [[nodiscard]] std::optional<WayIn> nearest_road(const RawFeature& park) const;
  [[nodiscard]] bool takes_cars(PieceId piece) const;
  void add(const RawFeature& park, const WayIn& way_in);

  Draft& draft_;
  const road::Roads& roads_;
  const PullUpRules& rules_;
  std::vector<const RawWay*> service_;                             // service ways by car parks
  std::unordered_multimap<std::int64_t, std::size_t> service_at_;  // their rows by node
  struct ServiceNode {
    std::uint64_t cell = 0;
    Point at;
    std::size_t way = 0;  ///< row in service_
  };
  std::vector<ServiceNode> nodes_;            // theirs, by grid cell
  std::multimap<std::uint64_t, Point> bays_;  // by grid cell
};

/// Cells the outline of a feature lies in.
std::set<std::uint64_t> cells_of(const RawFeature& park) {
  std::set<std::uint64_t> cells;
  for (const std::vector<Point>& line : park.lines)
    for (const std::uint64_t cell : road::grid_cells_of(line)) cells.insert(cell);
  return cells;
}

CarParks::CarParks(Draft& draft, const road::Roads& roads, const PullUpRules& rules)
    : draft_(draft), roads_(roads), rules_(rules) {
  std::set<std::uint64_t> parks;  // cells with a car park: what lies elsewhere isn't looked at
  for (const RawFeature& feature : draft.raw.features)
    if (could_be_one(feature.tags)) parks.merge(cells_of(feature));
  const std::vector<std::uint64_t> cells(parks.begin(), parks.end());
  for (const RawWay& way : draft.raw.ways)
    if (!cells.empty() && way.tags.is("highway", "service")) learn_way(way, cells);
  std::ranges::stable_sort(nodes_, {}, &ServiceNode::cell);
  for (const RawFeature& feature : draft.raw.features)
    if (feature.tags.is("amenity", "parking_space"))
      bays_.emplace(road::grid_cell(feature.at), feature.at);
}

/// Keeps a service way that has a node in one of the cells.
void CarParks::learn_way(const RawWay& way, const std::vector<std::uint64_t>& cells) {
  const std::size_t row = service_.size();
  bool is_near = false;
  for (const std::int64_t node : way.nodes) {
    const RawNode* known = draft_.raw.find_node(node);
    if (known == nullptr) continue;
    const std::uint64_t cell = road::grid_cell(known->at);
    if (!std::ranges::binary_search(cells, cell)) continue;
    nodes_.push_back({cell, known->at, row});
    is_near = true;
  }
  if (!is_near) return;
  service_.push_back(&way);
  for (const std::int64_t node : way.nodes) service_at_.emplace(node, row);
}

Box box_of_lines(const RawFeature& park) {
  Box box;
  for (const std::vector<Point>& line : park.lines) box.take(line);
  return box;
}

std::vector<std::size_t> CarParks::ways_inside(const RawFeature& park) const {
  constexpr double edge_m = 3;  // a way may end at the outline
  const Box box = box_of_lines(park);
  std::set<std::size_t> rows;
  for (const std::uint64_t cell : cells_of(park)) {
    for (const auto& [in, point, row] : equal_rows(nodes_, cell, &ServiceNode::cell)) {
      if (!box.may_be_near(point, edge_m)) continue;
      if (contains(park, point) || distance_m(park, point) < edge_m) rows.insert(row);
    }
  }
  return {rows.begin(), rows.end()};
}

bool CarParks::has_bays(const RawFeature& park) const {
  const auto least = static_cast<std::ptrdiff_t>(rules_.at("bays"));
  if (const auto capacity = read_number(park.tags.get("capacity")))
    return *capacity >= static_cast<double>(least);
  std::ptrdiff_t inside = 0;
  for (const std::uint64_t cell : cells_of(park)) {
    const auto [first, last] = bays_.equal_range(cell);
    inside +=
        std::count_if(first, last, [&](const auto& bay) { return contains(park, bay.second); });
  }
  if (inside >= least) return true;
  const auto rows = ways_inside(park);
  return std::ranges::any_of(
      rows, [&](std::size_t row) { return service_[row]->tags.is("service", "parking_aisle"); });
}

bool CarParks::takes_cars(PieceId piece) const {
  return (roads_.drivable({piece, false}) || roads_.drivable({piece, true})) &&
         (roads_.pieces[piece.index()].flags & road::piece_flag::ring) == 0 &&
         roads_.pieces[piece.index()].road_class != road::RoadClass::service;
}

/// The road that a map node lies on, at its nearest point of a piece that ends or passes there.
std::optional<WayIn> CarParks::on_road(std::int64_t node) const {
  const RawNode* known = draft_.raw.find_node(node);
  if (known == nullptr) return std::nullopt;
  constexpr double on_it_m = 0.5;
  for (const PieceId piece : road::pieces_near(roads_, known->at, on_it_m)) {
    const auto shape = roads_.shape_of(piece);
    if (!takes_cars(piece) || !box_of(shape).may_be_near(known->at, on_it_m)) continue;
    const Foot foot = nearest_on_line(shape, known->at);
    if (foot.off_m < on_it_m) return WayIn{piece, foot.along_m};
  }
  return std::nullopt;
}

/// Each road's nearest point to the middle of the car park, measured from its outline.
std::optional<WayIn> CarParks::nearest_road(const RawFeature& park) const {
  const Box box = box_of_lines(park);
  std::optional<WayIn> best;
  double nearest_m = rules_.at("bays beside");
  double reach_m = nearest_m;
  for (const std::vector<Point>& line : park.lines)
    for (const Point at : line)
      reach_m = std::max(reach_m, nearest_m + loopwright::distance_m(park.at, at));
  for (const PieceId piece : road::pieces_near(roads_, park.at, reach_m)) {
    const auto shape = roads_.shape_of(piece);
    if (!takes_cars(piece) || !box_of(shape).may_be_near(park.at, reach_m)) continue;
    const Foot foot = nearest_on_line(shape, park.at);
    if (!box.may_be_near(foot.at, nearest_m)) continue;
    const double off_m = distance_m(park, foot.at);
    if (off_m < nearest_m) nearest_m = off_m, best = WayIn{piece, foot.along_m};
  }
  return best;
}

std::optional<WayIn> CarParks::way_in(const RawFeature& park) const {
  std::vector<std::size_t> open = ways_inside(park);
  std::set<std::size_t> seen(open.begin(), open.end());
  for (std::size_t k = 0; k < open.size() && k < most_ways_in; ++k) {
    for (const std::int64_t node : service_[open[k]]->nodes) {
      const bool joint = service_at_.count(node) > 1 || node == service_[open[k]]->nodes.front() ||
                         node == service_[open[k]]->nodes.back();
      if (!joint) continue;
      if (const auto found = on_road(node)) return found;
      const auto [first, last] = service_at_.equal_range(node);
      std::vector<std::size_t> next;
      for (auto at = first; at != last; ++at) next.push_back(at->second);
      std::ranges::sort(next);
      for (const std::size_t row : next)
        if (seen.insert(row).second) open.push_back(row);
    }
  }
  return nearest_road(park);
}

void CarParks::add(const RawFeature& park, const WayIn& way_in) {
  road::Place place;
  place.kind = road::Kind::bay_park;
  place.source = park.object;
  place.at = point_along(roads_.shape_of(way_in.piece), way_in.along_m);
  place.name = draft_.text(park.tags.get("name"));
  const PlaceId id = draft_.add_place(place, {}, std::array{way_in.piece});
  for (const bool against : {false, true}) {
    const StretchId stretch{way_in.piece, against};
    if (!roads_.drivable(stretch)) continue;
    road::Chance chance;
    chance.place = id;
    chance.entry = chance.exit = stretch;
    chance.kind = road::Kind::bay_park;
    chance.hardness =
        static_cast<std::uint8_t>(road::hardness_of(road::Kind::bay_park, road::Movement::none));
    chance.confidence = road::Confidence::inferred;
    chance.tag = draft_.text("amenity=parking");
    chance.source = park.object;
    draft_.add_chance(chance, std::array{stretch});
  }
}

void CarParks::mark() {
  std::set<std::pair<PieceId, int>> taken;  // one car park mapped in parts has one way in
  for (const RawFeature& park : draft_.raw.features) {
    if (park.lines.empty() || !could_be_one(park.tags) || !has_bays(park)) continue;
    const auto entrance = way_in(park);
    if (entrance && taken.emplace(entrance->piece, static_cast<int>(entrance->along_m)).second)
      add(park, *entrance);
  }
}

}  // namespace

void mark_car_parks(Draft& draft, const road::Roads& roads, const PullUpRules& rules) {
  CarParks(draft, roads, rules).mark();
}

}  // namespace loopwright::mark
