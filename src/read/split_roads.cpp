// 1. Each road becomes runs of points that the extract holds; a point named twice in a row counts
//    once. Missing points end a run and are reported, once a road.
// 2. A point is a node of the graph when a run ends there, when two roads use it or one road uses
//    it twice, when its tags matter to a driver, when the rails of a tram cross it, or when a turn
//    restriction goes over it.
// 3. Nodes are numbered in order of their map id; each run is cut into pieces at its nodes. A piece with a point beyond
//    the outline is seen but not driven, as a public road unsuited to lessons is.
// Positions in the way (from_index, to_index) are those of the file, so a way that meets itself is
// unambiguous. Everything is kept in flat arrays by row of raw.nodes: no map per node.
#include "split_roads.hpp"

#include <algorithm>
#include <string>

#include "loopwright/road/by_id.hpp"

namespace loopwright::read {
namespace {

/// A point of a road: row in raw.nodes and position in the way.
struct Spot {
  std::uint32_t row = 0;
  std::uint32_t index = 0;
};

/// Part of a road whose points are all known.
struct Run {
  const Road* road = nullptr;
  std::size_t first = 0, end = 0;  ///< into spots
  bool cut_before = false, cut_after = false;
};

/// What is known of a row of raw.nodes.
struct RowFacts {
  std::uint32_t flags = 0;  ///< road::node_flag
  bool used = false, split = false, cut = false, beyond = false;
  NodeId node;
};

std::uint32_t flags_of(const mark::Tags& tags, mark::BuiltWith with) {
  const bool wall = mark::barrier_of(tags, with) == mark::Barrier::wall;
  return mark::node_flags_of(tags) | (wall ? road::node_flag::wall : 0);
}

/// The tag by which a car may pass a point at some hours only; empty when none has hours.
std::string hours_tag(const mark::Tags& tags) {
  for (const std::string_view mode : {"motorcar", "motor_vehicle", "vehicle", "access"}) {
    const std::string key = std::string(mode) + ":conditional";
    if (tags.has(key)) return key + "=" + std::string(tags.get(key));
  }
  return {};
}

class Splitter {
 public:
  Splitter(mark::Draft& draft, const Outline* outline)
      : draft_(draft), facts_(draft.raw.nodes.size()) {
    if (outline != nullptr)
      for (std::size_t row = 0; row < facts_.size(); ++row)
        facts_[row].beyond = facts_[row].cut = !outline->contains(draft.raw.nodes[row].at);
  }
  void take(const Road& road);
  void find_splits();
  std::vector<bool> number_nodes();
  void cut_pieces();

 private:
  void end_run(Run& run);
  void report_missing(const Road& road, std::size_t missing);
  void split_at_tagged_nodes();
  void report_hours(std::int64_t node, const mark::Tags& tags);
  void split_at_tram_crossings();
  void split_at_via_nodes();
  void cut(const Run& run);
  void add_piece(const Run& run, std::size_t first, std::size_t last);
  /// Spots of a piece: whether any lies beyond the outline.
  [[nodiscard]] bool is_beyond(std::size_t first, std::size_t last) const;
  /// One, of the piece just added.
  void add_stretch(mark::Access access, const std::vector<mark::TimedAccess>& rules);
  [[nodiscard]] const mark::RawNode* find(std::int64_t id) const {
    return draft_.raw.find_node(id);
  }
  [[nodiscard]] std::uint32_t row_of(const mark::RawNode* node) const {
    return static_cast<std::uint32_t>(node - draft_.raw.nodes.data());
  }

