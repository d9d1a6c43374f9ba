// Roads with the rails of a tram in them.
//
// 1. embedded_rails=tram on the road, or a tram drawn on the road's own points for at least one
//    step from point to point: certain.
// 2. Tracks drawn beside the road's line: a track within 3 m of it, in the same line within 20
//    degrees and on the same layer, for 30 m without a break: inferred. Half of a two-lane road is
//    about 3 m, so such a track lies in the carriageway (all three figures are ours).
// Trams lie in a sorted list of grid cells, so the work grows with the map, not with its square.
// Sources: OSM wiki, pages Key:embedded_rails and Tag:railway=tram.
#include <algorithm>
#include <array>
#include <cmath>
#include <string>

#include "line_walk.hpp"
#include "loopwright/base/equal_rows.hpp"
#include "loopwright/base/text.hpp"
#include "run_rules.hpp"
#include "tag_words.hpp"
#include "tram_rails.hpp"

namespace loopwright::mark {
namespace {

using road::Confidence;
using road::Kind;

constexpr double track_within_m = 3, same_line_within_deg = 20;
constexpr double beside_for_m = 30, track_every_m = 5;

/// Between two points of a tram that follow each other.
struct Track {
  const RawWay* tram = nullptr;
  Point from, to;
};

std::vector<Track> tracks_of(const RawMap& raw) {
  std::vector<Track> tracks;
  for (const RawWay& tram : raw.trams) {
    for (std::size_t i = 1; i < tram.nodes.size(); ++i) {
      const RawNode* from = raw.find_node(tram.nodes[i - 1]);
      const RawNode* to = raw.find_node(tram.nodes[i]);
      if (from != nullptr && to != nullptr) tracks.push_back({&tram, from->at, to->at});
    }
  }
  return tracks;
}

/// A track in one of its cells.
struct TrackInCell {
  std::uint64_t cell = 0;
  std::size_t track = 0;
};

std::vector<TrackInCell> by_cell(const std::vector<Track>& tracks) {
  std::vector<TrackInCell> rows;
  for (std::size_t track = 0; track < tracks.size(); ++track) {
    const std::array line{tracks[track].from, tracks[track].to};
    for (const std::uint64_t cell : road::grid_cells_of(line)) rows.push_back({cell, track});
  }
  std::ranges::stable_sort(rows, {}, &TrackInCell::cell);
  return rows;
}

constexpr std::int32_t margin_e7 = 800;  // 3 m and more, up to 70 degrees of latitude

/// The cells that hold what may lie within the track's distance of a point.
std::vector<std::uint64_t> cells_round(Point at) {
  const std::array box{Point{at.lat_e7 - margin_e7, at.lon_e7 - margin_e7},
                       Point{at.lat_e7 + margin_e7, at.lon_e7 + margin_e7}};
  return road::grid_cells_of(box);
}

/// The same of any point of a track, ascending.
std::vector<std::uint64_t> cells_round(const std::vector<Track>& tracks) {
  std::vector<std::uint64_t> cells;
  for (const Track& track : tracks) {
    for (const std::int32_t north : {-margin_e7, margin_e7})
      for (const std::int32_t east : {-margin_e7, margin_e7}) {
        const auto moved = [&](Point at) { return Point{at.lat_e7 + north, at.lon_e7 + east}; };
        const std::array line{moved(track.from), moved(track.to)};
        const auto beside = road::grid_cells_of(line);
        cells.insert(cells.end(), beside.begin(), beside.end());
      }
  }
  std::ranges::sort(cells);
  cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
  return cells;
}

/// By piece, whether a track lies near enough to any cell of it: of few, even in a town with trams. A road that has a
/// track has a point in such a cell, and the grid lists it there.
std::vector<bool> with_tracks_near(const road::Roads& roads, const std::vector<Track>& tracks) {
  std::vector<bool> near(roads.pieces.size());
  for (const std::uint64_t cell : cells_round(tracks))
    for (const road::GridEntry& entry : equal_rows(roads.grid, cell, &road::GridEntry::cell))
      near[entry.piece.index()] = true;
  return near;
}

bool on_same_layer(const Tags& road, const Tags& tram) {
  return road.get("layer") == tram.get("layer") && road.has("tunnel") == tram.has("tunnel");
}

bool in_same_line(double a_deg, double b_deg) {
  const double turn = std::abs(heading_change_deg(a_deg, b_deg));
  return std::min(turn, 180 - turn) <= same_line_within_deg;
}

class Trams {
 public:
  explicit Trams(Draft& draft)
      : draft_(draft),
        roads_(draft.roads()),
        rails_(draft.raw),
        tracks_(tracks_of(draft.raw)),
        by_cell_(by_cell(tracks_)),
        near_(with_tracks_near(roads_, tracks_)) {}
  RunFamily find();

