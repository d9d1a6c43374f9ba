// 1. The street is all pieces of the nearest road's name that hang together or lie within 500 m, as room
//    place takes it.
// 2. Its bus lanes are those of the list of everything with hours; lanes against the traffic are never for
//    cars, whatever their plate says.
#include "command/lane_of_street.hpp"

#include <algorithm>
#include <set>

#include "command/lanes_words.hpp"
#include "command/print.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/base/plain_words.hpp"
#include "loopwright/lanes/area_things.hpp"
#include "loopwright/reach/reach.hpp"
#include "loopwright/road/note.hpp"
#include "loopwright/road/setting_of.hpp"

namespace loopwright::command {
namespace {

using lanes::AreaThing;
using Pieces = std::set<PieceId>;

/// Step 1.
Pieces street_of(const road::Roads& roads, PieceId start) {
  constexpr double one_street_m = 500;  // DEVELOPERS.md, Names
  const TextId name = roads.pieces[start.index()].name;
  Pieces street{start};
  std::vector<PieceId> open{start};
  while (!open.empty()) {
    const road::Piece& piece = roads.pieces[open.back().index()];
    open.pop_back();
    for (const NodeId end : {piece.a, piece.b})
      for (const PieceId near : road::pieces_near(roads, roads.nodes[end.index()].at, one_street_m))
        if (roads.pieces[near.index()].name == name && street.insert(near).second)
          open.push_back(near);
  }
  return street;
}

/// Step 2.
std::vector<AreaThing> lanes_of(const road::Roads& roads, const Pieces& street) {
  std::vector<AreaThing> things =
      lanes::things_in(roads, road::setting_of(roads.info(), std::nullopt));
  std::erase_if(things, [&](const AreaThing& one) {
    return one.thing.thing != lanes::Thing::bus_lane ||
           std::ranges::none_of(one.stretches,
                                [&](StretchId s) { return street.contains(s.piece()); });
  });
  return things;
}

std::vector<Point> line_of(const road::Roads& roads, const AreaThing& lane) {
  std::vector<Point> line;
  for (const StretchId stretch : lane.stretches) {
    const auto shape = roads.shape_of(stretch.piece());
    std::vector<Point> part(shape.begin(), shape.end());
    if (stretch.against()) std::ranges::reverse(part);
    for (const Point at : part)
      if (line.empty() || line.back() != at) line.push_back(at);
  }
  return line;
}

std::string told_of(const road::Roads& roads, const AreaThing& lane) {
  return thing_head(lane.thing, lanes::heading_words(roads, lane));
}

std::string several(const road::Roads& roads, const std::vector<AreaThing>& lanes) {
  std::string text =
      "there are " + number_word(static_cast<int>(lanes.size())) + " bus lanes on that street: ";
  for (const AreaThing& lane : lanes) {
    const std::vector<Point> line = line_of(roads, lane);
    text += told_of(roads, lane) + " " + degrees(point_along(line, length_m(line) / 2)) + "; ";
  }
  return text + "say which by LAT,LON";
}

}  // namespace

std::optional<StreetLane> lane_of_street(const road::Roads& roads, Point on_street,
                                         const std::string& place) {
  const auto snap = reach::snap_home(roads, on_street, road::note_reach_m);
  if (!snap || !roads.bus_lanes_of(snap->piece).empty()) return std::nullopt;
  if (roads.text(roads.pieces[snap->piece.index()].name).empty()) return std::nullopt;
  const std::vector<AreaThing> found = lanes_of(roads, street_of(roads, snap->piece));
  if (found.empty()) throw UsageError(place + ": no bus lane is mapped on that street");
  if (found.size() > 1) throw UsageError(place + ": " + several(roads, found));
  const AreaThing& lane = found.front();
  return StreetLane{line_of(roads, lane), lane.both_ways, told_of(roads, lane)};
}

}  // namespace loopwright::command
