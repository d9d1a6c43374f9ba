// The tables while the marking rules add to them.
//
// 1. Texts are kept once each: a row number is handed out when a text first appears.
// 2. Places are final when added (their nodes and pieces are appended to the place_* columns);
//    a chain of them at each node answers "what is at this junction?".
// 3. Chances keep their paths apart until finish, which orders the chances by entry and lays the
//    paths out in that order. Paths stand one behind the other in blocks, none in two: path_first counts the ids
//    of whole blocks. A country has seven million of them: a piece of memory for each would take five times as much.
#include "loopwright/mark/draft.hpp"

#include <algorithm>
#include <array>
#include <cassert>
#include <span>
#include <utility>

#include "loopwright/mark/row_order.hpp"

namespace loopwright::mark {
namespace {

using road::Kind;
using road::Movement;

constexpr std::size_t block_ids = std::size_t{1} << 20;

bool controls_its_nodes(Kind kind) {
  return road::meets(kind, Kind::roundabout) || road::meets(kind, Kind::mini_roundabout) ||
         kind == Kind::signals;
}

}  // namespace

Draft::Draft(const RawMap& raw_map, road::AreaInfo area_info, road::Report& build_report)
    : raw(raw_map),
      info(std::move(area_info)),
      law(info.region, read_date(std::string_view(info.map_timestamp).substr(0, 10))),
      report(build_report),
      texts_(0, TextHash{this}, SameText{this}) {
  tables.place_node_first = {0};
  tables.place_piece_first = {0};
  tables.text_first = {0, 0};
  texts_.insert(TextId{std::size_t{0}});
}

TextId Draft::text(std::string_view text) {
  if (const auto known = texts_.find(text); known != texts_.end()) return *known;
  const TextId id{texts_.size()};
  tables.text_bytes.insert(tables.text_bytes.end(), text.begin(), text.end());
  tables.text_first.push_back(static_cast<std::uint32_t>(tables.text_bytes.size()));
  texts_.insert(id);
  return id;
}

std::string_view Draft::text(TextId id) const {
  if (!id.known()) return {};
  const std::uint32_t first = tables.text_first[id.index()];
  return {tables.text_bytes.data() + first, tables.text_first[id.index() + 1] - first};
}

void Draft::learn_rows() {
  way_rows_.clear(), node_tag_rows_.clear();
  way_rows_.reserve(tables.pieces.size());
  std::uint32_t row = 0;  // pieces, as the ways they are of, are in order of id
  for (const road::Piece& piece : tables.pieces) {
    while (raw.ways[row].id != piece.way) ++row;
    way_rows_.push_back(row);
  }
  node_tag_rows_.reserve(tables.nodes.size());
  std::uint32_t tagged = 0;
  for (const road::Node& node : tables.nodes) {
    while (tagged < raw.node_tags.size() && raw.node_tags[tagged].first < node.osm_id) ++tagged;
    const bool has_tags =
        tagged < raw.node_tags.size() && raw.node_tags[tagged].first == node.osm_id;
    node_tag_rows_.push_back(has_tags ? tagged + 1 : 0);
  }
}

const RawWay& Draft::way(PieceId piece) const {
  if (piece.index() < way_rows_.size()) return raw.ways[way_rows_[piece.index()]];
  const std::int64_t id = tables.pieces[piece.index()].way;
  const auto at = std::ranges::lower_bound(raw.ways, id, {}, &RawWay::id);
  assert(at != raw.ways.end() && at->id == id);
  return *at;
}

const Tags& Draft::way_tags(PieceId piece) const {
  return way(piece).tags;
}

const Tags& Draft::node_tags(NodeId node) const {
  static const Tags none;
  if (node.index() < node_tag_rows_.size()) {
    const std::uint32_t row = node_tag_rows_[node.index()];
    return row == 0 ? none : raw.node_tags[row - 1].second;
  }
  return raw.tags_of_node(tables.nodes[node.index()].osm_id);
}

road::Roads Draft::roads() const {
  return road::view_of(tables, info);
}

PlaceId Draft::add_place(const road::Place& place, std::span<const NodeId> nodes,
                         std::span<const PieceId> inside) {
  const PlaceId id{tables.places.size()};
  tables.places.push_back(place);
  tables.place_nodes.insert(tables.place_nodes.end(), nodes.begin(), nodes.end());
  tables.place_node_first.push_back(static_cast<std::uint32_t>(tables.place_nodes.size()));
  tables.place_pieces.insert(tables.place_pieces.end(), inside.begin(), inside.end());
  tables.place_piece_first.push_back(static_cast<std::uint32_t>(tables.place_pieces.size()));
  for (const NodeId node : nodes) {
    if (node.index() >= first_place_.size())
      first_place_.resize(std::max(tables.nodes.size(), node.index() + 1), 0);
    places_at_.push_back({id, first_place_[node.index()]});
    first_place_[node.index()] = static_cast<std::uint32_t>(places_at_.size());
  }
  return id;
}

void Draft::add_chance(road::Chance chance, std::span<const StretchId> path) {
  assert(!path.empty() && path.size() <= block_ids);
  if (paths_.empty() || paths_.back().size() + path.size() > block_ids) paths_.emplace_back();
  std::vector<StretchId>& block = paths_.back();
  chance.path_first = static_cast<std::uint32_t>((paths_.size() - 1) * block_ids + block.size());
  chance.path_count = static_cast<std::uint32_t>(path.size());
  block.insert(block.end(), path.begin(), path.end());
  tables.chances.push_back(chance);
}

void Draft::add_run_fact(const road::RunFact& fact) {
  tables.run_facts.push_back(fact);
  tables.stretches[fact.stretch.index()].runs |= road::bit(fact.kind);
}

PlaceId Draft::place_at(NodeId node, Kind kind) const {
  PlaceId first;  // none is greater than any row
  each_place_at(node, [&](PlaceId place) {
    if (road::meets(tables.places[place.index()].kind, kind)) first = std::min(first, place);
  });
  return first;
}

bool Draft::is_controlled(NodeId node) const {
  bool controlled = false;
  each_place_at(node, [&](PlaceId place) {
    controlled = controlled || controls_its_nodes(tables.places[place.index()].kind);
  });
  return controlled;
}

void Draft::finish() {
  std::ranges::sort(tables.chances, comes_before);
  tables.chance_path.clear();
  std::size_t ids = 0;
  for (const std::vector<StretchId>& block : paths_) ids += block.size();
  tables.chance_path.reserve(ids);  // grown bit by bit it would take twice the room
  for (road::Chance& chance : tables.chances) {
    const auto path = std::span(paths_[chance.path_first / block_ids])
                          .subspan(chance.path_first % block_ids, chance.path_count);
    chance.path_first = static_cast<std::uint32_t>(tables.chance_path.size());
    tables.chance_path.insert(tables.chance_path.end(), path.begin(), path.end());
  }
  paths_ = {};
  std::ranges::sort(tables.run_facts, {}, [](const road::RunFact& f) { return order_of(f); });
  std::ranges::stable_sort(tables.bus_lanes, {}, &road::BusLane::piece);
  std::ranges::stable_sort(tables.timed_rules, {}, [](const road::TimedRule& rule) {
    return std::pair(rule.stretch, rule.about);
  });
  std::ranges::stable_sort(tables.idle_rules, {}, [](const road::IdleRule& rule) {
    return std::pair(rule.stretch, rule.source);
  });
}

}  // namespace loopwright::mark
