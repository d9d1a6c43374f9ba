// Method:
// 1. dual_carriageway=yes or no decides; else maxspeed:type (or source:maxspeed, or maxspeed) of
//    nsl_dual or nsl_single; else a motorway is one.
// 2. Else by the partner: a one-way road that is no ring and no slip road is sampled every 20 m. A
//    sample has a partner when another one-way road of the same name or number lies within 50 m and
//    heads the opposite way (within 30 degrees). Most of its samples (60 %) must have one.
// 3. What step 2 finds must hang together over 200 m, both sides counted: the two arms round a
//    splitter island at a roundabout, or where a street meets another, are no dual carriageway. Pieces
//    hang together which are one road, or go on straight into each other.
// Samples lie in a sorted list of cells of about 100 m, so the work grows with the map, not with its
// square. Figures but the 50 m are ours.
// Source: OSM wiki, page Tag:dual_carriageway: a physical reservation, not the number of lanes; a
// one-way street alone is none.
#include "dual_carriageways.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "connected.hpp"
#include "line_walk.hpp"
#include "loopwright/mark/rules.hpp"
#include "tag_words.hpp"

namespace loopwright::mark {
namespace {

namespace flag = road::piece_flag;
using road::RoadClass;

constexpr double sample_every_m = 20, partner_within_m = 50, opposite_from_deg = 150;
constexpr double least_share = 0.6, least_together_m = 200;
constexpr double goes_on_within_deg = 45;
// A cell is 0.001 degree high (111 m) and 0.002 wide: at least 50 m up to 76 degrees of latitude.
constexpr std::int64_t cell_height_e7 = 10'000, cell_width_e7 = 20'000;

struct Sample {
  std::int64_t row = 0, column = 0;
  Point at;
  double heading_deg = 0;
  PieceId piece;
};

bool before(const Sample& a, const Sample& b) {
  return a.row != b.row ? a.row < b.row : a.column < b.column;
}

bool names(const Tags& tags, std::string_view zone) {
  return std::ranges::any_of(std::array{"maxspeed:type", "source:maxspeed", "maxspeed"},
                             [&](std::string_view key) { return tags.get(key).ends_with(zone); });
}

bool can_have_partner(const Draft& draft, PieceId id) {
  const road::Piece& piece = draft.tables.pieces[id.index()];
  const bool through_road = road::rank(piece.road_class) <= road::rank(RoadClass::residential) &&
                            !road::name(piece.road_class).ends_with("_link");
  if (!through_road || (piece.flags & flag::one_way) == 0) return false;
  if ((piece.flags & (flag::ring | flag::dual)) != 0) return false;
  const Tags& tags = draft.way_tags(id);
  return !tags.is("dual_carriageway", "no") && !names(tags, ":nsl_single");
}

bool runs_against(const Draft& draft, PieceId id) {
  const road::RoadClass road_class = draft.tables.pieces[id.index()].road_class;
  return !one_way_of(draft.way_tags(id), road_class).along;
}

void sample(const Draft& draft, PieceId id, std::vector<Sample>& samples) {
  const road::Piece& piece = draft.tables.pieces[id.index()];
  const auto line =
      std::span<const Point>(draft.tables.shape).subspan(piece.shape_first, piece.shape_count);
  const auto count = static_cast<int>(std::max(1.0, std::round(piece.length_m / sample_every_m)));
  const double step = piece.length_m / count;
  const bool against = runs_against(draft, id);
  LineWalk froms(line), middles(line), tos(line);
  for (int i = 0; i < count; ++i) {
    const double along = (i + 0.5) * step;
    const Point at = middles.at(along);
    const Point from = froms.at(along - step / 2), to = tos.at(along + step / 2);
    const double heading = against ? bearing_deg(to, from) : bearing_deg(from, to);
    samples.push_back({at.lat_e7 / cell_height_e7, at.lon_e7 / cell_width_e7, at, heading, id});
  }
}

bool same_road(const road::Tables& tables, PieceId a, PieceId b) {
  const road::Piece& first = tables.pieces[a.index()];
  const road::Piece& second = tables.pieces[b.index()];
  const auto same = [](TextId x, TextId y) { return x.known() && x.value != 0 && x == y; };
  return same(first.name, second.name) || same(first.ref, second.ref);
}

bool are_partners(const road::Tables& tables, const Sample& a, const Sample& b) {
  return a.piece != b.piece && same_road(tables, a.piece, b.piece) &&
         std::abs(heading_change_deg(a.heading_deg, b.heading_deg)) >= opposite_from_deg &&
         distance_m(a.at, b.at) <= partner_within_m;
}

/// samples are ordered by cell.
bool has_partner(const road::Tables& tables, const std::vector<Sample>& samples,
                 const Sample& one) {
  for (std::int64_t row = one.row - 1; row <= one.row + 1; ++row) {
    const Sample from{row, one.column - 1, {}, 0, {}}, to{row, one.column + 1, {}, 0, {}};
    const auto first = std::lower_bound(samples.begin(), samples.end(), from, before);
    const auto last = std::upper_bound(first, samples.end(), to, before);
    const auto partner = [&](const Sample& other) { return are_partners(tables, one, other); };
    if (std::any_of(first, last, partner)) return true;
  }
  return false;
}

/// Pieces most of whose samples have a partner, ascending.
std::vector<PieceId> with_partner(const Draft& draft) {
  std::vector<Sample> samples;
  for (std::size_t p = 0; p < draft.tables.pieces.size(); ++p) {
    if (can_have_partner(draft, PieceId{p})) sample(draft, PieceId{p}, samples);
  }
  std::ranges::stable_sort(samples, before);
  std::vector<int> all(draft.tables.pieces.size()), matched(draft.tables.pieces.size());
  for (const Sample& one : samples) {
    ++all[one.piece.index()];
    if (has_partner(draft.tables, samples, one)) ++matched[one.piece.index()];
  }
  std::vector<PieceId> found;
  for (std::size_t p = 0; p < all.size(); ++p) {
    if (all[p] > 0 && matched[p] >= least_share * all[p]) found.emplace_back(p);
  }
  return found;
}

/// Both leave a node they share.
bool is_one_road(const road::Roads& roads, const road::Tables& tables, StretchId a, StretchId b) {
  const double change_deg =
      heading_change_deg(road::bearing_in_deg(roads, a.back()), road::bearing_out_deg(roads, b));
  return same_road(tables, a.piece(), b.piece()) || std::abs(change_deg) <= goes_on_within_deg;
}

}  // namespace

std::string dual_tag(const Tags& tags) {
  if (tags.is("dual_carriageway", "yes")) return "dual_carriageway=yes";
  if (tags.has("dual_carriageway")) return {};
  constexpr std::array<std::string_view, 3> keys{"maxspeed:type", "source:maxspeed", "maxspeed"};
  for (const std::string_view key : keys) {
    const std::string_view value = tags.get(key);
    if (value.ends_with(":nsl_dual")) return tag_text(key, value);
  }
  return tags.is("highway", "motorway") ? "highway=motorway" : std::string();
}

void find_dual_carriageways(Draft& draft) {
  road::Tables& tables = draft.tables;
  for (std::size_t p = 0; p < tables.pieces.size(); ++p) {
    if (!dual_tag(draft.way_tags(PieceId{p})).empty()) tables.pieces[p].flags |= flag::dual;
  }
  const road::Roads roads = draft.roads();
  const auto one_road = [&](StretchId a, StretchId b) { return is_one_road(roads, tables, a, b); };
  for (const PieceGroup& group : connected_groups(roads, with_partner(draft), one_road)) {
    if (length_of_group(roads, group) < least_together_m) continue;
    for (const PieceId piece : group) tables.pieces[piece.index()].flags |= flag::dual_inferred;
  }
}

}  // namespace loopwright::mark
