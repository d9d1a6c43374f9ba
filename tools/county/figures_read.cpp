// 1. Ways and restrictions: keep what cars drive on, by the value of highway alone.
// 2. Nodes: places and marks of those the ways need.
// 3. Leave out ways that aren't wholly in the box (an extract may hold roads that run far beyond
//    the town it was cut for).
#include <algorithm>
#include <array>
#include <osmium/io/any_input.hpp>
#include <osmium/osm/node.hpp>
#include <osmium/osm/relation.hpp>
#include <osmium/osm/way.hpp>
#include <unordered_set>

#include "county/figures.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::county {
namespace {

using osmium::TagList;

bool is(const TagList& tags, const char* key, std::initializer_list<std::string_view> values) {
  const std::string_view value = tags.get_value_by_key(key, "");
  return std::ranges::find(values, value) != values.end();
}

/// OSM wiki, Key:highway: the classes cars use; a link counts as its road. Empty: not for cars.
std::string road_class_of(const TagList& tags) {
  constexpr std::array classes{"motorway", "trunk",        "primary",     "secondary",
                               "tertiary", "unclassified", "residential", "living_street",
                               "service",  "road"};
  std::string_view value = tags.get_value_by_key("highway", "");
  if (value.ends_with("_link")) value.remove_suffix(5);
  const bool known = std::ranges::find(classes, value) != classes.end();
  return known && !is(tags, "area", {"yes"}) ? std::string(value) : "";
}

/// OSM wiki, Key:oneway, and what junction=* and motorways imply.
bool is_one_way(const TagList& tags) {
  if (is(tags, "oneway", {"yes", "1", "true", "-1", "reverse", "reversible"})) return true;
  if (is(tags, "oneway", {"no", "0", "false"})) return false;
  return is(tags, "junction", {"roundabout", "circular"}) || is(tags, "highway", {"motorway"});
}

MapWay way_of(const osmium::Way& way, std::string road_class) {
  const TagList& tags = way.tags();
  MapWay out;
  out.id = way.id();
  out.road_class = std::move(road_class);
  for (const osmium::NodeRef& node : way.nodes()) out.nodes.push_back(node.ref());
  out.one_way = is_one_way(tags);
  out.ring = is(tags, "junction", {"roundabout", "circular"});
  out.limit = tags.has_key("maxspeed");
  out.lit = tags.has_key("lit");
  out.width = tags.has_key("width");
  out.name = tags.has_key("name");
  return out;
}

/// Crossings_in_the_United_Kingdom, Key:crossing, Key:crossing_ref.
void mark_crossing(const TagList& tags, MapNode& node) {
  if (!is(tags, "highway", {"crossing"})) return;
  node.signal_crossing = is(tags, "crossing", {"traffic_signals"}) ||
                         is(tags, "crossing:signals", {"yes"}) ||
                         is(tags, "crossing_ref", {"pelican", "puffin", "toucan", "pegasus"});
  const std::string_view lines = tags.get_value_by_key("crossing:markings", "");
  node.zebra =
      !node.signal_crossing && (is(tags, "crossing", {"zebra"}) ||
                                is(tags, "crossing_ref", {"zebra"}) || lines.starts_with("zebra"));
}

MapNode node_of(const osmium::Node& node) {
  const TagList& tags = node.tags();
  MapNode out{.at = point_from_degrees(node.location().lat(), node.location().lon()),
              .known = true};
  out.mini = is(tags, "highway", {"mini_roundabout"});
  out.level_crossing = is(tags, "railway", {"level_crossing"});
  out.signals = is(tags, "highway", {"traffic_signals"});
  out.calming = tags.has_key("traffic_calming");
  mark_crossing(tags, out);
  return out;
}

struct Wanted {
  std::vector<MapWay> ways;
  std::vector<std::int64_t> ban_starts;  ///< way ids, one for each restriction
};

void take(const osmium::OSMObject& object, Wanted& wanted) {
  if (object.type() == osmium::item_type::way) {
    const auto& way = static_cast<const osmium::Way&>(object);
    std::string road_class = road_class_of(way.tags());
    if (!road_class.empty()) wanted.ways.push_back(way_of(way, std::move(road_class)));
    return;
  }
  const std::string_view type = object.tags().get_value_by_key("type", "");
  if (!type.starts_with("restriction")) return;
  const auto& members = static_cast<const osmium::Relation&>(object).members();
  const auto from = std::ranges::find_if(
      members, [](const auto& member) { return std::string_view(member.role()) == "from"; });
  if (from != members.end()) wanted.ban_starts.push_back(from->ref());
}

template <class F>
void for_each_object(const std::string& file, osmium::osm_entity_bits::type kinds, F&& f) {
  osmium::io::Reader reader{file, kinds};
  while (const osmium::memory::Buffer buffer = reader.read()) {
    for (const auto& object : buffer.select<osmium::OSMObject>()) f(object);
  }
  reader.close();
}

/// False when a way runs out of the box, or the extract lacks its points.
bool lies_in(const Box& box, const RoadMap& map, const MapWay& way) {
  return way.nodes.size() >= 2 && std::ranges::all_of(way.nodes, [&](std::int64_t id) {
           const MapNode& node = map.nodes.at(id);
           return node.known && box.holds(node.at.lat(), node.at.lon());
         });
}

RoadMap read_all(const std::string& file, const Box& box) {
  Wanted wanted;
  const auto first = osmium::osm_entity_bits::way | osmium::osm_entity_bits::relation;
  for_each_object(file, first, [&](const osmium::OSMObject& object) { take(object, wanted); });
  RoadMap map;
  map.ways = std::move(wanted.ways);
  for (const MapWay& way : map.ways) {
    for (const std::int64_t node : way.nodes) map.nodes.try_emplace(node);
  }
  for_each_object(file, osmium::osm_entity_bits::node, [&](const osmium::OSMObject& object) {
    const auto place = map.nodes.find(object.id());
    if (place != map.nodes.end()) place->second = node_of(static_cast<const osmium::Node&>(object));
  });
  map.left_out =
      std::erase_if(map.ways, [&](const MapWay& way) { return !lies_in(box, map, way); });
  std::unordered_set<std::int64_t> ids;
  for (const MapWay& way : map.ways) ids.insert(way.id);
  map.turn_bans = static_cast<std::size_t>(std::ranges::count_if(
      wanted.ban_starts, [&](std::int64_t way) { return ids.contains(way); }));
  return map;
}

}  // namespace

std::optional<Box> read_box(std::string_view text) {
  std::vector<double> numbers;
  for (const std::string_view part : split(text, ',')) {
    const std::optional<double> number = read_number(part);
    if (!number) return {};
    numbers.push_back(*number);
  }
  if (numbers.size() != 4 || numbers[0] >= numbers[2] || numbers[1] >= numbers[3]) return {};
  return Box{numbers[0], numbers[1], numbers[2], numbers[3]};
}

RoadMap read_road_map(const std::filesystem::path& file, const Box& box) {
  if (!std::filesystem::exists(file)) {
    throw InputError(file.string() + ": there is no such file; name an extract (.osm.pbf or .opl)");
  }
  try {
    return read_all(file.string(), box);
  } catch (const std::exception& trouble) {
    throw InputError(file.string() + ": can't be read as a map (" + trouble.what() +
                     "); name an extract (.osm.pbf or .opl)");
  }
}

}  // namespace loopwright::county
