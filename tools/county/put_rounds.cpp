// Turns junctions into roundabouts once the roads are joined.
//
// 1. Roads that run on through the junction are cut there.
// 2. The part of each road within the circle is taken away, with the signs on it.
// 3. The ring is laid clockwise through the ends that are left.
#include <algorithm>
#include <numbers>

#include "county/draft.hpp"
#include "county/joining.hpp"

namespace loopwright::county {
namespace {

constexpr int ring_points = 24;

class Rounding {
 public:
  Rounding(Draft& draft, const PlanRound& round, Spot middle)
      : draft_(draft), round_(round), middle_(middle) {}
  void put();

 private:
  void cut_through_roads();
  void shorten(Line& line, std::size_t number);
  [[nodiscard]] bool within(Spot at) const { return apart(at, middle_) < round_.radius_m; }

  Draft& draft_;
  const PlanRound& round_;
  Spot middle_;
  std::vector<Spot> arms_;
};

void Rounding::cut_through_roads() {
  std::vector<Line>& lines = draft_.county.lines;
  const std::size_t drawn = lines.size();
  for (std::size_t i = 0; i < drawn; ++i) {
    if (!for_cars(lines[i].kind)) continue;
    const auto& points = lines[i].points;
    const auto at = std::find(points.begin(), points.end(), middle_);
    if (at == points.end() || at == points.begin() || at + 1 == points.end()) continue;
    Line rest = lines[i];
    rest.points.assign(at, points.end());
    rest.ends[0] = End::meets;
    lines[i].points.erase(lines[i].points.begin() + (at - points.begin()) + 1,
                          lines[i].points.end());
    lines[i].ends[1] = End::meets;
    lines.push_back(std::move(rest));
    draft_.numbers.push_back(draft_.numbers[i]);
  }
}

/// Takes away what lies within the circle, from the end of the line that is the junction.
void Rounding::shorten(Line& line, std::size_t number) {
  const bool first = line.points.front() == middle_;
  if (first) std::ranges::reverse(line.points);
  while (!line.points.empty() && within(line.points.back())) {
    draft_.county.node_tags.erase(line.points.back());
    line.points.pop_back();
  }
  if (line.points.empty()) {
    trouble(draft_, draft_.numbers[number],
            called(line) + " lies within the roundabout at " + written(middle_) +
                "; make that smaller");
    return;
  }
  const Spot arm = on_circle(middle_, round_.radius_m, angle_of(middle_, line.points.back()));
  line.points.push_back(arm);
  arms_.push_back(arm);
  if (first) std::ranges::reverse(line.points);
}

void Rounding::put() {
  cut_through_roads();
  std::vector<Line>& lines = draft_.county.lines;
  for (std::size_t i = 0; i < lines.size(); ++i) {
    Line& line = lines[i];
    if (!for_cars(line.kind) || line.points.empty()) continue;
    if (line.points.front() == middle_ || line.points.back() == middle_) shorten(line, i);
  }
  Line ring{.kind = LineKind::ring, .tags = round_.tags};
  for (int i = 0; i <= ring_points; ++i)
    ring.points.push_back(on_circle(middle_, round_.radius_m,
                                    -2 * std::numbers::pi * (i % ring_points) / ring_points));
  for (const Spot arm : arms_) add_point(ring, nearest(ring.points, arm).segment, arm, 0);
  draft_.county.rings.push_back({.name = written(middle_),
                                 .centre = middle_,
                                 .radius_m = round_.radius_m,
                                 .signals = false,
                                 .line = lines.size()});
  lines.push_back(std::move(ring));
  draft_.numbers.push_back(round_.number);
}

}  // namespace

void put_rounds(Draft& draft, const Plan& plan) {
  for (const PlanRound& round : plan.rounds) {
    const auto middle = junction_near(draft.county, grid_of_roads(draft.county), round.at);
    if (!middle)
      trouble(draft, round.number,
              "no junction within 30 m of " + written(round.at) + "; move it to where roads meet");
    else
      Rounding(draft, round, *middle).put();
  }
}

}  // namespace loopwright::county
