// Three looks at the objects of an extract, which may come in any order. A small extract is read once
// and kept in memory for the second and third.
//
// 1. All: keep roads, rails, turn restrictions, the ways of bus routes, and what lies beside the roads.
// 2. Ways: those that areas beside the roads are made of.
// 3. Nodes: those that ways need, and the tags of the tagged ones among them.
// 4. Order everything by id. Of objects with the same id the highest version stays, of equal
//    versions the first in the file; the others are counted.
// Whatever the library says of a file it can't read becomes one line that names the file and what
// to do.
#include <algorithm>
#include <functional>
#include <new>
#include <osmium/io/any_input.hpp>
#include <osmium/osm/node.hpp>
#include <osmium/osm/relation.hpp>
#include <osmium/osm/way.hpp>
#include <system_error>

#include "loopwright/base/error.hpp"
#include "loopwright/mark/feature_keys.hpp"
#include "loopwright/mark/rules.hpp"
#include "loopwright/read/build.hpp"

namespace loopwright::read {
namespace {

using Path = std::filesystem::path;

/// Objects of one kind as they come, then in order of id and each id once.
template <class T>
class Collected {
 public:
  void add(const osmium::OSMObject& source, T&& object) {
    rows_.push_back({source.id(), source.version(), std::move(object)});
  }

  void expect(std::size_t count) { rows_.reserve(count); }

  std::vector<T> in_order(std::int64_t& repeated) {
    const auto before = [](const Row& a, const Row& b) {
      return a.id != b.id ? a.id < b.id : a.version > b.version;
    };
    if (!std::is_sorted(rows_.begin(), rows_.end(), before)) {
      std::stable_sort(rows_.begin(), rows_.end(), before);
    }
    const auto end = std::unique(rows_.begin(), rows_.end(),
                                 [](const Row& a, const Row& b) { return a.id == b.id; });
    repeated += std::distance(end, rows_.end());
    std::vector<T> objects;
    objects.reserve(static_cast<std::size_t>(std::distance(rows_.begin(), end)));
    for (auto row = rows_.begin(); row != end; ++row) objects.push_back(std::move(row->object));
    rows_ = {};
    return objects;
  }

