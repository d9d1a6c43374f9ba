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
    double nearest = 1e9;
    for (double at = 0; at < length_of(way); at += 0.5)
      if (length_of(along(way, at) - joint) < nearest)
        nearest = length_of(along(way, at) - joint), joint_at_ = at;
    const double back = (clear_of_m(board.roads, board.roads.to_node(board.scene.entry),
                                    board.scene.entry.piece()) +
                         1.5) *
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
        return {{-1, -0.35}, {1, -0.35}};
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
    return movement_at(board_.roads, board_.scene) == far;
  }

  /// A third of the way round to the far side, but not less than a few metres.
  [[nodiscard]] Spot up_the_ring() const {
    const double radius = std::max(board_.scene.ring_m, 6.0);
    const double up = std::min(70.0, 14 / radius * 180 / 3.1416);
    const Spot from = board_.on_sheet(radius * towards_deg(180 - far_sign() * up));
    return from - eye_;
  }

  void draw_wedge(Spot direction) {
    constexpr double long_mm = 11, open_deg = 13, begins_mm = 2;
    const double course = angle_deg(unit(direction));
    for (const double side : {-open_deg, open_deg}) {
      const Spot along = towards_deg(course + side);
      board_.picture.add(Stroke{{eye_ + begins_mm * along, eye_ + long_mm * along}, 0.3});
    }
    std::vector<Spot> middles;
    for (const double off : {long_mm + 1.5, long_mm + 4, long_mm + 7, long_mm - 3})
      for (const double side : {0.0, -18.0, 18.0, -36.0, 36.0})
        middles.push_back(eye_ + off * towards_deg(course + side));
    Label label{{}, "look", {9, true}};
    label.halo = 0.5;
    board_.room.put(board_.picture, std::move(label), middles);
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
