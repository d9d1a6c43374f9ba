// Method:
// 1. The first point driven is at most 150 m from home, the last at most 150 m from the end asked.
// 2. Without an end of its own the drive closes: it ends on the piece and at the metre where it
//    began.
// 3. The instructor's own points are each within 150 m of the drive, in their order: the nearest
//    row that is near enough for one is where the search for the next begins.
#include <algorithm>

#include "proof/checks.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

/// Metres from the piece's first node to a metre of the stretch.
double along_piece_m(const Drive& drive, std::size_t i, double metre) {
  const StretchId stretch = drive.stretches[i];
  return stretch.against() ? drive.roads.piece(stretch).length_m - metre : metre;
}

Point point_at(const Drive& drive, std::size_t i, double metre) {
  return point_along(drive.roads.shape_of(drive.stretches[i].piece()),
                     along_piece_m(drive, i, metre));
}

bool near_asked(const Drive& drive, Claims& claims, bool begin) {
  const std::size_t row = begin ? 0 : drive.stretches.size() - 1;
  const Point asked = begin ? drive.wish.home : drive.wish.end.value_or(drive.wish.home);
  const Part& part = drive.parts[row];
  const double off_m = distance_m(point_at(drive, row, begin ? part.from_m : part.to_m), asked);
  return claims.hold(off_m <= most_off_road_m + length_tolerance_m, [&] {
    return at_loop(drive) + (begin ? ": it begins " : ": it ends ") + tenths(off_m) +
           " m from the place asked, more than " + tenths(most_off_road_m) + " m";
  });
}

bool closes(const Drive& drive, Claims& claims) {
  const std::size_t last = drive.stretches.size() - 1;
  const bool same_piece = drive.stretches.front().piece() == drive.stretches[last].piece();
  const double begin_m = along_piece_m(drive, 0, drive.parts.front().from_m);
  const double end_m = along_piece_m(drive, last, drive.parts[last].to_m);
  return claims.hold(same_piece && near(begin_m, end_m, 2 * length_tolerance_m), [&] {
    return at_loop(drive) + ": it does not close: it begins on way " +
           std::to_string(drive.loop.stretches.front().way) + " at " + tenths(begin_m) +
           " m and ends on way " + std::to_string(drive.loop.stretches[last].way) + " at " +
           tenths(end_m) + " m";
  });
}

bool goes_through(const Drive& drive, Claims& claims) {
  std::size_t row = 0;
  for (std::size_t k = 0; k < drive.wish.through.size(); ++k) {
    const auto is_near = [&](StretchId stretch) {
      const auto foot =
          nearest_on_line(drive.roads.shape_of(stretch.piece()), drive.wish.through[k]);
      return foot.off_m <= most_off_road_m + length_tolerance_m;
    };
    while (row < drive.stretches.size() && !is_near(drive.stretches[row])) ++row;
    if (!claims.hold(row < drive.stretches.size(), [&] {
          return at_loop(drive) + ": it does not go through point " + std::to_string(k) +
                 " of the drive asked for";
        }))
      return false;
  }
  return true;
}

}  // namespace

bool ends_hold(const Drive& drive, Claims& claims) {
  return near_asked(drive, claims, true) && near_asked(drive, claims, false) &&
         (drive.wish.end || closes(drive, claims)) && goes_through(drive, claims);
}

}  // namespace loopwright::proof
