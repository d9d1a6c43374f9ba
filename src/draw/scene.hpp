// A place of a loop as it lies on the ground, before anything is drawn: its arms, what lies inside
// it, and the way through.
//
// Rules: metres around the middle of the place, turned so that the car comes from the bottom. A ring
// or mini has the arms that the signs count, in driving order, a dual carriageway or split road as
// one; any other place every road that leaves its nodes. Driveways and aisles are left out.
#pragma once

#include <vector>

#include "draw/frame.hpp"
#include "draw/lines.hpp"
#include "loopwright/draw/sketch.hpp"

namespace loopwright::draw {

enum class Form : std::uint8_t { ring, mini, level_crossing, turn_round, junction };

struct SceneArm {
  StretchId in, out;  ///< towards the place and away from it; the same road where it isn't parted
  Line line;          ///< outwards, from where the road leaves the place
  double place_deg =
      0;  ///< clockwise from up; of a ring where it lies round the middle, else its course
  bool counted = true;  ///< a public road, not service or private
  bool can_leave = true;
  bool is_entry = false, is_exit = false;
  int exit_number = 0;  ///< as the signs of a ring or mini count from the entry; 0: not counted
};

struct Scene {
  Form form = Form::junction;
  StretchId entry, exit;
  road::Control control = road::Control::none;  ///< at the end of the entry, on this way
  const road::Chance* chance = nullptr;  ///< the best told of those that pass here so; may be none
  PlaceId place;                         ///< of the chance, or the ring one starts on; may be none
  Frame frame;
  Side side = Side::left;
  double ring_m = 0;  ///< radius of the ring's middle line; rings only
  std::vector<SceneArm> arms;
  std::vector<NodeId> nodes;    ///< of the place
  std::vector<PieceId> inside;  ///< pieces within it
  Line driven;                  ///< centre line from the entry's end to the exit's beginning
};

/// Rules: arms are followed for `reach_m` beyond the place.
Scene scene_at(const road::Roads& roads, const wish::Loop& loop, At at, double reach_m);

/// A road lies ahead of the one that the car comes by, from which traffic may come.
bool meets_oncoming(const Scene& scene);

/// The road from the beginning of a stretch on, over its end along the straightest road there.
Line follow(const road::Roads& roads, const Frame& frame, StretchId away, double reach_m);

/// Points of a stretch in the order it is driven.
Line line_of(const road::Roads& roads, const Frame& frame, StretchId stretch);

}  // namespace loopwright::draw
