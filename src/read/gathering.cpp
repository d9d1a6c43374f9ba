// 1. All: keep roads, rails, turn restrictions, the ways of bus routes, and what lies beside the roads.
// 2. Ways: those that areas beside the roads are made of.
// 3. Nodes: those that ways need, and the tags of the tagged ones among them.
// 4. Order everything by id (collected.hpp).
#include "gathering.hpp"

#include <algorithm>
#include <utility>

#include "loopwright/base/point_between.hpp"
#include "loopwright/mark/feature_keys.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::read {
namespace {

/// Copied once more at the end: text that was added to bit by bit has room for as much again, a copy has none.
mark::Tags tags_of(const osmium::OSMObject& object) {
  mark::Tags tags;
  for (const osmium::Tag& tag : object.tags()) tags.add(tag.key(), tag.value());
  return mark::Tags(std::as_const(tags));
}

/// Railways in use that may meet a road on the level. OSM wiki, Tag:railway=level_crossing.
bool crosses_roads(std::string_view railway) {
  return railway == "rail" || railway == "light_rail" || railway == "narrow_gauge" ||
         railway == "preserved";
}

mark::RawWay raw_way(const osmium::Way& way, mark::Tags tags) {
  mark::RawWay raw{way.id(), {}, std::move(tags)};
  raw.nodes.reserve(way.nodes().size());
  for (const osmium::NodeRef& node : way.nodes()) raw.nodes.push_back(node.ref());
  return raw;
}

mark::RawRelation raw_relation(const osmium::Relation& relation) {
  mark::RawRelation raw{relation.id(), tags_of(relation), {}};
  for (const osmium::RelationMember& member : relation.members()) {
    raw.members.push_back({osmium::item_type_to_char(member.type()), member.ref(), member.role()});
  }
  return raw;
}

bool is_bus_route(const mark::Tags& tags) {
  return tags.is("type", "route") && (tags.is("route", "bus") || tags.is("route", "trolleybus"));
}

/// False when none of an object's keys is one that is_feature asks for (most objects: plain
/// buildings, trees, walls): then its tags needn't be copied.
bool may_be_feature(const osmium::OSMObject& object) {
  return std::ranges::any_of(
      object.tags(), [](const osmium::Tag& tag) { return mark::is_feature_key(tag.key()); });
}

void put_in_order(std::vector<std::int64_t>& ids) {
  std::ranges::sort(ids);
  ids.erase(std::unique(ids.begin(), ids.end()), ids.end());
}

// Both the library and Point keep units of 1e-7 degree.
Point point_of(const osmium::Node& node) {
  return {node.location().y(), node.location().x()};
}

/// The middle of the box round all points; all of them known.
Point middle_of(const std::vector<std::vector<Point>>& lines) {
  const Point first = lines.front().front();
  std::int64_t south = first.lat_e7, north = south, west = first.lon_e7, east = west;
  for (const std::vector<Point>& line : lines) {
    for (const Point point : line) {
      const std::int64_t lat = point.lat_e7, lon = lon_beside_e7(point, first);
      south = std::min(south, lat), north = std::max(north, lat);
      west = std::min(west, lon), east = std::max(east, lon);
    }
  }
  return point_of_turn(south + (north - south) / 2, west + (east - west) / 2);
}

}  // namespace

void Gathering::take(const osmium::Way& way) {
  note_time(way);
  if (!way.visible() || (seen_ != nullptr && !seen_->has(way))) return;
  const char* railway = way.tags()["railway"];
  if (railway != nullptr && crosses_roads(railway)) rails_.add(way, raw_way(way, tags_of(way)));
  if (railway != nullptr && std::string_view(railway) == "tram") {
    trams_.add(way, raw_way(way, tags_of(way)));
  }
  take_feature(way);
  if (!way.tags().has_key("highway")) return;
  mark::Tags tags = tags_of(way);
  if (mark::road_class_of(tags)) ways_.add(way, raw_way(way, std::move(tags)));
}

