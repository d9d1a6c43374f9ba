// The roads that meet at a roundabout or a junction, as a driver counts them: a dual carriageway,
// or a road that a splitter island parts just before the junction, is one arm.
//
//   const auto arms = arms_at(draft, roads, node);   // in driving order round the node
//   exit_number(arms, 0, 2);                         // as the signs count from the first arm
//
// Driving order is clockwise where one drives on the left, so on each arm the way out comes before
// the way in.
#pragma once

#include <span>
#include <vector>

#include "loopwright/mark/draft.hpp"

namespace loopwright::mark {

/// One piece of road that touches the junction.
struct ArmPart {
  StretchId away;                ///< leads away from the junction
  bool in = false, out = false;  ///< traffic comes in and leaves by it
  bool is_public = false;
  std::size_t position = 0;  ///< of its node in a ring's driving order; 0 at a single node
  std::size_t order = 0;     ///< of the part among all in driving order
};

struct JunctionArm {
  std::vector<ArmPart> parts;  ///< in driving order, at least one

  [[nodiscard]] bool is_public() const;
  [[nodiscard]] bool can_enter() const;  ///< the junction, from this arm
  [[nodiscard]] bool can_leave() const;  ///< the junction, by this arm
  [[nodiscard]] bool is_exit() const;    ///< public, and one may leave by it
  [[nodiscard]] StretchId in() const;    ///< first way towards the junction; none when one-way
  [[nodiscard]] StretchId out() const;   ///< first way from it; none when one-way
};

/// What a piece is to the junction it leads away from.
ArmPart part_of(const Draft& draft, StretchId away, std::size_t position);

/// Orders parts at one node by bearing in driving direction, starting after the given bearing.
void order_round(const Draft& draft, double after_deg, std::span<ArmPart> parts);

/// Arms from parts in driving order.
std::vector<JunctionArm> join_parts(const Draft& draft, const road::Roads& roads,
                                    const std::vector<ArmPart>& parts);

/// Arms of a single node.
std::vector<JunctionArm> arms_at(const Draft& draft, const road::Roads& roads, NodeId node);

/// How many exits the signs count from one arm to another, that one included; all of them back to
/// the same arm. 0 when the signs don't count it.
int exit_number(const std::vector<JunctionArm>& arms, std::size_t from, std::size_t to);

/// The arm's bearing away from the junction, clear of the flare: 30 to 60 m out.
double bearing_of_arm(const road::Roads& roads, StretchId away);

/// Compass bearing from the middle of the place to the arm, 30 m out, between its first and last
/// part.
double place_of_arm_deg(const road::Roads& roads, Point middle, const JunctionArm& arm);

/// Adds the rows of the arms of a place, and their number to it.
void add_arm_rows(Draft& draft, const road::Roads& roads, PlaceId place,
                  const std::vector<JunctionArm>& arms);

}  // namespace loopwright::mark
