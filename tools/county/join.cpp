// 1. An end that isn't a point of another road yet is moved onto the nearest one of the ground within
//    30 m; one that meets nothing must be a dead end by the plan.
// 2. Roads that cross on one layer share a point.
// 3. Railways, trams and water take a point of each road they cross on its layer: a level crossing or
//    ford that the plan has there. A stream without one passes under.
// 4. What stands at the ends is put down.
#include <algorithm>
#include <cmath>

#include "county/draft.hpp"
#include "county/joining.hpp"

namespace loopwright::county {
namespace {

constexpr double here_m = 40;  // how near to its crossing of the plan a road must cross
constexpr double exact_m = 0.5;

bool dead_end(End end) {
  return end == End::turning_circle || end == End::closed || end == End::edge;
}

class Joiner {
 public:
  Joiner(Draft& draft, const Plan& plan)
      : draft_(draft), lines_(draft.county.lines), plan_(plan), used_(plan.crossings.size(), 0) {}
  void run();

 private:
  void join_end(std::size_t line, std::size_t end);
  void cross_roads();
  void cross_tracks(std::size_t track);
  std::vector<Spot> cross_at_fords(std::size_t stream, std::size_t road);
  void meet_track(std::size_t track, std::size_t road, Spot place);
  void lay_trams();
  void put_end_mark(Line& line, std::size_t end);

