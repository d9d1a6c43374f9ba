// Method: positions are running sums. The place to speak is found by walking back from the joint at
// the limit's speed until the time to hear, look and act is used up.
#include "say/drive.hpp"

#include <algorithm>

#include "loopwright/say/words.hpp"

namespace loopwright::say {
namespace {

/// Seconds before a junction at which a direction begins to be spoken: 10 to 12 for mirrors, signal
/// and slowing, and the speaking itself. At 30, 40 and 60 mph that is 188, 250 and 376 m, within
/// the 150-200, 220-270 and 350-400 m of common practice (no source).
constexpr double speak_before_s = 14;

/// The place that a row of place_nodes is of.
PlaceId place_with(const road::Roads& roads, std::size_t row) {
  const auto after = std::upper_bound(roads.place_node_first.begin(), roads.place_node_first.end(),
                                      static_cast<std::uint32_t>(row));
  return PlaceId{static_cast<std::size_t>(after - roads.place_node_first.begin()) - 1};
}

}  // namespace

Drive::Drive(const road::Roads& roads, const wish::Loop& loop) : roads_(&roads), loop_(&loop) {
  positions_.push_back(0);
  for (std::size_t i = 1; i + 1 < size(); ++i)
    positions_.push_back(positions_.back() + loop.stretches[i].metres);
  lights_[roads.from_node(at(0))] = PlaceId{};
  for (std::size_t i = 0; i < size(); ++i) lights_[roads.to_node(at(i))] = PlaceId{};
  // Of all places only the list of their nodes is read, a twentieth of what they take.
  for (std::size_t k = 0; k < roads.place_nodes.size(); ++k) {
    const auto met = lights_.find(roads.place_nodes[k]);
    if (met == lights_.end()) continue;
    const PlaceId place = place_with(roads, k);
    if (roads.places[place.index()].kind == road::Kind::signals) met->second = place;
  }
}

PlaceId Drive::lights_at(std::size_t joint) const {
  return lights_.at(roads_->to_node(at(joint)));
}

bool Drive::on_ring(std::size_t stretch) const {
  return (roads_->piece(at(stretch)).flags & road::piece_flag::ring) != 0;
}

double Drive::time_s(std::size_t joint) const {
  if (joint + 1 >= size()) return 0;
  const auto& stretches = loop_->stretches;
  return stretches[joint + 1].arrive_s.likely - stretches[1].arrive_s.likely;
}

double Drive::seconds_between(std::size_t from_joint, std::size_t to_joint) const {
  if (to_joint <= from_joint) return 0;
  const wish::LoopStretch& last = loop_->stretches[to_joint];
  return last.arrive_s.likely - loop_->stretches[from_joint + 1].arrive_s.likely +
         last.metres / last.limit.metres_per_second();
}

PlaceId Drive::lights_before() const {
  return lights_.at(roads_->from_node(at(0)));
}

std::string Drive::street(StretchId stretch) const {
  const road::Piece& piece = roads_->piece(stretch);
  const std::string_view name = roads_->text(piece.name);
  return spoken_name(name.empty() ? roads_->text(piece.ref) : name);
}

double Drive::speak_from_m(std::size_t joint) const {
  return before_m(joint, speak_before_s);
}

double Drive::latest_to_speak_m(std::size_t joint) const {
  return before_m(joint, least_before_s);
}

/// The place so many seconds before a joint at the limits.
double Drive::before_m(std::size_t joint, double seconds) const {
  double left_s = seconds;
  double at_m = position_m(joint);
  for (std::size_t i = joint; i > 0 && left_s > 0; --i) {
    const wish::LoopStretch& row = loop_->stretches[i];
    const double mps = row.limit.metres_per_second();
    const double driven_s = row.metres / mps;
    if (driven_s >= left_s) return at_m - left_s * mps;
    left_s -= driven_s, at_m -= row.metres;
  }
  return at_m - left_s * loop_->stretches[0].limit.metres_per_second();
}

}  // namespace loopwright::say
