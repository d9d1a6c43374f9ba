// Method: what lies on the road itself comes first, since nobody can overlook it.
// 1. On the way to the junction, up to 100 m before it and behind the last junction one turned at: a
//    level crossing, a bridge, lights, a crossing. The junction lies after it. Lights or a crossing
//    count only when there are no others of them on that way.
// 2. Beside the road: the nearest landmark whose middle is within 45 m of the corner (a church hall's
//    depth and a pavement), or within 70 m when its walls reach as near. Not behind the driver's back
//    beyond the way he comes, and none when another of its kind stands within 200 m: nobody could say
//    which is meant. Distances are our judgement.
// 3. Its place along the way driven says whether the corner comes after it, before it or by it.
#include "say/landmark.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace loopwright::say {
namespace {

using road::Landmark;

constexpr double on_the_way_m = 100, beside_m = 45, big_beside_m = 70, alike_m = 200, by_m = 15;
constexpr std::size_t most_landmark_words = 5;

class Finder {
 public:
  Finder(const Drive& drive, const Moment& moment, const Words& words)
      : drive_(drive), roads_(drive.roads()), moment_(moment), words_(words) {
    corner_ = roads_.nodes[roads_.to_node(drive.at(moment.entry)).index()].at;
  }

  [[nodiscard]] std::string find() const {
    std::string text = on_the_way();
    return text.empty() ? beside() : text;
  }

 private:
  [[nodiscard]] std::string at(std::string_view where, const std::string& it) const {
    std::string text = words_.fill(where, {{"it", it}});
    return spoken_words(text) <= most_landmark_words ? text : std::string();
  }

  [[nodiscard]] std::string after(std::string_view key) const {
    return at("landmark.after", std::string(words_.at(key)));
  }

  /// Step 1: the stretches that end before the junction, nearest first.
  [[nodiscard]] std::string on_the_way() const {
    namespace flag = road::node_flag;
    double metres = 0;
    int lights = 0, crossings = 0;
    for (std::size_t i = moment_.entry; i > 0; --i) {
      if ((roads_.piece(drive_.at(i)).flags & road::piece_flag::bridge) != 0 && metres > by_m)
        return after("landmark.bridge");
      metres += roads_.piece(drive_.at(i)).length_m;
      if (metres > on_the_way_m || turned_at(i - 1)) break;
      const std::uint32_t met = roads_.nodes[roads_.to_node(drive_.at(i - 1)).index()].flags;
      if ((met & flag::level_crossing) != 0) return after("landmark.level-crossing");
      const bool crossing = (met & (flag::zebra | flag::signal_crossing)) != 0;
      if (crossing) ++crossings;
      if (!crossing && (met & flag::signals) != 0) ++lights;
    }
    if (lights == 1) return after("landmark.lights");
    if (crossings == 1) return after("landmark.crossing");
    return {};
  }

  /// The drive leaves its road at this joint, so what lies before it isn't on the way to ours.
  [[nodiscard]] bool turned_at(std::size_t joint) const {
    const double heading = heading_change_deg(road::bearing_in_deg(roads_, drive_.at(joint)),
                                              road::bearing_out_deg(roads_, drive_.at(joint + 1)));
    return movement_of(heading) != road::Movement::ahead;
  }

  /// Step 2.
  [[nodiscard]] std::string beside() const {
    const std::vector<const Landmark*> around = around_corner();
    const Landmark* best = nullptr;
    for (const Landmark* mark : around) {
      if (!is_near(*mark) || !is_alone(*mark, around)) continue;
      if (best == nullptr || off_m(*mark) < off_m(*best)) best = mark;
    }
    return best == nullptr ? std::string() : words_for(*best);
  }

  /// Landmarks of the corner's cell and those round it.
  [[nodiscard]] std::vector<const Landmark*> around_corner() const {
    constexpr std::int32_t cell_e7 = 50000;  // cells of 1/200 degree
    std::vector<std::uint64_t> cells;
    for (const std::int32_t lat : {-cell_e7, 0, cell_e7})
      for (const std::int32_t lon : {-cell_e7, 0, cell_e7})
        cells.push_back(road::grid_cell({corner_.lat_e7 + lat, corner_.lon_e7 + lon}));
    std::sort(cells.begin(), cells.end());
    cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
    std::vector<const Landmark*> marks;
    for (const std::uint64_t cell : cells)
      for (const Landmark& mark : roads_.landmarks_in(cell)) marks.push_back(&mark);
    return marks;
  }

  [[nodiscard]] double off_m(const Landmark& mark) const { return distance_m(mark.at, corner_); }

  [[nodiscard]] bool is_near(const Landmark& mark) const {
    const double off = off_m(mark);
    return off <= beside_m || (off <= big_beside_m && off - mark.reach_m <= by_m);
  }

  /// No other of its kind could be meant.
  [[nodiscard]] bool is_alone(const Landmark& mark,
                              const std::vector<const Landmark*>& around) const {
    return std::none_of(around.begin(), around.end(), [&](const Landmark* other) {
      return other != &mark && other->kind == mark.kind && off_m(*other) < alike_m &&
             distance_m(other->at, mark.at) > by_m;
    });
  }

  /// Metres the landmark lies beyond the corner, along the way driven to it.
  [[nodiscard]] double beyond_m(const Landmark& mark) const {
    const double heading = road::bearing_in_deg(roads_, drive_.at(moment_.entry));
    const double turn = heading_change_deg(heading, bearing_deg(corner_, mark.at));
    return off_m(mark) * std::cos(turn * std::numbers::pi / 180);
  }

  /// Step 3.
  [[nodiscard]] std::string words_for(const Landmark& mark) const {
    const double beyond = beyond_m(mark);
    std::string_view where = "landmark.by";
    if (beyond > by_m) where = "landmark.before";
    if (beyond < -by_m) where = "landmark.after";
    if (const std::string name = proper_name(mark); !name.empty()) {
      const std::string text = at(where, words_.fill("landmark.named", {{"name", name}}));
      if (!text.empty()) return text;
    }
    const std::string kind = "landmark." + std::string(road::name(mark.kind));
    return at(where, std::string(words_.at(kind)));
  }

  /// Pubs and shops go by their names; without an article, which the words bring.
  [[nodiscard]] std::string proper_name(const Landmark& mark) const {
    using road::LandmarkKind;
    if (mark.kind != LandmarkKind::pub && mark.kind != LandmarkKind::supermarket) return {};
    std::string name = spoken_name(roads_.text(mark.name));
    if (name.starts_with("The ")) name.erase(0, 4);
    return name;
  }

  const Drive& drive_;
  const road::Roads& roads_;
  const Moment& moment_;
  const Words& words_;
  Point corner_;
};

}  // namespace

std::string landmark_for(const Drive& drive, const Moment& moment, const Words& words) {
  const bool none = moment.kind == RowKind::leave || moment.kind == RowKind::warn ||
                    moment.kind == RowKind::pull_up || moment.kind == RowKind::ring_leave;
  return none ? std::string() : Finder(drive, moment, words).find();
}

}  // namespace loopwright::say
