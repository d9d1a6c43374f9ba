// Words below a briefing picture, most important first: the exit, who goes first, lanes, what is not
// sure, how hard. The law behind them: Highway Code rules 170 to 190 (junctions, roundabouts), 291 to
// 299 (level crossings), 134 (merging in turn), 259 (slip roads), H2 (people crossing side roads).
#include <algorithm>
#include <array>
#include <cmath>

#include "draw/lane_way.hpp"
#include "draw/sketch_board.hpp"
#include "loopwright/say/crossing_words.hpp"

namespace loopwright::draw {
namespace {

using road::Control;
using road::Kind;
using road::Movement;

class SketchWords {
 public:
  SketchWords(const road::Roads& roads, const Scene& scene, const say::Words& words)
      : roads_(roads), scene_(scene), words_(words) {}

  std::vector<std::string> words() {
    add_exit();
    add_priority();
    add_boxes();
    add_lanes();
    add_doubts();
    if (scene_.chance != nullptr)
      say("sketch.hardness", {{"n", std::to_string(scene_.chance->hardness)}});
    return std::move(lines_);
  }

 private:
  void say(std::string_view key, std::initializer_list<say::Filling> fillings = {}) {
    lines_.push_back(words_.fill(key, fillings));
  }

  /// "right", or with its article, of the side from which traffic across the road comes.
  [[nodiscard]] std::string far_side(std::size_t column) const {
    return std::string(words_.item(scene_.side == Side::left ? "side.right" : "side.left", column));
  }

  void say_from_far_side(std::string_view key) { say(key, {{"the_side", far_side(2)}}); }

  [[nodiscard]] bool is(Kind kind) const {
    return scene_.chance != nullptr && road::meets(scene_.chance->kind, kind);
  }

  void add_exit() {
    int all = 0, taken = 0;
    for (const SceneArm& arm : scene_.arms) {
      all = std::max(all, arm.exit_number);
      if (arm.is_exit) taken = arm.exit_number;
    }
    if (taken > 0) say("sketch.exit", {{"n", std::to_string(taken)}, {"of", std::to_string(all)}});
  }

  void add_priority() {
    if (is(Kind::level_crossing)) return add_level_crossing();
    if (is(Kind::lanes_merge)) return say("sketch.merge");
    if (is(Kind::signal_roundabout)) return say_from_far_side("sketch.ring_lights");
    if (scene_.form == Form::ring || scene_.form == Form::mini)
      return say_from_far_side("sketch.from_side");
    if (scene_.form == Form::turn_round) return say("sketch.turn_round");
    if (is(Kind::signals)) return add_lights();
    switch (scene_.control) {
      case Control::give_way_near:
        return say_from_far_side("sketch.from_side");
      case Control::give_way_far:
        return say("sketch.both_sides");
      case Control::stop_near:
      case Control::stop_far:
        return say("sketch.stop");
      case Control::across:
        return say("sketch.oncoming");
      case Control::priority:
        return say(movement_at(roads_, scene_) == Movement::ahead ? "sketch.first_ahead"
                                                                  : "sketch.first_off");
      default:
        return say("sketch.no_sign");
    }
  }

  void add_lights() {
    const Movement across = scene_.side == Side::left ? Movement::right : Movement::left;
    if (movement_at(roads_, scene_) == across && meets_oncoming(scene_))
      return say("sketch.lights_across", {{"side", far_side(1)}});
    say("sketch.lights");
  }

  void add_level_crossing() {
    say("sketch.crossing");
    say("sketch.rails",
        {{"kind", say::capitalised(say::crossing_words(words_, roads_.text(scene_.chance->tag)))}});
  }

  /// Highway Code rules 178 and 174.
  void add_boxes() {
    if (cycle_box_m(roads_, scene_.entry.back())) say("sketch.cycle_box");
    const auto chances = roads_.chances_from(scene_.entry);
    if (std::any_of(chances.begin(), chances.end(),
                    [](const road::Chance& chance) { return chance.kind == Kind::box_junction; }))
      say("sketch.box_junction", {{"side", far_side(1)}});
  }

  void add_lanes() {
    const LaneChoice lane = lane_choice(roads_, scene_.entry, movement_at(roads_, scene_));
    if (lane.lanes < 2) return;
    std::string which = words_.fill("sketch.lane_nth", {{"n", std::to_string(lane.from_left + 1)}});
    if (lane.from_left == 0) which = words_.at("sketch.lane_left");
    if (lane.from_left + 1 == lane.lanes) which = words_.at("sketch.lane_right");
    say(lane.by_arrows ? "sketch.lanes_by_arrows" : "sketch.lanes",
        {{"n", std::to_string(lane.lanes)}, {"which", which}});
  }

  void add_doubts() {
    if (scene_.chance != nullptr && scene_.chance->confidence == road::Confidence::inferred)
      say("sketch.inferred");
    const Carriageway road = carriageway_of(roads_, scene_.entry);
    if (road.from != WidthFrom::mapped)
      say(road.from == WidthFrom::lanes ? "sketch.width_by_lanes" : "sketch.width_usual");
  }

  const road::Roads& roads_;
  const Scene& scene_;
  const say::Words& words_;
  std::vector<std::string> lines_;
};

}  // namespace

std::vector<std::string> sketch_words(const road::Roads& roads, const Scene& scene,
                                      const say::Words& words) {
  return SketchWords(roads, scene, words).words();
}

}  // namespace loopwright::draw
