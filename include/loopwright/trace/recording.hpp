// A drive as a recorder wrote it: where the car was, and when.
//
//   const Recording recording = read_gpx(text, "wren.gpx");   recording.fixes.front().at;
//
// Format: GPX 1.0 and 1.1 (TopoGrafix): every trkpt of every trk, its lat, lon and time, in any namespace; routes and
// waypoints are no drive. Times are UTC where no offset is written, as the schema says.
// Rules: pure; fixes come out in the order of their times, each time once. What can't be used is left out and counted, also
// times before 1973 or after 9998, of recorders that don't know the time yet. A file that breaks off (a battery that died)
// is read up to there, which `broken_off` tells. Throws InputError, in one line: no GPX, no track, no times, declarations
// of entities (they have no place in a track), far too many points.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

#include "loopwright/base/point.hpp"

namespace loopwright::trace {

/// Where the car was at a moment.
struct Fix {
  Point at;
  double unix_s = 0;  ///< seconds since 1970 UTC, with what the recorder wrote behind the point
};

struct Recording {
  std::vector<Fix> fixes;                                      ///< by time, each time once
  std::size_t without_time = 0, off_earth = 0, same_time = 0;  ///< points left out
  std::string broken_off = {};  ///< where and why reading ended early; empty: it didn't
};

/// More points are refused: a week at a fix each second.
inline constexpr std::size_t most_fixes = 604'800;

/// name: of the file, for messages.
Recording read_gpx(std::string_view text, const std::string& name);

}  // namespace loopwright::trace