  mark::Draft& draft_;
  std::vector<RowFacts> facts_;
  std::vector<Spot> spots_;
  std::vector<Run> runs_;
};

void Splitter::end_run(Run& run) {
  run.end = spots_.size();
  if (run.end - run.first >= 2) {
    runs_.push_back(run);
  } else {
    spots_.resize(run.first);
  }
  run.first = spots_.size();
}

void Splitter::report_missing(const Road& road, std::size_t missing) {
  const OsmObject way{road.way->id, ObjectType::way};
  if (missing > 0) {
    draft_.report.odd(way, "road runs out of the extract",
                      std::to_string(missing) + " of " + std::to_string(road.way->nodes.size()) +
                          " points are missing");
  } else {
    draft_.report.odd(way, "road has fewer than two different points");
  }
}

void Splitter::take(const Road& road) {
  const std::size_t runs_before = runs_.size();
  std::size_t missing = 0;
  Run run{&road, spots_.size(), spots_.size()};
  for (std::size_t i = 0; i < road.way->nodes.size(); ++i) {
    const mark::RawNode* node = find(road.way->nodes[i]);
    if (node == nullptr) {
      ++missing;
      run.cut_after = true;
      end_run(run);
      run.cut_before = true;
      run.cut_after = false;
    } else if (run.first == spots_.size() || spots_.back().row != row_of(node)) {
      spots_.push_back({row_of(node), static_cast<std::uint32_t>(i)});
    }
  }
  end_run(run);
  if (missing > 0 || runs_.size() == runs_before) report_missing(road, missing);
}

void Splitter::split_at_tagged_nodes() {
  const mark::BuiltWith with{draft_.info.motorways, draft_.info.fords};
  std::uint32_t row = 0;  // both lists are in order of id
  for (const auto& [id, tags] : draft_.raw.node_tags) {
    while (row < facts_.size() && draft_.raw.nodes[row].id < id) ++row;
    if (row == facts_.size() || draft_.raw.nodes[row].id != id) continue;
    facts_[row].flags = flags_of(tags, with);
    if (facts_[row].flags != 0) facts_[row].split = true;
    if ((facts_[row].flags & road::node_flag::wall) != 0) report_hours(id, tags);
  }
}

/// A point has no hours in the area (src/mark/barriers.cpp), so whoever reads the report may wonder.
void Splitter::report_hours(std::int64_t node, const mark::Tags& tags) {
  const std::string tag = hours_tag(tags);
  if (!tag.empty())
    draft_.report.odd({node, ObjectType::node}, "barrier with hours is shut at all of them", tag);
}

void Splitter::split_at_tram_crossings() {
  for (const std::int64_t id : mark::tram_crossings(draft_.raw)) {
    const mark::RawNode* node = find(id);
    if (node == nullptr) continue;
    facts_[row_of(node)].flags |= road::node_flag::tram_crossing;
    facts_[row_of(node)].split = true;
  }
}

void Splitter::split_at_via_nodes() {
  for (const mark::RawRelation& relation : draft_.raw.restrictions) {
    for (const mark::RawMember& member : relation.members) {
      if (member.type != 'n' || member.role != "via") continue;
      if (const auto* node = find(member.ref)) facts_[row_of(node)].split = true;
    }
  }
}

void Splitter::find_splits() {
  for (const Run& run : runs_) {
    for (std::size_t i = run.first; i < run.end; ++i) {
      RowFacts& facts = facts_[spots_[i].row];
      facts.split = facts.split || facts.used || i == run.first || i + 1 == run.end;
      facts.used = true;
    }
    if (run.cut_before) facts_[spots_[run.first].row].cut = true;
    if (run.cut_after) facts_[spots_[run.end - 1].row].cut = true;
  }
  split_at_tagged_nodes();
  split_at_tram_crossings();
  split_at_via_nodes();
}

std::vector<bool> Splitter::number_nodes() {
  std::vector<bool> cut;
  for (std::size_t row = 0; row < facts_.size(); ++row) {
    RowFacts& facts = facts_[row];
    if (!facts.used || !facts.split) continue;
    facts.node = NodeId{draft_.tables.nodes.size()};
    const mark::RawNode& raw = draft_.raw.nodes[row];
    draft_.tables.nodes.push_back({raw.id, raw.at, facts.flags, 0});
    cut.push_back(facts.cut);
  }
  return cut;
}

void Splitter::add_piece(const Run& run, std::size_t first, std::size_t last) {
  road::Tables& tables = draft_.tables;
  const mark::Tags& tags = run.road->way->tags;
  road::Piece piece;
  piece.way = run.road->way->id;
  piece.a = facts_[spots_[first].row].node;
  piece.b = facts_[spots_[last].row].node;
  piece.from_index = spots_[first].index;
  piece.to_index = spots_[last].index;
  piece.shape_first = static_cast<std::uint32_t>(tables.shape.size());
  piece.shape_count = static_cast<std::uint32_t>(last - first + 1);
  for (std::size_t i = first; i <= last; ++i) {
    tables.shape.push_back(draft_.raw.nodes[spots_[i].row].at);
  }
  piece.length_m = length_m(std::span(tables.shape).subspan(piece.shape_first));
  piece.name = draft_.text(tags.get("name"));
  piece.ref = draft_.text(tags.get("ref"));
  piece.width_source = piece.access_source = draft_.text({});
  if (!run.road->access.tag.empty()) piece.access_source = draft_.text(run.road->access.tag);
  piece.flags = mark::access_flags(run.road->access);
  piece.road_class = run.road->road_class;
  const bool beyond = is_beyond(first, last);
  if (beyond && run.road->access.tag.empty())
    piece.access_source = draft_.text("beyond the outline");
  tables.pieces.push_back(piece);
  if (beyond) {
    draft_.report.count("pieces beyond the outline: seen, not driven");
    tables.stretches.resize(tables.stretches.size() + 2);
    return;
  }
  add_stretch(run.road->access.along, run.road->access.timed_along);
  add_stretch(run.road->access.against, run.road->access.timed_against);
}

bool Splitter::is_beyond(std::size_t first, std::size_t last) const {
  for (std::size_t i = first; i <= last; ++i)
    if (facts_[spots_[i].row].beyond) return true;
  return false;
}

void Splitter::add_stretch(mark::Access access, const std::vector<mark::TimedAccess>& rules) {
  road::Tables& tables = draft_.tables;
  road::Stretch stretch;
  if (access == mark::Access::yes) stretch.flags |= road::stretch_flag::drivable;
  if (!rules.empty()) stretch.flags |= road::stretch_flag::timed;
  for (const mark::TimedAccess& rule : rules) {
    road::TimedRule row;
    row.stretch = StretchId{tables.stretches.size()};
    row.base = draft_.text(rule.base ? "yes" : "no");
    row.text = draft_.text(rule.text);
    row.who = draft_.text(rule.who);
    row.source = draft_.text(rule.source);
    row.about = rule.about;
    tables.timed_rules.push_back(row);
  }
  tables.stretches.push_back(stretch);
}

void Splitter::cut(const Run& run) {
  std::size_t first = run.first;
  for (std::size_t i = run.first + 1; i < run.end; ++i) {
    if (!facts_[spots_[i].row].node.known()) continue;
    add_piece(run, first, i);
    first = i;
  }
}

void Splitter::cut_pieces() {
  for (const Run& run : runs_) cut(run);
}

}  // namespace

std::vector<bool> split_roads(mark::Draft& draft, const std::vector<Road>& roads,
                              const Outline* outline) {
  Splitter splitter(draft, outline);
  for (const Road& road : roads) splitter.take(road);
  splitter.find_splits();
  std::vector<bool> cut = splitter.number_nodes();
  splitter.cut_pieces();
  road::list_by_id(draft.tables);
  return cut;
}

}  // namespace loopwright::read
