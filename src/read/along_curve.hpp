// The order in which an area file keeps its rows: what lies together on the ground lies together in the file, so that a
// question to a country reads few pages of it, in whatever order the extract was.
//
//   lay_along_curve(tables);   // last: nothing may add rows after it
//
// Nodes and ways lie along a curve that fills the map (base/curve.hpp), a way by where it begins, with its pieces in its
// order; places by cell of the grid. All else follows them. Among equals the smaller OSM id comes first.
// Why not from the start: what is found at several objects is named after the smallest id, which marking rules tell by rows.
#pragma once

#include "loopwright/road/roads.hpp"

namespace loopwright::read {

/// Rules: tables are whole and consistent. Only rows move and row numbers change; what is told stays.
void lay_along_curve(road::Tables& tables);

}  // namespace loopwright::read