  Draft& draft_;
  std::vector<Line>& lines_;
  const Plan& plan_;
  std::vector<char> used_;  // by crossing of the plan
  LineGrid grid_;
};

void Joiner::run() {
  grid_ = grid_of_roads(draft_.county);
  for (std::size_t line = 0; line < lines_.size(); ++line)
    if (for_cars(lines_[line].kind) && lines_[line].kind != LineKind::ring)
      for (const std::size_t end : {0U, 1U}) join_end(line, end);
  cross_roads();
  for (std::size_t line = 0; line < lines_.size(); ++line)
    if (!for_cars(lines_[line].kind)) cross_tracks(line);
  for (std::size_t i = 0; i < used_.size(); ++i)
    if (used_[i] == 0)
      trouble(
          draft_, plan_.crossings[i].number,
          "no railway or water crosses a road within 40 m of " + written(plan_.crossings[i].at));
  lay_trams();
  for (Line& line : lines_)
    for (const std::size_t end : {0U, 1U}) put_end_mark(line, end);
}

void Joiner::join_end(std::size_t number, std::size_t end) {
  Line& line = lines_[number];
  if (dead_end(line.ends[end])) return;
  const Spot place = end == 0 ? line.points.front() : line.points.back();
  std::vector<std::size_t> ground;
  for (const std::size_t other : grid_.near(place, join_m)) {
    if (other == number) continue;
    if (holds(lines_[other], place)) return;
    if (lines_[other].layer == 0) ground.push_back(other);
  }
  const auto found = nearest_of(draft_.county, ground, place);
  if (!found || found->foot.off_m > join_m) {
    return trouble(draft_, draft_.numbers[number],
                   called(line) + " meets no road within 30 m of its end " + written(place) +
                       "; move it, or write first= or last=turning_circle, closed or edge");
  }
  std::vector<Spot>& points = line.points;
  if (points.size() > 2) {  // the curve may have overshot: draw its last bit again
    const auto inner = end == 0 ? points.begin() + 1 : points.end() - 2;
    if (apart(*inner, found->foot.at) < join_m) points.erase(inner);
  }
  (end == 0 ? points.front() : points.back()) =
      add_point(lines_[found->line], found->foot.segment, found->foot.at);
  grid_.put(number, points);
}

void Joiner::cross_roads() {
  for (std::size_t i = 0; i < lines_.size(); ++i) {
    if (!for_cars(lines_[i].kind)) continue;
    for (const std::size_t other : grid_.near(lines_[i].points, merge_m)) {
      if (other <= i || lines_[other].layer != lines_[i].layer) continue;
      if (!cross(lines_[i], lines_[other]).empty()) grid_.put(other, lines_[other].points);
    }
  }
}

void Joiner::cross_tracks(std::size_t track) {
  const auto kind = lines_[track].tags.find("waterway");
  const bool stream = kind != lines_[track].tags.end() && kind->second == "stream";
  for (const std::size_t road : grid_.near(lines_[track].points, merge_m)) {
    if (lines_[road].layer != lines_[track].layer) continue;
    for (const Spot place :
         stream ? cross_at_fords(track, road) : cross(lines_[track], lines_[road], exact_m))
      meet_track(track, road, place);
  }
}

/// A stream goes under a road in a pipe, which nobody maps, but where the plan has a ford.
std::vector<Spot> Joiner::cross_at_fords(std::size_t stream, std::size_t road) {
  Line water = lines_[stream];
  Line over = lines_[road];
  std::vector<Spot> fords;
  for (const Spot place : cross(water, over, exact_m)) {
    if (std::ranges::none_of(plan_.crossings, [&](const PlanTags& planned) {
          return apart(place, planned.at) < here_m;
        }))
      continue;
    for (Line* line : {&lines_[stream], &lines_[road]})
      add_point(*line, nearest(line->points, place).segment, place, 0);
    fords.push_back(place);
  }
  return fords;
}

void Joiner::meet_track(std::size_t track, std::size_t road, Spot place) {
  const LineKind kind = lines_[track].kind;
  Tags& tags = draft_.county.node_tags[place];
  if (kind == LineKind::rail) tags["railway"] = "level_crossing";
  if (kind == LineKind::tram) tags["railway"] = "tram_level_crossing";
  if (kind == LineKind::water) tags["ford"] = "yes";
  bool planned = kind == LineKind::tram;
  for (std::size_t i = 0; i < used_.size(); ++i) {
    if (apart(plan_.crossings[i].at, place) >= here_m) continue;
    for (const auto& [key, value] : plan_.crossings[i].tags) tags[key] = value;
    used_[i] = 1;
    planned = true;
    break;
  }
  if (!planned)
    trouble(draft_, draft_.numbers[road],
            called(lines_[road]) + " crosses " +
                (kind == LineKind::water ? "water" : "the railway") + " at " + written(place) +
                "; write a crossing there, or a bridge");
}

/// Rails in the roads of a name hold every point of these.
void Joiner::lay_trams() {
  for (const PlanLine& planned : plan_.lines) {
    const auto* track = std::get_if<PlanTrack>(&planned);
    if (track == nullptr || track->along.empty()) continue;
    const std::size_t roads = lines_.size();
    for (std::size_t i = 0; i < roads; ++i) {
      const auto name = lines_[i].tags.find("name");
      if (!for_cars(lines_[i].kind) || name == lines_[i].tags.end() || name->second != track->along)
        continue;
      lines_.push_back({.kind = LineKind::tram,
                        .points = lines_[i].points,
                        .tags = track->tags,
                        .layer = lines_[i].layer});
      draft_.numbers.push_back(track->number);
    }
    if (lines_.size() == roads)
      trouble(draft_, track->number, "there is no road '" + track->along + "' for the tram");
  }
}

void Joiner::put_end_mark(Line& line, std::size_t end) {
  struct Mark {
    End end;
    const char* highway;
    double before_m;
  };
  constexpr std::array<Mark, 4> marks{{{End::give_way, "give_way", 6},
                                       {End::stop, "stop", 6},
                                       {End::signals, "traffic_signals", 9},
                                       {End::turning_circle, "turning_circle", 0}}};
  const auto* mark = std::ranges::find(marks, line.ends[end], &Mark::end);
  if (mark == marks.end()) return;
  const Spot last = end == 0 ? line.points.front() : line.points.back();
  if (mark->before_m == 0) {
    draft_.county.node_tags[last]["highway"] = mark->highway;
    return;
  }
  const Spot inner = end == 0 ? line.points[1] : line.points[line.points.size() - 2];
  const Spot place = towards(last, inner, std::min(mark->before_m, apart(last, inner) / 2));
  line.points.insert(end == 0 ? line.points.begin() + 1 : line.points.end() - 1, place);
  Tags& tags = draft_.county.node_tags[place];
  tags["highway"] = mark->highway;
  const bool lights = line.ends[end] == End::signals;
  tags[lights ? "traffic_signals:direction" : "direction"] = end == 0 ? "backward" : "forward";
}

}  // namespace

void join(Draft& draft, const Plan& plan) {
  Joiner(draft, plan).run();
}

}  // namespace loopwright::county
