// 1. A point goes to the road whose line is nearest, of those it fits: within reach, and drivable in
//    a direction the note means (its heading within 60 degrees of the road's there).
// 2. A line is walked in steps of 10 m; each step goes to the nearest road that runs its way (within
//    45 degrees), so that side streets and crossings don't draw it off. A piece counts when half of
//    it, or half of the line, lies on it; of a road that is shut 20 m will do, since a part that is
//    shut shuts the whole.
// The angles and lengths are ours.
#include "note_spots.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace loopwright::mark {
namespace {

using road::Note;
using road::NoteKind;

constexpr double heading_within_deg = 60, parallel_within_deg = 45;
constexpr double spot_every_m = 10, shut_from_m = 20;
constexpr std::size_t arms_of_a_junction = 3;

/// What is looked for along the note: a place, and the heading its road must have.
struct Step {
  Point at;
  std::optional<double> heading_deg;
  double within_deg = heading_within_deg;
  bool either_way = true;  ///< the opposite heading will do too
};

struct Fit {
  PieceId piece;
  Foot foot;
  bool along = false, against = false;  ///< directions that fit
};

double apart_deg(double a, double b) {
  return std::abs(heading_change_deg(a, b));
}

/// Heading of a line where the foot lies on it.
double heading_at(std::span<const Point> line, const Foot& foot) {
  constexpr double reach_m = 5;
  return bearing_deg(point_along(line, foot.along_m - reach_m),
                     point_along(line, foot.along_m + reach_m));
}

Fit fit_of(const road::Roads& roads, PieceId piece, const Step& step) {
  const auto line = roads.shape_of(piece);
  Fit fit{piece, nearest_on_line(line, step.at)};
  const auto fits = [&](double heading) {
    if (!step.heading_deg) return true;
    const double apart = apart_deg(heading, *step.heading_deg);
    return apart <= step.within_deg || (step.either_way && 180 - apart <= step.within_deg);
  };
  const double heading = heading_at(line, fit.foot);
  fit.along = roads.drivable({piece, false}) && fits(heading);
  fit.against = roads.drivable({piece, true}) && fits(heading + 180);
  return fit;
}

std::optional<Fit> nearest_fit(const road::Roads& roads, const Step& step) {
  std::optional<Fit> nearest;
  for (const PieceId piece : road::pieces_near(roads, step.at, road::note_reach_m)) {
    const Fit fit = fit_of(roads, piece, step);
    if ((!fit.along && !fit.against) || fit.foot.off_m > road::note_reach_m) continue;
    if (!nearest || fit.foot.off_m < nearest->foot.off_m) nearest = fit;
  }
  return nearest;
}

std::vector<Step> steps_of(const Note& note) {
  if (note.line.size() == 1) {
    Step step{note.line.front(), note.heading_deg};
    step.either_way = false;
    return {step};
  }
  std::vector<Step> steps;
  const double length = length_m(note.line);
  const auto count = static_cast<int>(std::ceil(length / spot_every_m));
  for (int i = 0; i < std::max(count, 1); ++i) {
    const double along = (i + 0.5) * length / std::max(count, 1);
    const Foot foot{along, 0, point_along(note.line, along)};
    steps.push_back({foot.at, heading_at(note.line, foot), parallel_within_deg,
                     note.way == road::NoteWay::both});
  }
  return steps;
}

/// What the steps found on one piece, in metres along it.
struct Covered {
  double from_m = 0, to_m = 0;
  std::size_t steps = 0;
  bool along = false, against = false;
  void take(const Fit& fit) {
    from_m = steps == 0 ? fit.foot.along_m : std::min(from_m, fit.foot.along_m);
    to_m = std::max(to_m, fit.foot.along_m);
    along = along || fit.along, against = against || fit.against;
    ++steps;
  }
};

bool is_enough(const Note& note, const Covered& covered, double piece_m) {
  if (note.line.size() == 1) return true;
  const double metres = static_cast<double>(covered.steps) * spot_every_m;
  const bool shuts = note.says == NoteKind::closed || note.says == NoteKind::never;
  if (shuts && metres >= shut_from_m) return true;
  return 2 * metres >= piece_m || 2 * metres >= length_m(note.line);
}

}  // namespace

std::vector<NotedPart> parts_of(const road::Roads& roads, const Note& note) {
  std::map<PieceId, Covered> by_piece;
  for (const Step& step : steps_of(note)) {
    if (const auto fit = nearest_fit(roads, step)) by_piece[fit->piece].take(*fit);
  }
  std::vector<NotedPart> parts;
  for (const auto& [piece, covered] : by_piece) {
    const double length = roads.pieces[piece.index()].length_m;
    if (!is_enough(note, covered, length)) continue;
    if (covered.along) parts.push_back({{piece, false}, covered.from_m, covered.to_m});
    if (covered.against) {
      parts.push_back({{piece, true}, length - covered.to_m, length - covered.from_m});
    }
  }
  return parts;
}

std::optional<NodeId> junction_of(const road::Roads& roads, const Note& note) {
  const Point at = note.line.front();
  std::optional<NodeId> nearest;
  double nearest_m = road::note_reach_m;
  for (const PieceId piece : road::pieces_near(roads, at, road::note_reach_m)) {
    for (const StretchId s : {StretchId{piece, false}, StretchId{piece, true}}) {
      const NodeId node = roads.from_node(s);
      const double off_m = distance_m(roads.nodes[node.index()].at, at);
      if (roads.leaving(node).size() < arms_of_a_junction || off_m >= nearest_m) continue;
      nearest = node, nearest_m = off_m;
    }
  }
  return nearest;
}

bool means_heading(const Note& note, double heading_deg) {
  return !note.heading_deg || apart_deg(heading_deg, *note.heading_deg) <= heading_within_deg;
}

}  // namespace loopwright::mark
