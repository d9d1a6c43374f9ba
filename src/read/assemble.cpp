// 1. Select the ways that are road; cut them into pieces; list what leaves each node.
// 2. Resolve turn restrictions to stretches; from them, what a driver must remember.
// 3. Lay out the legal turns; shut what can't be driven into and out of.
// 4. Lay out the snapping grid.
// 5. Apply the marking rules, which add the facts a lesson is about.
// Everything is in order of map ids, so the result doesn't depend on the order of the file.
#include <algorithm>

#include "adjacency.hpp"
#include "cut_off.hpp"
#include "loopwright/base/point_between.hpp"
#include "loopwright/hours/zone.hpp"
#include "loopwright/mark/rules.hpp"
#include "loopwright/read/build.hpp"
#include "reservation_gaps.hpp"
#include "select_roads.hpp"
#include "split_roads.hpp"
#include "turn_rules.hpp"
#include "turn_table.hpp"

namespace loopwright::read {
namespace {

Point middle_of(const std::vector<mark::RawNode>& nodes) {
  if (nodes.empty()) return {};
  std::int64_t lat = 0, lon = 0;
  for (const mark::RawNode& node : nodes)
    lat += node.at.lat_e7, lon += lon_beside_e7(node.at, nodes.front().at);
  const auto count = static_cast<std::int64_t>(nodes.size());
  return point_of_turn(lat / count, lon / count);
}

road::AreaInfo info_of(const mark::RawMap& raw, const BuildOptions& options) {
  road::AreaInfo info;
  info.region = options.region;
  info.map_timestamp = raw.timestamp;
  info.zone = hours::zone_of(options.region.code, middle_of(raw.nodes));
  info.motorways = options.motorways;
  info.fords = options.fords;
  return info;
}

/// Lists each piece in the cells of the snapping grid that it may touch.
void lay_out_grid(road::Tables& tables) {
  for (std::size_t p = 0; p < tables.pieces.size(); ++p) {
    const road::Piece& piece = tables.pieces[p];
    const auto shape = std::span(tables.shape).subspan(piece.shape_first, piece.shape_count);
    for (const std::uint64_t cell : road::grid_cells_of(shape)) {
      tables.grid.push_back({cell, PieceId{p}, 0});
    }
  }
  std::ranges::stable_sort(tables.grid, {}, &road::GridEntry::cell);
}

void lay_out_graph(mark::Draft& draft, const BuildOptions& options) {
  const std::vector<bool> cut =
      split_roads(draft, select_roads(draft.raw, options, draft.report), options.outline.get());
  draft.learn_rows();
  list_leaving(draft.tables);
  draft.learn_bearings();
  find_dead_ends(draft, cut);
  resolve_turn_rules(draft);
  const ViaMemory memory(draft.roads(), ways_round_a_gap(draft.roads()));
  draft.tables.copies = memory.copies();
  lay_out_turns(draft, memory);
  shut_cut_off(draft);
  lay_out_grid(draft.tables);
}

void count_nodes(const road::Tables& tables, road::Report& report) {
  constexpr std::pair<std::uint32_t, std::string_view> kinds[] = {
      {road::node_flag::signals, "nodes: traffic lights"},
      {road::node_flag::signal_crossing, "nodes: crossings with lights"},
      {road::node_flag::zebra, "nodes: striped crossings"},
      {road::node_flag::level_crossing, "nodes: level crossings"},
      {road::node_flag::mini_roundabout, "nodes: mini-roundabouts"},
      {road::node_flag::give_way, "nodes: give way"},
      {road::node_flag::stop, "nodes: stop"},
      {road::node_flag::wall, "nodes: barriers no car passes"},
      {road::node_flag::dead_end, "nodes: dead ends"}};
  for (const auto& [flag, name] : kinds) {
    report.count(name, std::ranges::count_if(tables.nodes, [flag = flag](const road::Node& node) {
                   return (node.flags & flag) != 0;
                 }));
  }
}

void count_graph(const mark::Draft& draft) {
  const road::Tables& tables = draft.tables;
  road::Report& report = draft.report;
  const auto size = [](const auto& column) { return static_cast<std::int64_t>(column.size()); };
  report.count("objects left out: their id came before", draft.raw.repeated_ids);
  report.count("nodes", size(tables.nodes));
  report.count("pieces", size(tables.pieces));
  report.count("turns", size(tables.turns));
  report.count("states with memory", size(tables.copies));
  report.count("directions a learner may drive",
               std::ranges::count_if(tables.stretches, [](const road::Stretch& stretch) {
                 return (stretch.flags & road::stretch_flag::drivable) != 0;
               }));
  count_nodes(tables, report);
}

}  // namespace

Built assemble(const mark::RawMap& raw, const BuildOptions& options, road::Report& report,
               const Progress& progress) {
  mark::Draft draft(raw, info_of(raw, options), report);
  draft.heights = options.heights;
  tell(progress, "joining roads", 0);
  lay_out_graph(draft, options);
  count_graph(draft);
  tell(progress, "finding practice", 0);
  mark::mark_all(draft);
  tell(progress, "finding practice", 1);
  return {std::move(draft.tables), std::move(draft.info)};
}

}  // namespace loopwright::read