void Gathering::take_outline(const osmium::Way& way) {
  if (!way.visible() || !std::ranges::binary_search(outline_ids_, way.id())) return;
  outlines_.add(way, raw_way(way, {}));
}

void Gathering::take_feature(const osmium::Way& way) {
  if (!may_be_feature(way)) return;
  mark::Tags tags = tags_of(way);
  if (!mark::is_feature(tags)) return;
  mark::RawWay raw = raw_way(way, {});
  features_.add(way, {{way.id(), ObjectType::way, {}}, {}, std::move(raw.nodes), std::move(tags)});
}

void Gathering::take(const osmium::Relation& relation) {
  note_time(relation);
  const char* type = relation.tags()["type"];
  if (!relation.visible() || type == nullptr) return;
  const std::string_view kind(type);
  if (kind == "multipolygon") {
    if (!may_be_feature(relation)) return;
    mark::RawRelation raw = raw_relation(relation);
    if (!mark::is_feature(raw.tags)) return;
    FoundFeature found{{relation.id(), ObjectType::relation, {}}, {}, {}, std::move(raw.tags)};
    for (const mark::RawMember& member : raw.members) {
      if (member.type == 'w') found.ways.push_back(member.ref);
    }
    outline_ids_.insert(outline_ids_.end(), found.ways.begin(), found.ways.end());
    areas_.add(relation, std::move(found));
    return;
  }
  if (kind.starts_with("restriction") || kind == "route") {
    relations_.add(relation, raw_relation(relation));
  }
}

void Gathering::list_needed_ways() {
  put_in_order(outline_ids_);
}

const mark::RawWay* Gathering::outline_way(std::int64_t id) const {
  const auto way = std::ranges::lower_bound(outline_ways_, id, {}, &mark::RawWay::id);
  return way != outline_ways_.end() && way->id == id ? &*way : nullptr;
}

void Gathering::leave_out_unseen(std::vector<FoundFeature>& areas) {
  std::erase_if(areas, [&](const FoundFeature& area) {
    return std::ranges::none_of(area.ways, [&](std::int64_t id) {
      const mark::RawWay* way = outline_way(id);
      return way != nullptr && seen_->has(*way);
    });
  });
  std::vector<std::int64_t> used;
  for (const FoundFeature& area : areas)
    used.insert(used.end(), area.ways.begin(), area.ways.end());
  put_in_order(used);
  std::erase_if(outline_ways_,
                [&](const mark::RawWay& way) { return !std::ranges::binary_search(used, way.id); });
}

void Gathering::list_needed_nodes() {
  map_.ways = ways_.in_order(map_.repeated_ids);
  map_.rails = rails_.in_order(map_.repeated_ids);
  map_.trams = trams_.in_order(map_.repeated_ids);
  std::int64_t repeated_outlines = 0;  // a way among features and outlines is told once, above
  outline_ways_ = outlines_.in_order(repeated_outlines);
  ways_and_areas_ = features_.in_order(repeated_outlines);
  std::vector<FoundFeature> areas = areas_.in_order(map_.repeated_ids);
  if (seen_ != nullptr) leave_out_unseen(areas);
  for (FoundFeature& area : areas) ways_and_areas_.push_back(std::move(area));
  const auto need = [&](const std::vector<std::int64_t>& nodes) {
    needed_.insert(needed_.end(), nodes.begin(), nodes.end());
  };
  for (const auto* ways : {&map_.ways, &map_.rails, &map_.trams, &outline_ways_}) {
    for (const mark::RawWay& way : *ways) need(way.nodes);
  }
  for (const FoundFeature& feature : ways_and_areas_) need(feature.nodes);
  put_in_order(needed_);
  points_.expect(needed_.size());
}

