// A loop laid out along its own length, as seen from its first corner.
//
// Joint i is where stretch i ends and stretch i + 1 begins; joint 0 is the corner nearest to the
// door. Rules: positions are metres from joint 0. What lies before it, and after the last joint, is
// never measured: a sheet starts and ends at the nearest corner, not at the door (DEVELOPERS.md).
#pragma once

#include <map>
#include <string>
#include <vector>

#include "loopwright/road/roads.hpp"
#include "loopwright/wish/wish.hpp"

namespace loopwright::say {

/// The least time before a junction at which a direction may begin to be spoken: 10 to 12 s for
/// mirrors, signal and slowing (common practice, no source).
inline constexpr double least_before_s = 10;

class Drive {
 public:
  /// Rules: the loop is resolved and has at least one stretch; both outlive this.
  Drive(const road::Roads& roads, const wish::Loop& loop);

  [[nodiscard]] const road::Roads& roads() const { return *roads_; }
  [[nodiscard]] const wish::Loop& loop() const { return *loop_; }
  [[nodiscard]] std::size_t size() const { return loop_->stretches.size(); }
  [[nodiscard]] std::size_t last_joint() const { return size() < 2 ? 0 : size() - 2; }
  [[nodiscard]] StretchId at(std::size_t stretch) const {
    return loop_->stretches[stretch].stretch;
  }
  [[nodiscard]] bool on_ring(std::size_t stretch) const;
  [[nodiscard]] double position_m(std::size_t joint) const { return positions_[joint]; }
  /// The set of lights at a joint, of a junction or a crossing; none when there is none.
  [[nodiscard]] PlaceId lights_at(std::size_t joint) const;
  /// The same where the first stretch begins: a drive may start amidst them.
  [[nodiscard]] PlaceId lights_before() const;
  /// Likely seconds from joint 0.
  [[nodiscard]] double time_s(std::size_t joint) const;
  /// From one joint to a later one as it is likely driven, but for the wait at the later one: who has
  /// just turned isn't at the limit yet.
  [[nodiscard]] double seconds_between(std::size_t from_joint, std::size_t to_joint) const;
  /// Name of a stretch's street, or its number, or nothing.
  [[nodiscard]] std::string street(StretchId stretch) const;
  /// Where to begin speaking of what is due at a joint; may be before joint 0 (negative).
  [[nodiscard]] double speak_from_m(std::size_t joint) const;
  /// Where it is too late to begin.
  [[nodiscard]] double latest_to_speak_m(std::size_t joint) const;

 private:
  [[nodiscard]] double before_m(std::size_t joint, double seconds) const;

  const road::Roads* roads_;
  const wish::Loop* loop_;
  std::vector<double> positions_;
  std::map<NodeId, PlaceId> lights_;  ///< of the nodes driven over
};

}  // namespace loopwright::say
