// 1. Where a road piece ends: at a junction, sign, light or crossing so much is kept clear as the
//    table says. Where the road just goes on, what lies behind that end within its margin is kept
//    clear from too.
// 2. On the piece: drives and aisles that meet it (they are no part of the graph; their nodes on the
//    road are), crossings without lights, islands.
// 3. Bends: at each point of the line the headings of the 12 m before and behind it are compared; a
//    circle through the three points tighter than the table's radius is a bend.
// 4. Beside it: bus stops, taxi ranks, schools, fire stations … and tram rails. Lines are sampled.
//    What lies `off` from the middle of the road keeps clear the chord of its circle.
// Source: Highway Code rules 240 and 243; src/rules/pull_ups.txt has the metres with reasons.
#include "clear_kerb.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "approach.hpp"
#include "box.hpp"
#include "flat.hpp"
#include "line_walk.hpp"
#include "loopwright/base/equal_rows.hpp"
#include "loopwright/base/in_parts.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

namespace node_flag = road::node_flag;
namespace piece_flag = road::piece_flag;

constexpr double arm_m = 12;      // before and behind a point, to tell its curve by
constexpr double sample_m = 15;   // between points of an outline, less than any margin
constexpr double look_on_m = 40;  // more than any margin

/// A turn of this many degrees between two arms lies on a circle of the radius.
double turn_on_circle_deg(double radius_m) {
  return 2 * std::atan(arm_m / radius_m) * 180 / std::numbers::pi;
}

bool is_closed_off(const Tags& tags) {
  return tags.is("access", "no") || tags.is("motor_vehicle", "no");
}

}  // namespace

ClearKerb::ClearKerb(const Draft& draft, const road::Roads& roads, const PullUpRules& rules)
    : draft_(draft),
      roads_(roads),
      junction_m_(rules.at("junction")),
      dead_end_m_(rules.at("dead end")),
      crossing_m_(rules.at("crossing")),
      signals_m_(rules.at("signals")),
      level_crossing_m_(rules.at("level crossing")),
      narrowing_m_(rules.at("narrowing")),
      plain_crossing_m_(rules.at("plain crossing")),
      island_m_(rules.at("island")),
      bend_m_(rules.at("bend")),
      bend_radius_m_(rules.at("bend radius")),
      beside_m_{{"highway=bus_stop", rules.at("bus stop")},
                {"amenity=taxi", rules.at("taxi rank")},
                {"amenity=school", rules.at("school")},
                {"amenity=kindergarten", rules.at("school")},
                {"hazard=school_zone", rules.at("school")},
                {"amenity=fire_station", rules.at("emergency")},
                {"amenity=hospital", rules.at("emergency")},
                {"emergency=ambulance_station", rules.at("emergency")}} {
  for (const RawWay& way : draft.raw.ways) {
    if (!is_minor_service(way.tags) || is_closed_off(way.tags)) continue;
    const bool drive = way.tags.is("service", "driveway");
    const double margin = rules.at(drive ? "drive" : "aisle");
    for (const std::int64_t node : way.nodes) on_nodes_.emplace_back(node, margin);
  }
  for (const auto& [node, tags] : draft.raw.node_tags)
    if (const double margin = margin_of_tags(tags); margin > 0)
      on_nodes_.emplace_back(node, margin);
  std::ranges::sort(on_nodes_);
  each_in_order(
      roads.pieces.size(), [&](std::size_t row) { return blocks_by(PieceId{row}); },
      [&](std::size_t, std::vector<Block>&& blocks) {
        blocks_.insert(blocks_.end(), blocks.begin(), blocks.end());
      });
  add_features();
  for (const RawWay& rails : draft.raw.trams) {
    std::vector<Point> line;
    for (const std::int64_t node : rails.nodes)
      if (const RawNode* known = draft.raw.find_node(node)) line.push_back(known->at);
    add_line(line, rules.at("tram"));
  }
  std::ranges::sort(blocks_, {}, &Block::piece);
}

