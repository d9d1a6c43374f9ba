// Method: a note's line is looked at every 10 m, from its first point on; for what it may speak of at all,
// where that comes near, every metre, since whoever laid it looked at other points of it. The nearest road is
// that of all roads a learner may drive by the map. Whoever laid the note may measure a little otherwise, so
// what is beyond doubt takes more than laying it does: smaller angles, more metres (ours).
#include <algorithm>
#include <cmath>

#include "proof/notes.hpp"

namespace loopwright::proof {
namespace {

constexpr double step_m = 10, fine_step_m = 1, rounding_m = 0.1;
constexpr double heading_within_deg = 45, parallel_within_deg = 30;
constexpr double shut_beyond_doubt_m = 30, share_beyond_doubt = 0.75;

std::vector<Point> steps_along(const road::Note& note) {
  if (note.line.size() == 1) return note.line;
  std::vector<Point> steps;
  const auto whole = static_cast<int>(length_m(note.line) / step_m);
  for (int step = 0; step <= whole; ++step) {
    steps.push_back(point_along(note.line, step * step_m));
  }
  return steps;
}

PieceId nearest_road(const road::Roads& map, Point at) {
  PieceId nearest;
  double nearest_m = road::note_reach_m;
  for (const PieceId piece : road::pieces_near(map, at, road::note_reach_m)) {
    if (!map.drivable({piece, false}) && !map.drivable({piece, true})) continue;
    const double off_m = nearest_on_line(map.shape_of(piece), at).off_m;
    if (off_m < nearest_m) nearest = piece, nearest_m = off_m;
  }
  return nearest;
}

/// Heading of the stretch where it passes a point.
double heading_by(const road::Roads& map, StretchId stretch, Point at) {
  const auto line = map.shape_of(stretch.piece());
  const double along = nearest_on_line(line, at).along_m;
  const double heading =
      bearing_deg(point_along(line, along - step_m), point_along(line, along + step_m));
  return stretch.against() ? heading + 180 : heading;
}

/// The stretch is driven as the note means it, where one of its steps lies.
bool is_meant(const road::Roads& map, const road::Note& note, StretchId stretch, std::size_t step,
              const std::vector<Point>& steps) {
  const double driven = heading_by(map, stretch, steps[step]);
  if (steps.size() == 1) {
    return !note.heading_deg ||
           std::abs(heading_change_deg(*note.heading_deg, driven)) <= heading_within_deg;
  }
  const std::size_t from = std::min(step, steps.size() - 2);
  const double apart =
      std::abs(heading_change_deg(bearing_deg(steps[from], steps[from + 1]), driven));
  const bool opposite = note.way == road::NoteWay::both && 180 - apart <= parallel_within_deg;
  return apart <= parallel_within_deg || opposite;
}

double metres_beyond_doubt(const road::Roads& map, const road::Note& note, StretchId stretch) {
  const bool shuts = note.says == road::NoteKind::closed || note.says == road::NoteKind::never;
  const double least = std::min(map.piece(stretch).length_m, length_m(note.line));
  return shuts ? shut_beyond_doubt_m : std::max(shut_beyond_doubt_m, share_beyond_doubt * least);
}

}  // namespace

bool in_reach(const road::Roads& map, const road::Note& note, StretchId stretch) {
  const auto line = map.shape_of(stretch.piece());
  const auto lies_within = [&](Point at, double metres) {
    return nearest_on_line(line, at).off_m <= road::note_reach_m + metres + rounding_m;
  };
  const std::vector<Point> steps = steps_along(note);
  const double length = length_m(note.line);
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (!lies_within(steps[i], step_m)) continue;  // nor does what follows, up to the next
    if (lies_within(steps[i], 0)) return true;
    for (int fine = 1; fine < step_m / fine_step_m; ++fine) {
      const double along = static_cast<double>(i) * step_m + fine * fine_step_m;
      if (along <= length && lies_within(point_along(note.line, along), fine_step_m)) return true;
    }
  }
  return false;
}

bool speaks_of(const road::Roads& map, const road::Note& note, StretchId stretch) {
  if (!in_reach(map, note, stretch)) return false;
  const std::vector<Point> steps = steps_along(note);
  int count = 0;
  for (std::size_t i = 0; i < steps.size(); ++i) {
    if (nearest_road(map, steps[i]) != stretch.piece()) continue;
    if (is_meant(map, note, stretch, i, steps)) ++count;
  }
  if (note.line.size() == 1) return count > 0;
  return count * step_m >= metres_beyond_doubt(map, note, stretch);
}

}  // namespace loopwright::proof
