// 1. Every stretch that is seen gives a line in its lane (lane_choice.cpp): that of the movement on the
//    approach and on the ring, out by the near one.
// 2. Lines are cut back where they meet, by as much as the roads there are wide, and joined by curves.
// 3. At a mini the way leads round the middle of it.
// 4. From the entry's end the whole is cut at the circle, forwards and backwards, and steadied.
#include "draw/lane_way.hpp"

#include <algorithm>
#include <cmath>

namespace loopwright::draw {
namespace {

using road::Movement;
namespace flag = road::piece_flag;

bool is_ring(const road::Roads& roads, StretchId stretch) {
  return (roads.piece(stretch).flags & flag::ring) != 0;
}

/// Without the jerks where lanes of one road are mapped in another number from piece to piece.
Line steadied(const Line& line) {
  constexpr double step_m = 0.5, around_m = 2.5;
  const double length = length_of(line);
  Line steady{line.front()};
  for (double at = step_m; at < length; at += step_m) {
    const double reach = std::min({around_m, at, length - at});
    Spot sum;
    int count = 0;
    for (double off = -reach; off <= reach + 1e-9; off += step_m, ++count)
      sum = sum + along(line, at + off);
    steady.push_back((1.0 / count) * sum);
  }
  steady.push_back(line.back());
  return steady;
}

class LaneWay {
 public:
  LaneWay(const road::Roads& roads, const wish::Loop& loop, At at, const Scene& scene)
      : roads_(roads), loop_(loop), at_(at), scene_(scene) {
    movement_ = movement_at(roads, scene);
  }

  Line along(double radius) {
    std::size_t first = at_.entry, last = at_.exit;
    for (double m = length(first); first > 0 && m < 2 * radius;) m += length(--first);
    for (double m = length(last); last + 1 < loop_.stretches.size() && m < 2 * radius;)
      m += length(++last);
    Line way;
    std::size_t middle = 0;
    for (std::size_t i = first; i <= last; ++i) {
      join(way, cut(i, first, last));
      if (i == at_.entry) middle = way.size() - 1;
      if (const Line round = i == at_.entry ? round_mini() : Line(); !round.empty())
        join(way, round);
    }
    Line before =
        reversed(Line(way.begin(), way.begin() + static_cast<std::ptrdiff_t>(middle) + 1));
    const Line after(way.begin() + static_cast<std::ptrdiff_t>(middle), way.end());
    Line all = reversed(up_to_circle(before, {}, radius));
    append(all, up_to_circle(after, {}, radius));
    return steadied(all);
  }

 private:
  [[nodiscard]] StretchId at(std::size_t i) const { return loop_.stretches[i].stretch; }
  [[nodiscard]] double length(std::size_t i) const { return roads_.piece(at(i)).length_m; }

  /// The line of a stretch in its lane, cut back at both ends.
  [[nodiscard]] Line cut(std::size_t i, std::size_t first, std::size_t last) const {
    const Carriageway road = carriageway_of(roads_, at(i));
    const Movement movement = i < at_.exit ? movement_ : Movement::ahead;
    const double off = lane_off_m(road, lane_choice(roads_, at(i), movement).from_near);
    const Line middle = line_of(roads_, scene_.frame, at(i));
    const Line lane = shifted(middle, scene_.side == Side::left ? off : -off);
    const double all = length_of(lane), most = 0.42 * all;
    const double from = i == first ? 0 : std::min(most, back_m(i - 1, at(i)));
    const double to = i == last ? all : all - std::min(most, back_m(i, at(i)));
    return part_of(lane, from, to);
  }

  /// How far a stretch is cut back at the joint between i and i + 1.
  [[nodiscard]] double back_m(std::size_t i, StretchId of) const {
    constexpr double swing_m = 5, turns_deg = 20;
    const bool onto = is_ring(roads_, at(i)) != is_ring(roads_, at(i + 1));
    if (onto && is_ring(roads_, of)) return swing_m;
    const double bend = std::abs(heading_change_deg(road::bearing_in_deg(roads_, at(i)),
                                                    road::bearing_out_deg(roads_, at(i + 1))));
    if (!onto && bend < turns_deg) return swing_m / 2;
    return clear_of_m(roads_, roads_.to_node(at(i)), of.piece()) + 1;
  }

  /// Round the middle of a mini, on the way to the exit; empty where one leaves before that.
  [[nodiscard]] Line round_mini() const {
    constexpr double radius_m = 2.6, swing_deg = 50;
    if (scene_.form != Form::mini) return {};
    const double sense = scene_.side == Side::left ? 1 : -1;
    const Spot out = unit(direction_at(line_of(roads_, scene_.frame, at(at_.exit)), 0));
    double round = std::fmod(sense * (angle_deg(out) - 180) + 720, 360);
    round -= 2 * swing_deg;
    if (round < 5) return {};
    return arc({}, radius_m, 180 + sense * swing_deg, sense * round);
  }

  static void join(Line& way, const Line& next) {
    if (!way.empty())
      append(way, curve(way.back(), direction_at(way, length_of(way)), next.front(),
                        direction_at(next, 0)));
    append(way, next);
  }

  const road::Roads& roads_;
  const wish::Loop& loop_;
  At at_;
  const Scene& scene_;
  Movement movement_ = Movement::ahead;
};

}  // namespace

Line lane_way(const road::Roads& roads, const wish::Loop& loop, At at, const Scene& scene,
              double radius_m) {
  return LaneWay(roads, loop, at, scene).along(radius_m);
}

Movement movement_at(const road::Roads& roads, const Scene& scene) {
  if (scene.chance != nullptr && scene.chance->movement != Movement::none)
    return scene.chance->movement;
  if (scene.exit == scene.entry.back()) return Movement::round;
  constexpr double ahead_deg = 45;  // DEVELOPERS.md, places
  const double turn = heading_change_deg(road::bearing_in_deg(roads, scene.entry),
                                         road::bearing_out_deg(roads, scene.exit));
  if (std::abs(turn) <= ahead_deg) return Movement::ahead;
  return turn < 0 ? Movement::left : Movement::right;
}

double clear_of_m(const road::Roads& roads, NodeId node, PieceId of) {
  double clear = 0;
  for (const StretchId away : roads.leaving(node)) {
    const bool aisle = (roads.piece(away).flags & flag::minor_service) != 0;
    if (away.piece() != of && !aisle)
      clear = std::max(clear, carriageway_of(roads, away).width_m / 2);
  }
  return clear;
}

}  // namespace loopwright::draw