std::vector<KerbPart> ClearKerb::parts(PieceId piece) const {
  const double length_m = roads_.pieces[piece.index()].length_m;
  std::vector<KerbPart> kept_clear;
  for (const Block& block : equal_rows(blocks_, piece, &Block::piece))
    kept_clear.push_back({block.at_m - block.margin_m, block.at_m + block.margin_m});
  std::ranges::sort(kept_clear, {}, &KerbPart::from_m);
  std::vector<KerbPart> parts;
  double free_from_m = 0;
  for (const KerbPart& part : kept_clear) {
    if (part.from_m > free_from_m) parts.push_back({free_from_m, std::min(part.from_m, length_m)});
    free_from_m = std::max(free_from_m, part.to_m);
  }
  if (length_m > free_from_m) parts.push_back({free_from_m, length_m});
  return parts;
}

/// What the road itself keeps clear; some of it may lie on the next piece.
std::vector<ClearKerb::Block> ClearKerb::blocks_by(PieceId piece) const {
  std::vector<Block> blocks;
  if (!roads_.drivable({piece, false}) && !roads_.drivable({piece, true})) return blocks;
  for (const bool against : {false, true}) walk_beyond({piece, against}, blocks);
  add_nodes(piece, blocks);
  add_bends(piece, blocks);
  return blocks;
}

double ClearKerb::margin_of_tags(const Tags& tags) const {
  const bool island = tags.is("crossing:island", "yes") || tags.is("traffic_calming", "island") ||
                      tags.is("crossing", "island");
  return std::max(island ? island_m_ : 0, tags.is("highway", "crossing") ? plain_crossing_m_ : 0);
}

double ClearKerb::margin_at(NodeId node) const {
  const std::uint32_t flags = roads_.nodes[node.index()].flags;
  const std::array<std::pair<std::uint32_t, double>, 6> margins{{
      {node_flag::level_crossing | node_flag::tram_crossing, level_crossing_m_},
      {node_flag::signals, signals_m_},
      {node_flag::zebra | node_flag::signal_crossing, crossing_m_},
      {node_flag::mini_roundabout | node_flag::box_junction, junction_m_},
      {node_flag::pinch_point | node_flag::ford | node_flag::passing_place, narrowing_m_},
      {node_flag::dead_end | node_flag::wall, dead_end_m_},
  }};
  double most = road_ends(roads_, node) > 2 ? junction_m_ : 0;
  for (const auto& [bits, metres] : margins)
    if ((flags & bits) != 0) most = std::max(most, metres);
  return most;
}

void ClearKerb::add_point(const Block& block, std::vector<Block>& blocks) const {
  const auto [piece, at_m, margin_m] = block;
  blocks.push_back(block);
  const double length_m = roads_.pieces[piece.index()].length_m;
  for (const bool against : {false, true}) {
    const StretchId s{piece, against};
    const double to_end_m = against ? at_m : length_m - at_m;
    const NodeId end = roads_.to_node(s);
    if (to_end_m >= margin_m || road_ends(roads_, end) != 2) continue;
    // The road goes on: what is left of the margin lies on the next piece.
    for (const StretchId next : roads_.leaving(end)) {
      if (next == s.back()) continue;
      const double beyond_m = -to_end_m;
      const double next_m = roads_.piece(next).length_m;
      blocks.push_back({next.piece(), next.against() ? next_m - beyond_m : beyond_m, margin_m});
    }
  }
}

void ClearKerb::walk_beyond(StretchId towards_end, std::vector<Block>& blocks) const {
  const double length_m = roads_.piece(towards_end).length_m;
  const auto keep_clear = [&](double beyond_m, double margin_m) {
    if (margin_m <= beyond_m) return;
    const double at_m = towards_end.against() ? -beyond_m : length_m + beyond_m;
    blocks.push_back({towards_end.piece(), at_m, margin_m});
  };
  double beyond_m = 0;
  StretchId s = towards_end;
  while (beyond_m < look_on_m) {
    const NodeId node = roads_.to_node(s);
    keep_clear(beyond_m, margin_at(node));
    if (road_ends(roads_, node) != 2) return;
    const auto out = roads_.leaving(node);
    const StretchId next = out[0] == s.back() ? out[1] : out[0];
    const double turn =
        std::abs(heading_change_deg(draft_.bearing_in_deg(s), draft_.bearing_out_deg(next)));
    if (turn > turn_on_circle_deg(bend_radius_m_)) keep_clear(beyond_m, bend_m_);
    s = next;
    if (s.piece() == towards_end.piece()) return;
    beyond_m += roads_.piece(s).length_m;
  }
}

