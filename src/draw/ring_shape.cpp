// Ring or mini: arms are straight, where they lie round the middle, spread; the ring is at least so large
// that its exits are seen. The way goes round in the driving direction.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "draw/shape.hpp"
#include "draw/spread.hpp"

namespace loopwright::draw {
namespace {

using namespace shape_mm;

class RingShape {
 public:
  explicit RingShape(const Scene& scene) : scene_(scene) {
    sense_ = scene.side == Side::left ? 1 : -1;
    radius_ = scene.form == Form::mini ? 2.6 : std::clamp(2.8 + scene.ring_m * 0.09, 3.4, 5.6);
    lay_arms();
  }

  Shape shape() {
    for (std::size_t i = 0; i < scene_.arms.size(); ++i)
      shape_.roads.push_back(
          {{at(rounds_[i], radius_), at(rounds_[i], reach)}, width_of(scene_.arms[i])});
    shape_.roads.push_back({arc({}, radius_, 0, 360), road_wide});
    shape_.way = way();
    return shape_;
  }

 private:
  void lay_arms() {
    const std::size_t first = scene_.arms[0].is_entry ? 1 : 0;
    const auto count = static_cast<double>(scene_.arms.size());
    std::vector<double> lies;
    for (std::size_t i = first; i < scene_.arms.size(); ++i) {
      // The first met may lie just behind where the car comes from, not nearly all the way round.
      const double expected = 360 * static_cast<double>(i) / count;
      const double round = round_deg(scene_.arms[i].place_deg, sense_);
      lies.push_back(expected + heading_change_deg(expected, round));
    }
    rounds_ = spread(std::move(lies), gap_deg);
    if (first == 1) rounds_.insert(rounds_.begin(), 0);
  }

  [[nodiscard]] Spot at(double round, double radius) const {
    return radius * towards_deg(180 + sense_ * round);
  }

  /// From where the car starts round to the exit.
  [[nodiscard]] Line way() const {
    const auto exit =
        static_cast<std::size_t>(std::find_if(scene_.arms.begin(), scene_.arms.end(),
                                              [](const SceneArm& arm) { return arm.is_exit; }) -
                                 scene_.arms.begin());
    const bool back = scene_.arms[exit].is_entry;
    // Back out by the same road: beside the way in, each on its side.
    const double beside = back ? 1.4 : 0;
    const double beside_deg = std::asin(beside / radius_) * 180 / std::numbers::pi;
    const double start = scene_.arms[0].is_entry ? beside_deg : 90;
    const double ahead = rounds_[exit] < start ? rounds_[exit] + 360 : rounds_[exit];
    const double end = back ? 360 - beside_deg : ahead;
    const double swing = std::min(26.0, (end - start) / 2.5);
    Line line;
    if (scene_.arms[0].is_entry) {
      const Spot side = (sense_ * beside) * Spot{-1, 0};
      line = {side + Spot{0, reach}, side + Spot{0, radius_ + 1.6}};
      append(line,
             curve(line.back(), {0, -1}, at(start + swing, radius_), along_ring(start + swing)));
    }
    const double leave = end - swing;
    append(line,
           arc({}, radius_, 180 + sense_ * (start + swing), sense_ * (leave - start - swing)));
    const Spot side = (sense_ * beside) * Spot{1, 0};
    const Spot out = back ? side + Spot{0, radius_ + 1.6} : at(end, radius_ + 1.6);
    append(line, curve(line.back(), along_ring(leave), out, at(back ? 360 : end, 1)));
    line.push_back(out);
    line.push_back(back ? side + Spot{0, reach} : at(end, reach));
    return line;
  }

  [[nodiscard]] Spot along_ring(double round) const {
    return towards_deg(180 + sense_ * (round + 90));
  }

  const Scene& scene_;
  double sense_ = 1, radius_ = 4;
  std::vector<double> rounds_;
  Shape shape_;
};

}  // namespace

Shape ring_shape(const Scene& scene) {
  return RingShape(scene).shape();
}

}  // namespace loopwright::draw
