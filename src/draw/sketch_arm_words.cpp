// 1. A disc with the number stands on each exit that the signs count, out along the arm until it is
//    clear of the others; black on the exit taken.
// 2. Names stand beside their road, far out first; a name that finds no room is left out (the words
//    below the picture name the road taken).
#include <algorithm>
#include <cmath>

#include "draw/carriageway.hpp"
#include "draw/sketch_board.hpp"
#include "loopwright/base/text.hpp"

namespace loopwright::draw {
namespace {

constexpr double disc_mm = 2.5;

class ArmWords {
 public:
  ArmWords(Board& board, const Line& way) : board_(board), way_(way) {}

  void draw() {
    // The exit taken first: its number has its place on the way.
    for (const bool taken : {true, false})
      for (const SceneArm& arm : board_.scene.arms)
        if (arm.exit_number > 0 && arm.is_exit == taken) draw_number(arm);
    for (const SceneArm& arm : board_.scene.arms) draw_name(arm);
  }

 private:
  [[nodiscard]] StretchId road_of(const SceneArm& arm) const {
    return arm.out.known() ? arm.out : arm.in.back();
  }

  [[nodiscard]] Line shown(const SceneArm& arm) const {
    return board_.on_sheet(up_to_circle(arm.line, {}, board_.shown_m));
  }

  /// Free of other numbers and of the way, unless it is the number of the exit taken.
  [[nodiscard]] bool is_free(Spot at, bool taken) const {
    const bool beside = std::all_of(discs_.begin(), discs_.end(), [&](Spot other) {
      return length_of(at - other) >= 2 * disc_mm + 0.6;
    });
    const bool clear = std::all_of(board_.looks.begin(), board_.looks.end(), [&](Spot spot) {
      return length_of(at - spot) >= disc_mm + 0.6;
    });
    return beside && clear && (taken || std::all_of(way_.begin(), way_.end(), [&](Spot spot) {
                                 return length_of(at - spot) >= disc_mm + 1;
                               }));
  }

  /// Out along the arm, or on the way out by it; if need be beside the road.
  [[nodiscard]] Spot number_spot(const SceneArm& arm) const {
    const Line line = shown(arm);
    const double to_near = board_.scene.side == Side::left ? 1 : -1;
    // A mini's arms are counted from its middle, where the island lies.
    const double from = board_.scene.form == Form::mini ? 11 : 7;
    for (const double beside : {0.0, 1.5, 3.0, 4.5, 6.0}) {
      const Line moved = arm.is_exit ? way_out() : shifted(line, to_near * beside);
      for (double off = from; off < length_of(moved) - disc_mm - 1; ++off)
        if (is_free(along(moved, off), arm.is_exit)) return along(moved, off);
    }
    return along(line, length_of(line) - disc_mm);
  }

  /// The way from its bar back to the place, turned to lead outwards.
  [[nodiscard]] Line way_out() const {
    std::size_t nearest = 0;
    double least = 1e9;
    for (const SceneArm& arm : board_.scene.arms) {
      if (!arm.is_exit) continue;
      const Spot root = board_.on_sheet(arm.line.front());
      for (std::size_t i = 0; i < way_.size(); ++i)
        if (length_of(way_[i] - root) < least) nearest = i, least = length_of(way_[i] - root);
    }
    Line out(way_.begin() + static_cast<std::ptrdiff_t>(nearest), way_.end());
    if (out.size() < 2) out.push_back(out.front());
    return out;
  }

  void draw_number(const SceneArm& arm) {
    const Spot at = number_spot(arm);
    discs_.push_back(at);
    const Ink paper = arm.is_exit ? Ink::black : Ink::paper;
    const Ink ink = arm.is_exit ? Ink::paper : Ink::black;
    board_.picture.add(Disc{at, disc_mm + 0.3, Ink::paper, 0});
    board_.picture.add(Disc{at, disc_mm, paper, 0.35});
    Label number{at, std::to_string(arm.exit_number), {10, true, ink, Align::middle}};
    number.at.y -= extent_of(number).height / 2;
    board_.picture.add(number);
    board_.room.keep_free({at.x - disc_mm, at.y - disc_mm, 2 * disc_mm, 2 * disc_mm});
  }

  static std::string below(const std::string& name, const std::string& more) {
    return name.empty() ? more : name + "\n" + more;
  }

  /// Of the places signed the first.
  [[nodiscard]] std::string first_of(const road::SignedTo& sign) const {
    return std::string(trim(split(board_.roads.text(sign.destination), ';').front()));
  }

  [[nodiscard]] std::string name_of(const SceneArm& arm) const {
    const road::Roads& roads = board_.roads;
    const StretchId road = road_of(arm);
    std::string name(roads.text(roads.piece(road).ref));
    if (const auto street = roads.text(roads.piece(road).name); !street.empty())
      name.append(name.empty() ? "" : " ").append(street);
    if (!arm.can_leave && !arm.is_entry && board_.scene.form == Form::junction)
      return below(name, std::string(board_.words.at("sketch.no_entry")));
    for (const road::SignedTo& sign : roads.signs_of(road))
      if (arm.can_leave && !arm.is_entry && sign.destination.known() &&
          !roads.text(sign.destination).empty())
        return below(name, board_.words.fill("sketch.to", {{"place", first_of(sign)}}));
    return name;
  }

  void draw_name(const SceneArm& arm) {
    const std::string name = name_of(arm);
    if (name.empty()) return;
    Label label{{}, name, {9, arm.is_exit}};
    label.halo = 0.5;
    const Extent extent = extent_of(label);
    const Line line = shown(arm);
    const double length = length_of(line);
    const double half_road =
        carriageway_of(board_.roads, road_of(arm)).width_m * board_.scale / 2 + 0.8;
    std::vector<Spot> middles;
    for (const double part : {0.8, 0.65, 0.95, 0.5, 0.35}) {
      const Spot at = along(line, part * length);
      const Spot across = left_of(direction_at(line, part * length));
      const double half = std::abs(across.x) * extent.width / 2 +
                          std::abs(across.y) * extent.height / 2 + half_road;
      for (const double more : {0.0, 2.0, 5.0})
        for (const double side : {-1.0, 1.0})
          middles.push_back(at + (side * (half + more)) * across);
    }
    board_.room.put(board_.picture, std::move(label), middles);
  }

  Board& board_;
  const Line& way_;
  std::vector<Spot> discs_;
};

}  // namespace

void draw_arm_words(Board& board, const Line& way) {
  ArmWords(board, way).draw();
}

}  // namespace loopwright::draw
