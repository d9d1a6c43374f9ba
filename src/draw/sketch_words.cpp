// Words below a briefing picture, most important first: the exit, who goes first, lanes, what is not
// sure, how hard. The law behind them: Highway Code rules 170 to 190 (junctions, roundabouts), 291 to
// 299 (level crossings), 134 (merging in turn), 259 (slip roads), H2 (people crossing side roads).
#include <array>
#include <cmath>

#include "draw/lane_way.hpp"
#include "draw/sketch_board.hpp"

namespace loopwright::draw {
namespace {

using road::Control;
using road::Kind;
using road::Movement;

class SketchWords {
 public:
  SketchWords(const road::Roads& roads, const Scene& scene) : roads_(roads), scene_(scene) {
    far_ = scene.side == Side::left ? "right" : "left";
  }

  std::vector<std::string> words() {
    add_exit();
    add_priority();
    add_lanes();
    add_doubts();
    if (scene_.chance != nullptr)
      say("Hardness " + std::to_string(scene_.chance->hardness) + " of 5.");
    return std::move(lines_);
  }

 private:
  void say(std::string line) { lines_.push_back(std::move(line)); }

  [[nodiscard]] bool is(Kind kind) const {
    return scene_.chance != nullptr && road::meets(scene_.chance->kind, kind);
  }

  void add_exit() {
    int all = 0, taken = 0;
    for (const SceneArm& arm : scene_.arms) {
      all = std::max(all, arm.exit_number);
      if (arm.is_exit) taken = arm.exit_number;
    }
    if (taken > 0)
      say("Exit " + std::to_string(taken) + " of " + std::to_string(all) +
          ", counting the road you came by.");
  }

  void add_priority() {
    if (is(Kind::level_crossing)) return add_level_crossing();
    if (is(Kind::lanes_merge)) return say("A lane ends ahead: merge in turn.");
    if (is(Kind::signal_roundabout))
      return say("Wait for the lights; if they are off give way to traffic from the " + far_ + ".");
    if (scene_.form == Form::ring || scene_.form == Form::mini)
      return say("Give way to traffic from the " + far_ + ".");
    if (scene_.form == Form::turn_round) return say("Turn round where it is safe and allowed.");
    if (is(Kind::signals)) return add_lights();
    switch (scene_.control) {
      case Control::give_way_near:
        return say("Give way to traffic from the " + far_ + ".");
      case Control::give_way_far:
        return say("Give way to traffic from both sides.");
      case Control::stop_near:
      case Control::stop_far:
        return say("Stop at the line, then give way to both sides.");
      case Control::across:
        return say("Give way to oncoming traffic and to people crossing.");
      case Control::priority:
        return say(movement_at(roads_, scene_) == Movement::ahead
                       ? "You go first; look for those who may not see you."
                       : "You go first, but after people crossing the side road.");
      default:
        return say("No sign mapped: look who goes first.");
    }
  }

  void add_lights() {
    const Movement across = scene_.side == Side::left ? Movement::right : Movement::left;
    say(movement_at(roads_, scene_) == across && meets_oncoming(scene_)
            ? "Wait for the lights; turning " + far_ + ", give way to oncoming traffic."
            : "Wait for the lights; people already crossing go first.");
  }

  void add_level_crossing() {
    const std::string_view tag = roads_.text(scene_.chance->tag);
    const auto has = [&](std::string_view word) { return tag.find(word) != tag.npos; };
    std::string kind = "Kind not mapped";
    if (has("barrier=half") || has("barrier=double_half"))
      kind = "Half barriers";
    else if (has("barrier=full") || has("barrier=yes"))
      kind = "Barriers";
    else if (has("barrier=gates") || has("barrier=gate"))
      kind = "Gates";
    else if (has("barrier=no"))
      kind = "No barriers";
    if (has("light=yes"))
      kind += ", lights";
    else if (has("light=no"))
      kind += ", no lights";
    say("Go on only when the far side is clear; never stop on it.");
    say(kind + ". The angle of the rails isn't mapped.");
  }

  void add_lanes() {
    const LaneChoice lane = lane_choice(roads_, scene_.entry, movement_at(roads_, scene_));
    if (lane.lanes < 2) return;
    std::string which = "lane " + std::to_string(lane.from_left + 1) + " from the left";
    if (lane.from_left == 0) which = "the left one";
    if (lane.from_left + 1 == lane.lanes) which = "the right one";
    say(std::to_string(lane.lanes) + " lanes on the way in: " + which +
        (lane.by_arrows ? ", by the arrows mapped." : " unless arrows on the road say otherwise."));
  }

  void add_doubts() {
    if (scene_.chance != nullptr && scene_.chance->confidence == road::Confidence::inferred)
      say("Not tagged in the map, but inferred: look for signs and lines.");
    const Carriageway road = carriageway_of(roads_, scene_.entry);
    if (road.from != WidthFrom::mapped)
      say(road.from == WidthFrom::lanes ? "Width not mapped: drawn by the lanes."
                                        : "Width and lanes not mapped: drawn as is usual.");
  }

  const road::Roads& roads_;
  const Scene& scene_;
  std::string far_;
  std::vector<std::string> lines_;
};

}  // namespace

std::vector<std::string> sketch_words(const road::Roads& roads, const Scene& scene) {
  return SketchWords(roads, scene).words();
}

}  // namespace loopwright::draw
