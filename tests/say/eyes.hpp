// What a driver sees of the roads: which there are at a node, how they lie, how big they are, what
// may not be entered, lights, rings.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "loopwright/road/roads.hpp"

namespace loopwright::test {

/// A road seen ahead.
struct View {
  StretchId arm;
  double angle = 0;   ///< change of heading into it, positive to the right
  bool shut = false;  ///< may not be entered this way
};

/// The same road, or one that lies on it: a map has some roads twice.
bool look_the_same(const road::Roads& roads, StretchId a, StretchId b);

class Eyes {
 public:
  explicit Eyes(const road::Roads& roads);

  [[nodiscard]] const road::Roads& roads() const { return roads_; }
  /// Roads at the end of a stretch, the way back left out, from left to right.
  [[nodiscard]] std::vector<View> views(StretchId from) const;
  /// The small roads alone.
  [[nodiscard]] std::vector<View> small_views(StretchId from) const;
  /// Roads that lead out of the lights at the end of a stretch, as they lie seen from there, and how
  /// to get to each. Small: the small roads alone. Empty when there are no lights.
  [[nodiscard]] std::vector<View> views_beyond_lights(StretchId entry, bool small) const;
  [[nodiscard]] std::vector<StretchId> way_through_lights(StretchId entry, StretchId exit,
                                                          bool small) const;
  /// The set of lights at a node; none when there isn't one.
  [[nodiscard]] PlaceId lights_at(NodeId node) const;

  /// A piece between the lights of one set; never of none.
  [[nodiscard]] bool is_inside(PlaceId place, StretchId s) const;

  /// Not a service or private road.
  [[nodiscard]] bool is_road(StretchId s) const;
  /// A service road that is nobody's drive.
  [[nodiscard]] bool is_small(StretchId s) const;
  /// A sign forbids to go this way. Of a one-way road nobody here drives, the map's own direction
  /// is believed.
  [[nodiscard]] bool is_shut(StretchId s) const;
  [[nodiscard]] bool on_ring(StretchId s) const;
  /// A road through the middle of a ring is no exit of it.
  [[nodiscard]] bool stays_inside_ring(StretchId s) const;
  [[nodiscard]] bool is_link(StretchId s) const;
  [[nodiscard]] int rank(StretchId s) const;
  /// What the sign at the corner says: the name, else the number.
  [[nodiscard]] std::string sign(StretchId s) const;
  /// Both of one class down to tertiary, and the same name or number stands on both.
  [[nodiscard]] bool is_same_main_road(StretchId a, StretchId b) const;
  /// Arrows are painted on its lanes.
  [[nodiscard]] bool has_arrows(StretchId s) const;
  [[nodiscard]] std::uint32_t flags_at_end(StretchId s) const;

 private:
  void look(StretchId from, StretchId arm, std::vector<View>& seen) const;
  [[nodiscard]] View view(StretchId from, StretchId arm) const;
  /// Where each stretch that can be reached inside the lights, or just beyond, is come to from.
  [[nodiscard]] std::map<StretchId, StretchId> inside_lights(StretchId entry, bool small) const;

  const road::Roads& roads_;
  std::map<NodeId, PlaceId> lights_, rings_;
};

}  // namespace loopwright::test