 private:
  [[nodiscard]] std::string certain_tag(PieceId id) const;
  [[nodiscard]] bool lies_in(PieceId id) const;
  [[nodiscard]] bool has_track(PieceId id, Point at, double heading_deg) const;

  Draft& draft_;
  road::Roads roads_;
  TramRails rails_;
  std::vector<Track> tracks_;
  std::vector<TrackInCell> by_cell_;
  std::vector<bool> near_;  // by piece
};

std::string Trams::certain_tag(PieceId id) const {
  const RawWay& way = draft_.way(id);
  if (!way.tags.has("embedded_rails") && rails_.none()) return {};
  if (way.tags.has("embedded_rails")) {
    for (const std::string_view rails : split(way.tags.get("embedded_rails"), ';'))
      if (rails == "tram") return "embedded_rails=tram";
  }
  const road::Piece& piece = roads_.pieces[id.index()];
  for (std::size_t i = piece.from_index + 1; i <= piece.to_index && !rails_.none(); ++i) {
    const RawWay* tram = rails_.join(way.nodes[i - 1], way.nodes[i]);
    if (tram != nullptr) return "railway=tram on way " + std::to_string(tram->id);
  }
  return {};
}

bool Trams::has_track(PieceId id, Point at, double heading_deg) const {
  for (const std::uint64_t cell : cells_round(at)) {
    for (const TrackInCell& row : equal_rows(by_cell_, cell, &TrackInCell::cell)) {
      const Track& track = tracks_[row.track];
      const std::array line{track.from, track.to};
      if (nearest_on_line(line, at).off_m <= track_within_m &&
          in_same_line(bearing_deg(track.from, track.to), heading_deg) &&
          on_same_layer(draft_.way_tags(id), track.tram->tags)) {
        return true;
      }
    }
  }
  return false;
}

/// Step 2.
bool Trams::lies_in(PieceId id) const {
  const auto shape = roads_.shape_of(id);
  LineWalk froms(shape), middles(shape), tos(shape);
  double unbroken_m = 0;
  for (double along = 0; along + track_every_m <= roads_.pieces[id.index()].length_m;
       along += track_every_m) {
    const Point from = froms.at(along), to = tos.at(along + track_every_m);
    const Point middle = middles.at(along + track_every_m / 2);
    unbroken_m = has_track(id, middle, bearing_deg(from, to)) ? unbroken_m + track_every_m : 0;
    if (unbroken_m >= beside_for_m) return true;
  }
  return false;
}

RunFamily Trams::find() {
  RunFamily family{Kind::tram, {}};
  for (std::size_t row = 0; row < roads_.pieces.size(); ++row) {
    const PieceId id{row};
    if (roads_.pieces[row].road_class == road::RoadClass::service) continue;
    std::string tag = certain_tag(id);
    const Confidence confidence = tag.empty() ? Confidence::inferred : Confidence::certain;
    if (tag.empty() && near_[row] && lies_in(id)) tag = "railway=tram beside its line";
    if (tag.empty()) continue;
    for (const StretchId stretch : {StretchId{id, false}, StretchId{id, true}}) {
      if (!roads_.drivable(stretch)) continue;
      family.members.push_back({stretch, Kind::tram, confidence, draft_.text(tag)});
    }
  }
  return family;
}

}  // namespace

RunFamily tram_runs(Draft& draft) {
  return Trams(draft).find();
}

}  // namespace loopwright::mark
