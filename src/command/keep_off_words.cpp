// Method, for what is kept off and what is taken:
//   1. Hours stand behind the last '@'. What stands before it is an area when it has a ';'.
//   2. A street becomes the middle of the piece of it that lies nearest to where the name was found; a
//      crossing the junction there; anything else the junction it lies at, or else the nearest road.
#include "command/keep_off_words.hpp"

#include <algorithm>
#include <cmath>
#include <span>

#include "command/arguments.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/text.hpp"
#include "loopwright/hours/hours.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/road/junction_near.hpp"

namespace loopwright::command {
namespace {

// The same as where keep-offs are looked up (src/find/keep_off.cpp), but for the crossing, which the
// index of names has at the middle of its streets' junction.
constexpr double junction_m = 5, crossing_m = 60, street_m = 300;

void need_readable(std::string_view hours) {
  const hours::Hours read = hours::read_hours(hours);
  if (read.readable()) return;
  throw UsageError("--keep-off: the hours " + as_given(hours) + " can't be read at character " +
                   std::to_string(read.stopped_at() + 1) + ": " + std::string(read.problem()) +
                   " was looked for there");
}

/// An area that no lesson gets round is a slip, and takes long to look through.
void need_near_each_other(std::string_view option, std::string_view text,
                          std::span<const Point> corners) {
  constexpr double farthest_m = 100'000;  // ours
  const bool is_wide = std::ranges::any_of(
      corners, [&](Point corner) { return distance_m(corners.front(), corner) > farthest_m; });
  if (is_wide)
    throw UsageError(std::string(option) + ": the corners of " + as_given(text) +
                     " lie over 100 km apart; each is LAT,LON, the latitude stands first");
}

/// In none of its corners is there a road, but there would be with longitudes first, as some maps give them.
void need_latitude_first(std::string_view text, std::span<const Point> corners,
                         const road::Roads& roads) {
  const auto swapped = [](Point at) { return point_from_degrees(at.lon(), at.lat()); };
  const bool all_far = std::ranges::none_of(
      corners, [&](Point at) { return reach::nearest_road(roads, at).has_value(); });
  if (all_far && std::ranges::any_of(corners, [&](Point at) {
        return std::abs(at.lon()) <= 90 && reach::nearest_road(roads, swapped(at)).has_value();
      }))
    throw UsageError("--keep-off: " + as_given(text) +
                     " is not in this area, but would be the other way round: the latitude "
                     "stands first");
}

/// In metres east and north of the first corner; flat, since corners lie near each other.
struct Flat {
  double x = 0, y = 0;
};

std::vector<Flat> flattened(std::span<const Point> corners) {
  std::vector<Flat> flat;
  for (const Point corner : corners) {
    const Point beside{corners.front().lat_e7, corner.lon_e7};
    const double x = distance_m(corners.front(), beside), y = distance_m(beside, corner);
    flat.push_back({corner.lon_e7 < corners.front().lon_e7 ? -x : x,
                    corner.lat_e7 < corners.front().lat_e7 ? -y : y});
  }
  return flat;
}

/// Twice the area of a triangle; its sign tells to which side of ab lies c.
double side_of(const Flat& a, const Flat& b, const Flat& c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool lines_cross(const Flat& a, const Flat& b, const Flat& c, const Flat& d) {
  return side_of(a, b, c) * side_of(a, b, d) < 0 && side_of(c, d, a) * side_of(c, d, b) < 0;
}

bool crosses_itself(const std::vector<Flat>& flat) {
  const std::size_t count = flat.size();
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t k = i + 1; k < count; ++k)
      if (lines_cross(flat[i], flat[(i + 1) % count], flat[k], flat[(k + 1) % count])) return true;
  return false;
}

/// What nothing lies in keeps nothing off, and what crosses itself isn't the area that was meant.
void need_area(std::string_view option, std::string_view text, std::span<const Point> corners) {
  constexpr double least_m2 = 1;
  const std::vector<Flat> flat = flattened(corners);
  if (crosses_itself(flat))
    throw UsageError(std::string(option) + ": the lines of " + as_given(text) +
                     " cross each other; give the corners in their order round the area");
  double twice_m2 = 0;
  for (std::size_t i = 0; i + 1 < flat.size(); ++i) twice_m2 += side_of({}, flat[i], flat[i + 1]);
  if (std::abs(twice_m2) < 2 * least_m2)
    throw UsageError(std::string(option) + ": nothing lies within " + as_given(text) +
                     "; its corners lie on one line");
}

std::vector<Point> corners_in(std::string_view option, std::string_view text) {
  std::vector<Point> corners;
  for (const std::string_view corner : split(text, ';')) {
    const WrittenPlace place = read_place(option, corner);
    if (!place.at)
      throw UsageError(std::string(option) + ": the corners of an area are LAT,LON each, not " +
                       as_given(corner));
    corners.push_back(*place.at);
  }
  if (corners.size() < 3)
    throw UsageError(std::string(option) +
                     ": an area has three corners or more, LAT,LON;LAT,LON;LAT,LON, not " +
                     as_given(text));
  need_near_each_other(option, text, corners);
  need_area(option, text, corners);
  return corners;
}

/// The middle of a piece, where no junction is.
Point middle_of(const road::Roads& roads, PieceId piece) {
  return point_along(roads.shape_of(piece), roads.pieces[piece.index()].length_m / 2);
}

/// On a street of that name, near where it was found; of pieces as near the longest.
std::optional<Point> on_street(const road::Roads& roads, const FoundPlace& found) {
  std::optional<Point> nearest;
  double nearest_m = street_m;
  for (const PieceId piece : road::pieces_near(roads, found.at, street_m)) {
    const road::Piece& row = roads.pieces[piece.index()];
    if (lower(roads.text(row.name)) != lower(found.name) || row.length_m <= 2 * junction_m)
      continue;
    const Point middle = middle_of(roads, piece);
    const double off_m = distance_m(found.at, middle);
    if (off_m < nearest_m) nearest = middle, nearest_m = off_m;
  }
  return nearest;
}

Point on_road(std::string_view option, const std::string& name, const FoundPlace& found,
              const road::Roads& roads) {
  using place::Sort;
  if (found.sort == Sort::street)
    if (const auto at = on_street(roads, found)) return *at;
  const double within_m = found.sort == Sort::crossing ? crossing_m : junction_m;
  if (found.sort != Sort::street)
    if (const auto junction = road::junction_near(roads, found.at, within_m)) return *junction;
  const auto snap = reach::snap_home(roads, found.at);
  if (!snap)
    throw UsageError(std::string(option) +
                     ": no road that a learner may drive lies within 150 m of '" + name + "'");
  return road::junction_near(roads, snap->at, junction_m) ? middle_of(roads, snap->piece)
                                                          : snap->at;
}

}  // namespace

std::vector<Point> read_outline(std::string_view option, std::string_view text) {
  return corners_in(option, text);
}

WrittenKeepOff read_keep_off(std::string_view text) {
  WrittenKeepOff written;
  const std::size_t at = text.rfind('@');
  const std::string_view what = trim(text.substr(0, at));
  if (at != std::string_view::npos) {
    written.hours = trim(text.substr(at + 1));
    need_readable(written.hours);
  }
  written.name = what;
  if (what.find(';') != std::string_view::npos)
    written.outline = corners_in("--keep-off", what);
  else
    written.place = read_place("--keep-off", what);
  return written;
}

wish::KeepOff find_keep_off(const WrittenKeepOff& written, Places& places,
                            const road::Roads& roads) {
  if (!written.place) {
    need_latitude_first(written.name, written.outline, roads);
    return {written.name, written.outline, written.hours};
  }
  const FoundPlace found = places.look_up(*written.place);
  return {written.name, {on_road("--keep-off", written.name, found, roads)}, written.hours};
}

WrittenTake read_take(std::string_view text) {
  return {std::string(trim(text)), read_place("--take", text)};
}

wish::Take find_take(const WrittenTake& written, Places& places, const road::Roads& roads) {
  const FoundPlace found = places.look_up(written.place);
  return {written.name, on_road("--take", written.name, found, roads)};
}

}  // namespace loopwright::command
