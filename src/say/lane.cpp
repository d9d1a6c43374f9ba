// Method:
// 1. The arrows are those of the stretch that ends at the junction, else of the one before it, up to
//    60 m back, where nothing joins between.
// 2. The way taken names the arrows that lead there: at rings and minis by the pass's movement, else
//    by the change of heading; where ours leaves a road that goes on ahead, by the side it leaves to.
// 3. Lanes for buses are no car's: where the map knows which they are, they aren't counted; where it
//    doesn't, nothing is said.
// 4. Lanes that fit must lie side by side.
// Source: OSM wiki, page Key:turn (values by lane, from left to right as one drives).
#include "say/lane.hpp"

#include <algorithm>

#include "loopwright/base/text.hpp"
#include "say/layout.hpp"

namespace loopwright::say {
namespace {

using road::Movement;

/// Arrows are painted this near before a junction; ours.
constexpr double arrows_within_m = 60;

/// Whether each lane of a car leads the way taken, from left to right.
using Fits = std::vector<bool>;

bool points(std::string_view arrow, Movement movement) {
  if (movement == Movement::ahead) return arrow == "through" || arrow.empty() || arrow == "none";
  return arrow.ends_with(movement == Movement::left ? "left" : "right") &&
         !arrow.starts_with("merge_to");
}

/// Stretch with the arrows before a joint; none when no arrows are mapped near it.
StretchId marked_before(const Drive& drive, std::size_t joint) {
  double metres = 0;
  for (std::size_t i = joint;; --i) {
    const auto marks = drive.roads().lane_marks_of(drive.at(i));
    if (!marks.empty() && !drive.roads().text(marks.front().arrows).empty()) return drive.at(i);
    metres += drive.roads().piece(drive.at(i)).length_m;
    const NodeId node = drive.roads().from_node(drive.at(i));
    if (i == 0 || metres > arrows_within_m || drive.roads().leaving(node).size() != 2) return {};
  }
}

Movement movement_for(const Drive& drive, const Moment& moment) {
  if (moment.kind == RowKind::roundabout || moment.kind == RowKind::mini) {
    if (moment.pass->movement != Movement::round) return moment.pass->movement;
    return drive.roads().info().region.side == Side::left ? Movement::right : Movement::left;
  }
  const Layout layout = layout_of(drive.roads(), moment.junction);
  const bool leaves = layout.shape == Shape::turns_off || layout.shape == Shape::slip_road ||
                      layout.shape == Shape::divides;
  return leaves ? layout.side : movement_of(moment.junction.angle_deg);
}

/// Which of so many lanes of a stretch are a bus's; nothing when there are some nobody can place.
std::optional<std::vector<std::size_t>> bus_lanes_of(const road::Roads& roads, StretchId stretch,
                                                     std::size_t lanes) {
  std::vector<std::size_t> found;
  const auto ours = stretch.against() ? road::LaneDirection::against : road::LaneDirection::along;
  for (const road::BusLane& bus : roads.bus_lanes_of(stretch.piece())) {
    if (bus.direction != ours && bus.direction != road::LaneDirection::unknown) continue;
    const bool placed = bus.lane > 0 && bus.lane <= lanes && bus.lanes == lanes && !bus.doubtful;
    if (!placed) return std::nullopt;
    found.push_back(bus.lane - std::size_t{1});
  }
  return found;
}

Fits fits_of(const std::vector<std::string_view>& lanes, const std::vector<std::size_t>& buses,
             Movement movement) {
  Fits fits;
  for (std::size_t i = 0; i < lanes.size(); ++i) {
    if (std::find(buses.begin(), buses.end(), i) != buses.end()) continue;
    const auto arrows = split(lanes[i], ';');
    fits.push_back(std::any_of(arrows.begin(), arrows.end(),
                               [&](std::string_view arrow) { return points(arrow, movement); }));
  }
  return fits;
}

class LaneWords {
 public:
  LaneWords(const Fits& fits, const Words& words) : fits_(fits), words_(words) {}

  [[nodiscard]] std::string text() const {
    const auto first =
        static_cast<std::size_t>(std::find(fits_.begin(), fits_.end(), true) - fits_.begin());
    const auto count = static_cast<std::size_t>(std::count(fits_.begin(), fits_.end(), true));
    const std::size_t all = fits_.size();
    if (all < 2 || count == 0 || !words_.has(key(all))) return {};
    for (std::size_t i = first; i < first + count; ++i)
      if (!fits_[i]) return {};  // not side by side
    if (count == all) return std::string(words_.at(all == 2 ? "lane.either" : "lane.any"));
    if (count == 1) return one(first);
    if (first == 0) return several("lane.lefts", count);
    return several(first + count == all ? "lane.rights" : "lane.middles", count);
  }

 private:
  static std::string key(std::size_t n) { return "number." + std::to_string(n); }
  [[nodiscard]] std::string number(std::size_t n) const { return std::string(words_.at(key(n))); }

  [[nodiscard]] std::string one(std::size_t lane) const {
    const std::string n = number(fits_.size());
    if (lane == 0) return words_.fill("lane.left", {{"n", n}});
    if (lane + 1 == fits_.size()) return words_.fill("lane.right", {{"n", n}});
    if (fits_.size() == 3) return words_.fill("lane.middle", {{"n", n}});
    return words_.fill("lane.nth", {{"nth", words_.nth(static_cast<int>(lane) + 1)}, {"n", n}});
  }

  [[nodiscard]] std::string several(std::string_view text, std::size_t few) const {
    return words_.fill(text, {{"few", number(few)}, {"n", number(fits_.size())}});
  }

  const Fits& fits_;
  const Words& words_;
};

bool has_choice(RowKind kind) {
  return kind == RowKind::roundabout || kind == RowKind::mini || kind == RowKind::lights ||
         kind == RowKind::crossroads || kind == RowKind::junction;
}

}  // namespace

std::string lane_for(const Drive& drive, const Moment& moment, const Words& words) {
  if (!has_choice(moment.kind)) return {};
  const StretchId marked = marked_before(drive, moment.entry);
  if (!marked.known()) return {};
  const road::LaneMarks& marks = drive.roads().lane_marks_of(marked).front();
  const auto lanes = split(drive.roads().text(marks.arrows), '|');
  const auto buses = bus_lanes_of(drive.roads(), marked, lanes.size());
  if (!buses) return {};
  const Movement movement = movement_for(drive, moment);
  Fits fits = fits_of(lanes, *buses, movement);
  // Where no lane is kept for ours, which bears off a little, it is one of those that go ahead.
  const bool none = std::find(fits.begin(), fits.end(), true) == fits.end();
  const bool bears =
      moment.junction.exit.known() && movement_of(moment.junction.angle_deg) == Movement::ahead;
  if (none && bears) fits = fits_of(lanes, *buses, Movement::ahead);
  return LaneWords(fits, words).text();
}

}  // namespace loopwright::say
