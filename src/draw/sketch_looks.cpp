// 1. The car stands where its way comes to the line. From there an open wedge points at each road
//    from which traffic comes that goes first: on a ring up the ring (from the right in Britain, from
//    the left where one drives on the right), at a give-way or stop line both ways along the road met,
//    turning across traffic at the oncoming, at a level crossing along the rails.
// 2. The word stands at the open end, where there is room.
#include <cmath>

#include "draw/lane_way.hpp"
#include "draw/sketch_board.hpp"

namespace loopwright::draw {
namespace {

using road::Control;

class Looks {
 public:
  Looks(Board& board, const Line& way) : board_(board) {
    const Spot joint = board.on_sheet(board.scene.driven.front());
    constexpr double step_mm = 0.5;
    double nearest = 1e9, at = 0;
    for (const Step& step : steps_along(way, step_mm)) {
      if (length_of(step.at - joint) < nearest)
        nearest = length_of(step.at - joint), joint_at_ = at;
      at += step_mm;
    }
    // At a level crossing the gates stand before the rails.
    const double gates_m = board.scene.form == Form::level_crossing ? 5 : 0;
    const double back = (clear_of_m(board.roads, board.roads.to_node(board.scene.entry),
                                    board.scene.entry.piece()) +
                         1.5 + gates_m) *
                        board.scale;
    eye_ = along(way, std::max(2.0, joint_at_ - back));
  }

  void draw() {
    for (const Spot direction : directions()) draw_wedge(direction);
  }

 private:
  [[nodiscard]] double far_sign() const { return board_.scene.side == Side::left ? 1 : -1; }

  [[nodiscard]] std::vector<Spot> directions() const {
    switch (board_.scene.form) {
      case Form::ring:
      case Form::mini:
        return {up_the_ring()};
      case Form::level_crossing:
        return {{-1, -0.2}, {1, -0.2}};
      case Form::turn_round:
        return {};
      case Form::junction:
        break;
    }
    switch (board_.scene.control) {
      case Control::give_way_near:
        return {{far_sign(), -0.5}};
      case Control::give_way_far:
      case Control::stop_near:
      case Control::stop_far:
        return {{-1, -0.5}, {1, -0.5}};
      case Control::across:
        return {{0.25 * far_sign(), -1}};
      case Control::signals:
        return turns_across() ? std::vector<Spot>{{0.25 * far_sign(), -1}} : std::vector<Spot>{};
      default:
        return {};
    }
  }

  [[nodiscard]] bool turns_across() const {
    const road::Movement far = far_sign() > 0 ? road::Movement::right : road::Movement::left;
    return movement_at(board_.roads, board_.scene) == far && meets_oncoming(board_.scene);
  }

  /// A third of the way round to the far side, but not less than a few metres.
  [[nodiscard]] Spot up_the_ring() const {
    const double radius = std::max(board_.scene.ring_m, 6.0);
    const double up = std::min(70.0, 14 / radius * 180 / 3.1416);
    const Spot from = board_.on_sheet(radius * towards_deg(180 - far_sign() * up));
    return from - eye_;
  }

  /// Two lines that open, an arc across them near the eye, and the word at their end.
  void draw_wedge(Spot direction) {
    constexpr double long_mm = 13, open_deg = 12, begins_mm = 2, arc_mm = 4.5;
    const double course = angle_deg(unit(direction));
    const Spot left = towards_deg(course - open_deg), right = towards_deg(course + open_deg);
    for (const Line& line : {Line{eye_ + begins_mm * left, eye_ + long_mm * left},
                             Line{eye_ + begins_mm * right, eye_ + long_mm * right},
                             arc(eye_, arc_mm, course - open_deg, 2 * open_deg)})
      board_.picture.add(Stroke{line, 0.45});
    for (double off = begins_mm; off <= long_mm; off += 1) {
      board_.looks.push_back(eye_ + off * left);
      board_.looks.push_back(eye_ + off * right);
    }
    Label label{{}, std::string(board_.words.at("sketch.look")), {9, true}};
    label.halo = 0.5;
    const Extent extent = extent_of(label);
    std::vector<Spot> middles;
    for (const double more : {0.5, 3.0, 6.0, 9.0})
      for (const double side : {0.0, -18.0, 18.0, -36.0, 36.0}) {
        const Spot out = towards_deg(course + side);
        const double half =
            std::abs(out.x) * extent.width / 2 + std::abs(out.y) * extent.height / 2;
        middles.push_back(eye_ + (long_mm + half + more) * out);
      }
    board_.room.put(board_.picture, std::move(label), middles);
    board_.room.keep_off({eye_, eye_ + long_mm * towards_deg(course)}, 4);
  }

  Board& board_;
  double joint_at_ = 0;
  Spot eye_;
};

}  // namespace

void draw_looks(Board& board, const Line& way) {
  Looks(board, way).draw();
}

}  // namespace loopwright::draw