void ClearKerb::add_nodes(PieceId piece, std::vector<Block>& blocks) const {
  const RawWay& way = draft_.way(piece);
  const road::Piece& row = roads_.pieces[piece.index()];
  const auto shape = roads_.shape_of(piece);
  const auto margin_of = [&](std::int64_t id) {
    const auto last = std::ranges::upper_bound(on_nodes_, id, {}, &NodeMargin::first);
    const bool known = last != on_nodes_.begin() && std::prev(last)->first == id;
    return known ? std::prev(last)->second : 0.0;  // the widest of a node stands last
  };
  double at_m = 0;
  for (std::size_t i = row.from_index; i <= row.to_index && i < way.nodes.size(); ++i) {
    const std::size_t k = i - row.from_index;
    if (k > 0 && k < shape.size()) at_m += loopwright::distance_m(shape[k - 1], shape[k]);
    if (const double margin = margin_of(way.nodes[i]); margin > 0)
      add_point({piece, at_m, margin}, blocks);
  }
}

void ClearKerb::add_bends(PieceId piece, std::vector<Block>& blocks) const {
  const auto shape = roads_.shape_of(piece);
  if (shape.size() < 3) return;
  const double bend_deg = turn_on_circle_deg(bend_radius_m_);
  const Flat flat(shape, bend_deg);
  if (flat.is_straight(shape)) return;
  LineWalk behind(shape), ahead(shape);
  double at_m = 0;
  for (std::size_t i = 1; i + 1 < shape.size(); ++i) {
    at_m += loopwright::distance_m(shape[i - 1], shape[i]);
    const Point before = behind.at(at_m - arm_m), after = ahead.at(at_m + arm_m);
    if (flat.turns_less(before, shape[i], after)) continue;
    const double turn =
        std::abs(heading_change_deg(bearing_deg(before, shape[i]), bearing_deg(shape[i], after)));
    if (turn > bend_deg) add_point({piece, at_m, bend_m_}, blocks);
  }
}

void ClearKerb::add_around(Point at, double margin_m) {
  for (const PieceId piece : road::pieces_near(roads_, at, margin_m)) {
    const auto shape = roads_.shape_of(piece);
    if (!box_of(shape).may_be_near(at, margin_m)) continue;
    const Foot foot = nearest_on_line(shape, at);
    if (foot.off_m >= margin_m) continue;
    const double half_m = std::sqrt(margin_m * margin_m - foot.off_m * foot.off_m);
    blocks_.push_back({piece, foot.along_m, half_m});
  }
}

void ClearKerb::add_line(std::span<const Point> line, double margin_m) {
  const double step_m = std::min(sample_m, margin_m);
  for (std::size_t i = 0; i + 1 < line.size(); ++i) {
    const auto part = line.subspan(i, 2);
    const double length_m = loopwright::length_m(part);
    for (double at_m = 0; at_m < length_m; at_m += step_m)
      add_around(point_along(part, at_m), margin_m);
  }
  if (!line.empty()) add_around(line.back(), margin_m);
}

void ClearKerb::add_features() {
  for (const RawFeature& feature : draft_.raw.features) {
    double margin_m = 0;
    for (const std::string_view key : {"highway", "amenity", "hazard", "emergency"}) {
      if (!feature.tags.has(key)) continue;
      const auto found = beside_m_.find(tag_text(feature.tags, key));
      if (found != beside_m_.end()) margin_m = std::max(margin_m, found->second);
    }
    if (margin_m == 0) continue;
    if (feature.lines.empty()) add_around(feature.at, margin_m);
    for (const std::vector<Point>& line : feature.lines) add_line(line, margin_m);
  }
}

}  // namespace loopwright::mark