/// Most extracts are in order of ids, so the list of needed ones is walked beside them.
bool Gathering::is_needed(std::int64_t node) {
  if (next_needed_ > 0 && needed_[next_needed_ - 1] >= node) {
    return std::ranges::binary_search(needed_, node);
  }
  while (next_needed_ < needed_.size() && needed_[next_needed_] < node) ++next_needed_;
  return next_needed_ < needed_.size() && needed_[next_needed_] == node;
}

void Gathering::take(const osmium::Node& node) {
  note_time(node);
  if (!node.visible() || !node.location().valid() || !may_be_feature(node)) return;
  if (seen_ != nullptr && !seen_->has(node)) return;
  mark::Tags tags = tags_of(node);
  if (!mark::is_feature(tags)) return;
  spots_.add(node, {{node.id(), ObjectType::node, {}}, point_of(node), {}, std::move(tags)});
}

void Gathering::take_point(const osmium::Node& node) {
  if (!node.visible() || !node.location().valid() || !is_needed(node.id())) return;
  FoundPoint point{point_of(node)};
  if (!node.tags().empty()) {
    point_tags_.push_back(tags_of(node));
    point.tags = static_cast<std::uint32_t>(point_tags_.size());
  }
  points_.add(node, std::move(point));
}

mark::RawFeature Gathering::feature_of(FoundFeature&& found) const {
  mark::RawFeature feature{found.object, {}, {}, std::move(found.tags)};
  const auto add_line = [&](const std::vector<std::int64_t>& nodes) {
    std::vector<Point> line;
    for (const std::int64_t id : nodes) {
      if (const mark::RawNode* node = map_.find_node(id)) line.push_back(node->at);
    }
    if (!line.empty()) feature.lines.push_back(std::move(line));
  };
  add_line(found.nodes);
  for (const std::int64_t id : found.ways) {
    if (const mark::RawWay* way = outline_way(id)) add_line(way->nodes);
  }
  if (!feature.lines.empty()) feature.at = middle_of(feature.lines);
  return feature;
}

void Gathering::finish_features() {
  std::int64_t repeated_nodes = 0;  // told among the nodes
  map_.features = spots_.in_order(repeated_nodes);
  for (FoundFeature& found : ways_and_areas_) {
    mark::RawFeature feature = feature_of(std::move(found));
    if (!feature.lines.empty()) map_.features.push_back(std::move(feature));
  }
  std::ranges::sort(map_.features, {}, &mark::RawFeature::object);
}

bool Gathering::binds_a_road(const mark::RawRelation& restriction) const {
  return std::ranges::any_of(restriction.members, [&](const mark::RawMember& member) {
    const auto way = std::ranges::lower_bound(map_.ways, member.ref, {}, &mark::RawWay::id);
    return member.type == 'w' && way != map_.ways.end() && way->id == member.ref;
  });
}

void Gathering::finish_points() {
  needed_ = {};
  points_.put_in_order(map_.repeated_ids);
  map_.nodes.reserve(points_.rows().size());
  for (const auto& [id, version, point] : points_.rows()) {
    map_.nodes.push_back({id, point.at});
    if (point.tags != 0) map_.node_tags.emplace_back(id, std::move(point_tags_[point.tags - 1]));
  }
  points_ = {};
  point_tags_ = {};
}

mark::RawMap Gathering::finish(std::string header_timestamp) {
  for (mark::RawRelation& relation : relations_.in_order(map_.repeated_ids)) {
    if (relation.tags.get("type").starts_with("restriction")) {
      if (seen_ == nullptr || binds_a_road(relation))
        map_.restrictions.push_back(std::move(relation));
    } else if (is_bus_route(relation.tags)) {
      for (const mark::RawMember& member : relation.members) {
        if (member.type == 'w') map_.bus_route_ways.push_back(member.ref);
      }
    }
  }
  put_in_order(map_.bus_route_ways);
  finish_points();
  finish_features();
  map_.timestamp = std::move(header_timestamp);
  if (map_.timestamp.empty() && newest_.valid()) map_.timestamp = newest_.to_iso();
  return std::move(map_);
}

}  // namespace loopwright::read
