// What of an extract's objects is kept, gathered in three looks at them.
//
//   Gathering g;   for (all) g.take(object);   g.list_needed_ways();   for (ways) g.take_outline(way);
//   g.list_needed_nodes();   for (nodes) g.take_point(node);   RawMap map = g.finish(timestamp);
//
// Rules: private to read. The order of objects within a look doesn't matter; that of the looks does.
#pragma once

#include <osmium/osm/node.hpp>
#include <osmium/osm/relation.hpp>
#include <osmium/osm/timestamp.hpp>
#include <osmium/osm/way.hpp>
#include <string>
#include <vector>

#include "collected.hpp"
#include "loopwright/mark/raw_map.hpp"
#include "seen.hpp"

namespace loopwright::read {

/// A feature while its points are not known: the way ids of a multipolygon, or the way's own nodes.
struct FoundFeature {
  OsmObject object;
  std::vector<std::int64_t> ways;
  std::vector<std::int64_t> nodes;
  mark::Tags tags;
};

/// A point of a way. Small, since a country has tens of millions: the tags of the few that have any lie apart.
struct FoundPoint {
  Point at;
  std::uint32_t tags = 0;  ///< 1 + row of Gathering::point_tags_; 0: none
};

/// What all passes gather.
class Gathering {
 public:
  /// seen: of what only it has; none: everything. It must outlive this.
  explicit Gathering(const Seen* seen) : seen_(seen) {}
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
  /// Areas none of whose lines are seen, and lines that belong to none of the others.
  void leave_out_unseen(std::vector<FoundFeature>& areas);
  [[nodiscard]] const mark::RawWay* outline_way(std::int64_t id) const;
  [[nodiscard]] bool binds_a_road(const mark::RawRelation& restriction) const;
  [[nodiscard]] mark::RawFeature feature_of(FoundFeature&& found) const;
  void finish_points();
  void finish_features();
  [[nodiscard]] bool is_needed(std::int64_t node);

  const Seen* seen_;
  mark::RawMap map_;
  Collected<mark::RawWay> ways_, rails_, trams_;
  Collected<mark::RawWay> outlines_;  // ways that feature relations are made of, without tags
  Collected<FoundFeature> features_;  // ways and relations; each kind has ids of its own
  Collected<FoundFeature> areas_;
  Collected<mark::RawFeature> spots_;  // nodes
  std::vector<std::int64_t> outline_ids_;
  Collected<mark::RawRelation> relations_;
  Collected<FoundPoint> points_;
  std::vector<mark::Tags> point_tags_;
  std::vector<mark::RawWay> outline_ways_;
  std::vector<FoundFeature> ways_and_areas_;
  std::vector<std::int64_t> needed_;
  std::size_t next_needed_ = 0;  // all before it are below the last node seen
  osmium::Timestamp newest_;
};

}  // namespace loopwright::read