 private:
  struct Row {
    std::int64_t id = 0;
    std::uint32_t version = 0;
    T object;
  };
  std::vector<Row> rows_;
};

mark::Tags tags_of(const osmium::OSMObject& object) {
  mark::Tags tags;
  for (const osmium::Tag& tag : object.tags()) tags.add(tag.key(), tag.value());
  return tags;
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

/// A feature while its points are not known: the way ids of a multipolygon, or the way's own nodes.
struct FoundFeature {
  OsmObject object;
  std::vector<std::int64_t> ways;
  std::vector<std::int64_t> nodes;
  mark::Tags tags;
};

bool is_bus_route(const mark::Tags& tags) {
  return tags.is("type", "route") && (tags.is("route", "bus") || tags.is("route", "trolleybus"));
}

struct FoundNode {
  mark::RawNode node;
  mark::Tags tags;
};

/// False when none of an object's keys is one that is_feature asks for (most objects: plain
/// buildings, trees, walls): then its tags needn't be copied.
bool may_be_feature(const osmium::OSMObject& object) {
  return std::ranges::any_of(
      object.tags(), [](const osmium::Tag& tag) { return mark::is_feature_key(tag.key()); });
}

/// What all passes gather.
class Gathering {
 public:
  // First, in any order:
  void take(const osmium::Relation& relation);
  void take(const osmium::Way& way);
  void take(const osmium::Node& node);  ///< what lies beside the roads
  // Then, since relations tell which:
  void list_needed_ways();
  void take_outline(const osmium::Way& way);
  // Then, since ways tell which:
  void list_needed_nodes();
  void take_point(const osmium::Node& node);
  mark::RawMap finish(std::string header_timestamp);

 private:
  void note_time(const osmium::OSMObject& object) {
    newest_ = std::max(newest_, object.timestamp());
  }

  void take_feature(const osmium::Way& way);
  [[nodiscard]] mark::RawFeature feature_of(FoundFeature&& found) const;
  void finish_features();
  [[nodiscard]] bool is_needed(std::int64_t node);

  mark::RawMap map_;
  Collected<mark::RawWay> ways_, rails_, trams_;
  Collected<mark::RawWay> outlines_;  // ways that feature relations are made of, without tags
  Collected<FoundFeature> features_;  // ways and relations; each kind has ids of its own
  Collected<FoundFeature> areas_;
  Collected<mark::RawFeature> spots_;  // nodes
  std::vector<std::int64_t> outline_ids_;
  Collected<mark::RawRelation> relations_;
  Collected<FoundNode> nodes_;
  std::vector<mark::RawWay> outline_ways_;
  std::vector<FoundFeature> ways_and_areas_;
  std::vector<std::int64_t> needed_;
  std::size_t next_needed_ = 0;  // all before it are below the last node seen
  osmium::Timestamp newest_;
};

void Gathering::take(const osmium::Way& way) {
  note_time(way);
  if (!way.visible()) return;
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

void put_in_order(std::vector<std::int64_t>& ids) {
  std::ranges::sort(ids);
  const auto rest = std::ranges::unique(ids);
  ids.erase(rest.begin(), rest.end());
}

void Gathering::list_needed_ways() {
  put_in_order(outline_ids_);
}

void Gathering::list_needed_nodes() {
  map_.ways = ways_.in_order(map_.repeated_ids);
  map_.rails = rails_.in_order(map_.repeated_ids);
  map_.trams = trams_.in_order(map_.repeated_ids);
  std::int64_t repeated_outlines = 0;  // a way among features and outlines is told once, above
  outline_ways_ = outlines_.in_order(repeated_outlines);
  ways_and_areas_ = features_.in_order(repeated_outlines);
  for (FoundFeature& area : areas_.in_order(map_.repeated_ids)) {
    ways_and_areas_.push_back(std::move(area));
  }
  const auto need = [&](const std::vector<std::int64_t>& nodes) {
    needed_.insert(needed_.end(), nodes.begin(), nodes.end());
  };
  for (const auto* ways : {&map_.ways, &map_.rails, &map_.trams, &outline_ways_}) {
    for (const mark::RawWay& way : *ways) need(way.nodes);
  }
  for (const FoundFeature& feature : ways_and_areas_) need(feature.nodes);
  put_in_order(needed_);
  nodes_.expect(needed_.size());
}

/// Most extracts are in order of ids, so the list of needed ones is walked beside them.
bool Gathering::is_needed(std::int64_t node) {
  if (next_needed_ > 0 && needed_[next_needed_ - 1] >= node) {
    return std::ranges::binary_search(needed_, node);
  }
  while (next_needed_ < needed_.size() && needed_[next_needed_] < node) ++next_needed_;
  return next_needed_ < needed_.size() && needed_[next_needed_] == node;
}

// Both the library and Point keep units of 1e-7 degree.
Point point_of(const osmium::Node& node) {
  return {node.location().y(), node.location().x()};
}

void Gathering::take(const osmium::Node& node) {
  note_time(node);
  if (!node.visible() || !node.location().valid() || !may_be_feature(node)) return;
  mark::Tags tags = tags_of(node);
  if (!mark::is_feature(tags)) return;
  spots_.add(node, {{node.id(), ObjectType::node, {}}, point_of(node), {}, std::move(tags)});
}

void Gathering::take_point(const osmium::Node& node) {
  if (!node.visible() || !node.location().valid() || !is_needed(node.id())) return;
  mark::Tags tags = node.tags().empty() ? mark::Tags{} : tags_of(node);
  nodes_.add(node, {{node.id(), point_of(node)}, std::move(tags)});
}

/// The middle of the box round all points; all of them known.
Point middle_of(const std::vector<std::vector<Point>>& lines) {
  Point low = lines.front().front(), high = low;
  for (const std::vector<Point>& line : lines) {
    for (const Point point : line) {
      low = {std::min(low.lat_e7, point.lat_e7), std::min(low.lon_e7, point.lon_e7)};
      high = {std::max(high.lat_e7, point.lat_e7), std::max(high.lon_e7, point.lon_e7)};
    }
  }
  return {low.lat_e7 + (high.lat_e7 - low.lat_e7) / 2, low.lon_e7 + (high.lon_e7 - low.lon_e7) / 2};
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
    const auto way = std::ranges::lower_bound(outline_ways_, id, {}, &mark::RawWay::id);
    if (way != outline_ways_.end() && way->id == id) add_line(way->nodes);
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

mark::RawMap Gathering::finish(std::string header_timestamp) {
  for (mark::RawRelation& relation : relations_.in_order(map_.repeated_ids)) {
    if (relation.tags.get("type").starts_with("restriction")) {
      map_.restrictions.push_back(std::move(relation));
    } else if (is_bus_route(relation.tags)) {
      for (const mark::RawMember& member : relation.members) {
        if (member.type == 'w') map_.bus_route_ways.push_back(member.ref);
      }
    }
  }
  put_in_order(map_.bus_route_ways);
  map_.nodes.reserve(needed_.size());
  for (FoundNode& found : nodes_.in_order(map_.repeated_ids)) {
    map_.nodes.push_back(found.node);
    if (!found.tags.empty()) map_.node_tags.emplace_back(found.node.id, std::move(found.tags));
  }
  finish_features();
  map_.timestamp = std::move(header_timestamp);
  if (map_.timestamp.empty() && newest_.valid()) map_.timestamp = newest_.to_iso();
  return std::move(map_);
}

/// The newest data as the header tells it, "" when it doesn't.
std::string timestamp_of(const osmium::io::Header& header) {
  const std::string replicated = header.get("osmosis_replication_timestamp");
  return replicated.empty() ? header.get("timestamp") : replicated;
}

[[noreturn]] void refuse(const Path& file, const std::string& why) {
  throw InputError(file.string() + ": " + why);
}

void check_before_reading(const Path& file, const osmium::io::File& map_file) {
  std::error_code error;
  if (std::filesystem::is_directory(file, error)) refuse(file, "is a folder; name a map extract");
  const auto bytes = std::filesystem::file_size(file, error);
  if (error) refuse(file, error.message() + "; check the name");
  if (bytes == 0) refuse(file, "is empty; fetch the extract again");
  const auto format = map_file.format();
  if (format != osmium::io::file_format::pbf && format != osmium::io::file_format::xml &&
      format != osmium::io::file_format::opl) {
    refuse(file,
           "its name is not that of a map extract; use .osm.pbf, .osm, .osm.bz2, .osm.gz or .opl");
  }
}

void take_all(Gathering& gathering, const osmium::memory::Buffer& buffer) {
  for (const auto& node : buffer.select<osmium::Node>()) gathering.take(node);
  for (const auto& way : buffer.select<osmium::Way>()) gathering.take(way);
  for (const auto& relation : buffer.select<osmium::Relation>()) gathering.take(relation);
}

void take_outlines(Gathering& gathering, const osmium::memory::Buffer& buffer) {
  for (const auto& way : buffer.select<osmium::Way>()) gathering.take_outline(way);
}

void take_points(Gathering& gathering, const osmium::memory::Buffer& buffer) {
  for (const auto& node : buffer.select<osmium::Node>()) gathering.take_point(node);
}

/// Hands over the objects of some kinds, buffer by buffer; returns the header's timestamp.
template <class Take>
std::string for_each_buffer(const osmium::io::File& file, osmium::osm_entity_bits::type kinds,
                            Take take, const std::function<void(double)>& told) {
  osmium::io::Reader reader(file, kinds);
  const osmium::io::Header header = reader.header();
  if (header.has_multiple_object_versions() || file.has_multiple_object_versions()) {
    refuse(file.filename(),
           "holds the map's history; cut one day out of it with 'osmium time-filter'");
  }
  const auto size = static_cast<double>(std::max<std::size_t>(reader.file_size(), 1));
  int percent = -1;
  while (osmium::memory::Buffer buffer = reader.read()) {
    take(std::move(buffer));
    const double share = static_cast<double>(reader.offset()) / size;
    if (static_cast<int>(100 * share) != percent) told(share);
    percent = static_cast<int>(100 * share);
  }
  reader.close();
  return timestamp_of(header);
}

/// A small extract is read once: what can be taken at once is, the rest from memory.
mark::RawMap read_once(const osmium::io::File& file, const Progress& progress) {
  Gathering gathering;
  std::vector<osmium::memory::Buffer> buffers;
  const auto take = [&](osmium::memory::Buffer&& buffer) {
    take_all(gathering, buffer);
    buffers.push_back(std::move(buffer));
  };
  const std::string timestamp =
      for_each_buffer(file, osmium::osm_entity_bits::nwr, take,
                      [&](double done) { tell(progress, "reading the map", done); });
  gathering.list_needed_ways();
  for (const auto& buffer : buffers) take_outlines(gathering, buffer);
  gathering.list_needed_nodes();
  for (const auto& buffer : buffers) take_points(gathering, buffer);
  return gathering.finish(timestamp);
}

/// A large one is read three times, since it wouldn't fit.
mark::RawMap read_in_passes(const osmium::io::File& file, const Progress& progress) {
  namespace bits = osmium::osm_entity_bits;
  Gathering gathering;
  const std::string timestamp = for_each_buffer(
      file, bits::nwr, [&](const osmium::memory::Buffer& buffer) { take_all(gathering, buffer); },
      [&](double done) { tell(progress, "reading roads", done); });
  gathering.list_needed_ways();
  for_each_buffer(
      file, bits::way,
      [&](const osmium::memory::Buffer& buffer) { take_outlines(gathering, buffer); },
      [&](double done) { tell(progress, "reading outlines", done); });
  gathering.list_needed_nodes();
  for_each_buffer(
      file, bits::node,
      [&](const osmium::memory::Buffer& buffer) { take_points(gathering, buffer); },
      [&](double done) { tell(progress, "reading points", done); });
  return gathering.finish(timestamp);
}

mark::RawMap read_whole(const Path& file, const Progress& progress) {
  // Unpacked, an extract takes some twenty-five times its size: 400 MB.
  constexpr std::uintmax_t small_bytes = 16'000'000;
  const osmium::io::File map_file(file.string());
  check_before_reading(file, map_file);
  const bool packed_twice = file.extension() == ".bz2" || file.extension() == ".gz";
  const bool is_small = std::filesystem::file_size(file) <= small_bytes && !packed_twice;
  return is_small ? read_once(map_file, progress) : read_in_passes(map_file, progress);
}

}  // namespace

mark::RawMap scan_map(const Path& extract, const Progress& progress) {
  try {
    mark::RawMap map = read_whole(extract, progress);
    if (map.ways.empty()) refuse(extract, "holds no road for cars; choose another extract");
    return map;
  } catch (const Error&) {
    throw;
  } catch (const std::bad_alloc&) {
    throw;
  } catch (const std::system_error& error) {
    refuse(extract, error.code().message() + "; check the name and its permissions");
  } catch (const std::exception& error) {
    refuse(extract, "can't be read as a map (" + std::string(error.what()) +
                        "); it may be cut short: fetch it again");
  }
}

}  // namespace loopwright::read
