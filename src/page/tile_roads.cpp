#include "page/tile_roads.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "loopwright/hours/timetable.hpp"
#include "loopwright/lanes/lane_verdicts.hpp"
#include "page/tile_grid.hpp"

namespace loopwright::page {
namespace {

// From which zoom on a layer, or a road by its rank (motorway to service), is drawn: before it would be a blot.
constexpr int practice_zoom = 13, bus_lanes_zoom = 12, pull_ups_zoom = 15;
constexpr std::array<int, 8> zoom_of_rank{9, 9, 9, 10, 11, 12, 13, 14};

std::vector<Spot> spots_of(const RoadsShown& shown, std::span<const Point> shape) {
  std::vector<Spot> spots;
  for (const Point point : shape) spots.push_back(spot_in(shown.tile, point));
  return spots;
}

/// The part of a line between two distances from its start.
std::vector<Point> part_of(std::span<const Point> line, double from_m, double to_m) {
  std::vector<Point> part{point_along(line, from_m)};
  double along_m = 0;
  for (std::size_t k = 1; k < line.size(); ++k) {
    along_m += distance_m(line[k - 1], line[k]);
    if (along_m > from_m && along_m < to_m) part.push_back(line[k]);
  }
  part.push_back(point_along(line, to_m));
  return part;
}

/// A piece's two directions.
std::array<StretchId, 2> both_ways(PieceId piece) {
  return {StretchId(piece, false), StretchId(piece, true)};
}

void add_text(Values& values, std::string_view key, std::string_view text) {
  if (!text.empty()) values.emplace_back(key, std::string(text));
}

/// What notes change of a road: for the whole lesson it is shut, both ways or one; its limit on the signs; humps.
void add_noted(Values& values, const RoadsShown& shown, PieceId id) {
  const auto ways = both_ways(id);
  const auto shut = [&](StretchId way) {
    return shown.map.drivable(way) && !shown.roads.drivable(way);
  };
  const auto driven = [&](StretchId way) { return shown.roads.drivable(way); };
  if (std::ranges::any_of(ways, shut))
    values.emplace_back("shut",
                        std::string(std::ranges::any_of(ways, driven) ? "one way" : "whole"));
  std::string limit;
  for (const StretchId way : ways) {
    const road::LimitFact& fact = shown.roads.stretch(way).limit;
    if (fact.confidence != road::LimitConfidence::noted) continue;
    const std::string text = std::to_string(fact.value) + " " + std::string(name(fact.unit));
    if (text != limit) limit += (limit.empty() ? "" : " and ") + text;
  }
  add_text(values, "noted_limit", limit);
  const auto humps = [&](const road::Roads& roads) {
    return (roads.pieces[id.index()].flags & road::piece_flag::humps) != 0;
  };
  if (humps(shown.roads) && !humps(shown.map)) values.emplace_back("noted_humps", true);
}

void add_road(Layer& layer, const RoadsShown& shown, PieceId id) {
  const road::Roads& roads = shown.roads;
  const road::Piece& piece = roads.pieces[id.index()];
  const auto has = [&](std::uint32_t flag) { return (piece.flags & flag) != 0; };
  const auto ways = both_ways(id);
  const bool driven = std::ranges::any_of(ways, [&](StretchId way) { return roads.drivable(way); });
  Values values{{"way", piece.way},
                {"class", std::string(road::name(piece.road_class))},
                {"rank", std::int64_t{road::rank(piece.road_class)}},
                {"drive", driven}};
  add_text(values, "name", roads.text(piece.name));
  add_text(values, "ref", roads.text(piece.ref));
  if (piece.width_m > 0)
    values.emplace_back("width_dm", std::int64_t{std::lround(piece.width_m * 10)});
  if (has(road::piece_flag::one_way)) values.emplace_back("one_way", true);
  if (has(road::piece_flag::ring)) values.emplace_back("ring", true);
  if (has(road::piece_flag::quiet)) values.emplace_back("quiet", true);
  add_noted(values, shown, id);
  layer.add_line(spots_of(shown, roads.shape_of(id)), values);
}

/// A line for each kind, whichever way it is met.
void add_practice(Layer& layer, const RoadsShown& shown, PieceId id, std::span<const Spot> line) {
  std::vector<const road::RunFact*> facts;
  for (const StretchId way : both_ways(id))
    for (const road::RunFact& fact : shown.roads.run_facts_of(way)) facts.push_back(&fact);
  std::ranges::stable_sort(facts, {}, [](const road::RunFact* fact) { return fact->kind; });
  for (std::size_t k = 0; k < facts.size(); ++k) {
    if (k > 0 && facts[k - 1]->kind == facts[k]->kind) continue;
    const bool two = k + 1 < facts.size() && facts[k + 1]->kind == facts[k]->kind;
    const int hardness = std::max<int>(facts[k]->hardness, two ? facts[k + 1]->hardness : 0);
    layer.add_line(line, {{"kind", std::string(road::name(facts[k]->kind))},
                          {"hardness", std::int64_t{hardness}},
                          {"sure", std::string(road::name(facts[k]->confidence))},
                          {"way", shown.roads.pieces[id.index()].way}});
  }
}

struct Beside {
  PieceId piece;
  std::span<const Spot> line;
};

void add_bus_lanes(Layer& layer, const RoadsShown& shown, const Beside& beside,
                   const lanes::LaneVerdicts& verdicts) {
  constexpr std::array<std::string_view, 3> sides{"unknown", "left", "right"};
  constexpr std::array<std::string_view, 3> directions{"along", "against", "unknown"};
  for (const road::BusLane& lane : shown.roads.bus_lanes_of(beside.piece)) {
    const std::string_view hours = shown.roads.text(lane.hours);
    // One against the other traffic is never ours (lanes/lanes.hpp).
    const wish::Verdict verdict =
        lane.contraflow != 0 ? wish::Verdict::in_force : verdicts.of_lane(lane, shown.when);
    layer.add_line(
        beside.line,
        {{"verdict", std::string(wish::name(verdict))},
         {"side", std::string(sides[static_cast<std::size_t>(lane.side)])},
         {"direction", std::string(directions[static_cast<std::size_t>(lane.direction)])},
         {"hours", hours.empty() ? "hours not mapped" : hours::Timetable(hours).words()},
         {"way", shown.roads.pieces[beside.piece.index()].way}});
  }
}

void add_pull_ups(Layer& layer, const RoadsShown& shown, PieceId id) {
  for (const StretchId way : both_ways(id)) {
    for (const road::PullUp& place : shown.roads.pull_ups_of(way)) {
      std::vector<Point> shape(shown.roads.shape_of(id).begin(), shown.roads.shape_of(id).end());
      if (way.against()) std::ranges::reverse(shape);
      layer.add_line(spots_of(shown, part_of(shape, place.from_m, place.to_m)),
                     {{"why", std::string(shown.roads.text(place.why))},
                      {"by_the_hour", (place.flags & road::pull_up_flag::hours) != 0},
                      {"way", shown.roads.pieces[id.index()].way}});
    }
  }
}

}  // namespace

void add_roads(TileWriter& out, const RoadsShown& shown, std::span<const PieceId> pieces) {
  const int zoom = shown.tile.zoom;
  const lanes::LaneVerdicts verdicts(shown.roads, shown.setting);
  Layer& roads = out.layer("roads");
  Layer& practice = out.layer("practice");
  Layer& bus_lanes = out.layer("bus_lanes");
  Layer& pull_ups = out.layer("pull_ups");
  for (const PieceId id : pieces) {
    const road::Piece& piece = shown.roads.pieces[id.index()];
    if (zoom < zoom_of_rank[static_cast<std::size_t>(road::rank(piece.road_class))]) continue;
    const std::vector<Spot> line = spots_of(shown, shown.roads.shape_of(id));
    add_road(roads, shown, id);
    if (zoom >= practice_zoom) add_practice(practice, shown, id, line);
    if (zoom >= bus_lanes_zoom) add_bus_lanes(bus_lanes, shown, {id, line}, verdicts);
    if (zoom >= pull_ups_zoom) add_pull_ups(pull_ups, shown, id);
  }
}

}  // namespace loopwright::page
