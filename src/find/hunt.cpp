// Method:
//   1. Ground: snap home and end, take the pace of the learner, shut what the wish forbids.
//   2. One sweep from home and one to the end; a state stays when both together fit the minutes.
//   3. What is wanted there: gather.cpp. Of very many candidates tries pick among the nearest and an even
//      choice of the rest.
#include "find/hunt.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>
#include <numeric>

#include "find/bans.hpp"
#include "find/keep_off.hpp"
#include "find/stops.hpp"
#include "find/street_caps.hpp"
#include "loopwright/base/error.hpp"
#include "loopwright/wish/stops.hpp"
#include "loopwright/wish/turn_round.hpp"

namespace loopwright::find {

namespace {

std::string degrees(Point at) {
  char text[48];
  std::snprintf(text, sizeof text, "%.5f,%.5f", at.lat(), at.lon());
  return text;
}

reach::Snap snap_or_say(const road::Roads& roads, Point at, const char* what) {
  if (auto snap = reach::snap_home(roads, at)) return *snap;
  const auto nearest = reach::nearest_road(roads, at);
  std::string text = std::string(what) + " " + degrees(at);
  if (nearest)
    text += " is " + std::to_string(std::lround(nearest->off_m)) +
            " m from the nearest road a learner may use, at " + degrees(nearest->at) +
            "; give a place within 150 m of one";
  else
    text += " is not in this area: no road within 20 km; give a place in it";
  throw UsageError(text);
}

std::vector<reach::Seed> allowed(const Ground& ground, std::vector<reach::Seed> seeds) {
  std::erase_if(seeds, [&](const reach::Seed& seed) {
    return !ground.costs.may_drive(ground.roads.stretch_of(seed.state));
  });
  return seeds;
}

double metres_to(const road::Roads& roads, const reach::Snap& snap, StretchId s) {
  return s.against() ? roads.piece(s).length_m - snap.along_m : snap.along_m;
}

/// States that fit between home and end, neighbours together, with both times.
struct Reachable {
  std::vector<StateId> states;
  std::vector<std::int64_t> home_ms, end_ms;
};

Reachable reachable(const Ground& ground, std::int64_t limit_ms) {
  const reach::Backwards backwards(ground.roads);
  reach::Sweep out(ground.roads), back(ground.roads, &backwards);
  reach::sweep_between(out, back, ground.starts, ground.goals, ground.costs, limit_ms);
  Reachable found;
  for (const std::uint32_t row : out.settled()) {
    const StateId s{row};
    const std::int64_t along = ground.costs.along_ms(ground.roads.stretch_of(s));
    if (back.reached(s) && out.ms(s) + back.ms(s) - along <= limit_ms) found.states.push_back(s);
  }
  reach::sort_by_place(ground.roads, found.states);
  for (const StateId s : found.states) {
    found.home_ms.push_back(out.ms(s));
    found.end_ms.push_back(back.ms(s));
  }
  return found;
}

/// By the rest of the lesson that the ground is a section of.
int driven_before(const Ground& ground, PieceId piece) {
  if (!ground.section) return 0;
  const auto driven = ground.section->driven.find(piece);
  return driven == ground.section->driven.end() ? 0 : driven->second;
}

std::vector<reach::LocalSeed> local(const reach::LocalGraph& graph,
                                    std::span<const reach::Seed> seeds) {
  std::vector<reach::LocalSeed> inside;
  for (const reach::Seed& seed : seeds)
    if (const Vertex v = graph.vertex(seed.state); v != reach::LocalGraph::none)
      inside.push_back({v, static_cast<std::int32_t>(seed.ms)});
  return inside;
}

}  // namespace

Ground::Ground(const road::Roads& all_roads, const wish::Wish& asked, const hours::Setting& set_in,
               const ClockWalls& clock_walls)
    : roads(all_roads),
      wish(asked),
      setting(set_in),
      walls(clock_walls),
      caps(caps_of(asked)),
      pace(all_roads, {.level = asked.level, .factor = asked.pace}, asked.start),
      home(snap_or_say(all_roads, asked.home, "home")),
      end(asked.end ? snap_or_say(all_roads, *asked.end, "end") : home),
      costs(all_roads, pace),
      lane_verdicts(all_roads, set_in) {
  apply_bans(roads, wish, caps, costs);
  if (wish.through.empty())
    costs.let_turn_round(wish::wants_turning_round(wish) ? reach::TurningRound::where_streets_end
                                                         : reach::TurningRound::nowhere);
  apply_keep_offs(roads, wish, setting, {{"home", home.piece}, {"the end", end.piece}}, costs);
  StreetCaps(roads, wish, caps).apply(costs);
  walls.apply(roads, costs);
  starts = allowed(*this, reach::leaving(roads, pace, home));
  goals = allowed(*this, reach::arriving(roads, pace, end));
}

Ground::Ground(const Ground& lesson, const wish::Wish& part, Section of_lesson,
               const hours::Setting& set_in)
    : roads(lesson.roads),
      wish(part),
      setting(set_in),
      walls(lesson.walls),
      caps(lesson.caps),
      pace(lesson.pace),
      home(lesson.home),
      end(lesson.end),
      costs(std::move(of_lesson.costs)),
      lane_verdicts(lesson.roads, set_in) {
  starts = allowed(*this, std::move(of_lesson.starts));
  goals = allowed(*this, std::move(of_lesson.goals));
  section = std::move(of_lesson);
}

std::int64_t road_within(const Ground& ground, std::int64_t limit_ms) {
  std::int64_t sum = 0;
  for (const StateId s : reachable(ground, limit_ms).states)
    if (s.index() < ground.roads.stretch_count())
      sum += ground.costs.along_ms(StretchId{s.index()});
  return sum;
}

double Ground::home_m(StretchId s) const {
  if (section && !section->from_door) return roads.piece(s).length_m;
  return metres_to(roads, home, s);
}
double Ground::end_m(StretchId s) const {
  if (section && !section->to_door) return roads.piece(s).length_m;
  return metres_to(roads, end, s);
}

Hunt::Hunt(const Ground& the_ground, std::size_t picked)
    : ground(the_ground), graph(the_ground.roads, the_ground.costs, {}) {
  const std::int64_t seconds =
      60LL * (ground.wish.minutes.value_or(0) - ground.wish.reserve_minutes);
  // What planned stops take is neither driven nor free for manoeuvres.
  const std::int64_t kept_ms = 1000 * wish::kept_for_stops_s(ground.wish);
  const double whole_ms = 1000 * static_cast<double>(seconds);
  high_ms = 1000 * seconds - kept_ms;
  low_ms = static_cast<std::int64_t>(std::ceil(ground.caps.window_share * whole_ms)) - kept_ms;
  if (ground.section) low_ms = ground.section->low_ms, high_ms = ground.section->high_ms;
  const Reachable found = reachable(ground, high_ms);
  graph = reach::LocalGraph(ground.roads, ground.costs, found.states);
  starts = local(graph, ground.starts);
  goals = local(graph, ground.goals);
  takes = takes_of(ground, graph);
  number_pieces();
  find_welcome();
  of_want.resize(ground.wish.wants.size());
  with_stops = asks_for_stops(ground.wish);
  with_verdicts = wish::asks_for_verdicts(ground.wish);
  gather_candidates(found.home_ms, found.end_ms);
  pick_for_wants(picked);
}

void Hunt::number_pieces() {
  std::vector<PieceId> pieces;
  for (Vertex v = 0; v < graph.size(); ++v) pieces.push_back(graph.stretch(v).piece());
  std::vector<PieceId> sorted = pieces;
  std::sort(sorted.begin(), sorted.end());
  sorted.erase(std::unique(sorted.begin(), sorted.end()), sorted.end());
  const StreetCaps street_caps(ground.roads, ground.wish, ground.caps);
  for (const PieceId p : sorted) {
    const road::Piece& piece = ground.roads.pieces[p.index()];
    piece_m.push_back(static_cast<float>(piece.length_m));
    const bool quiet = (piece.flags & road::piece_flag::quiet) != 0;
    piece_quiet.push_back(quiet ? 1 : 0);
    piece_most.push_back(quiet ? street_caps.most(p) - driven_before(ground, p)
                               : std::numeric_limits<int>::max());
  }
  for (const PieceId p : pieces)
    piece_of.push_back(static_cast<std::uint32_t>(
        std::lower_bound(sorted.begin(), sorted.end(), p) - sorted.begin()));
}

void Hunt::pick_for_wants(std::size_t picked) {
  const auto& wants = ground.wish.wants;
  for (std::size_t w = 0; w < wants.size(); ++w) {
    std::vector<std::uint32_t> rows;
    for (std::size_t row = 0; row < candidates.size(); ++row)
      if (serves(candidates[row], wants[w])) rows.push_back(static_cast<std::uint32_t>(row));
    const std::size_t near = std::min(rows.size(), picked / 2);
    const std::size_t step = std::max<std::size_t>(1, (rows.size() - near) / (picked / 2));
    of_want[w].assign(rows.begin(), rows.begin() + static_cast<std::ptrdiff_t>(near));
    for (std::size_t k = near; k < rows.size(); k += step) of_want[w].push_back(rows[k]);
  }
}

Drive Hunt::drive_of(std::span<const Vertex> vertices) const {
  Drive drive;
  for (const Vertex v : vertices) drive.states.push_back(graph.state(v));
  drive.start_m = ground.home_m(graph.stretch(vertices.front()));
  drive.end_m = ground.end_m(graph.stretch(vertices.back()));
  if (with_stops) plan_stops(ground, drive);
  return drive;
}

std::int64_t Hunt::drive_ms(std::span<const Vertex> vertices) const {
  const auto ms_of = [](std::span<const reach::LocalSeed> seeds, Vertex v) {
    const auto it = std::find_if(seeds.begin(), seeds.end(),
                                 [&](const reach::LocalSeed& s) { return s.vertex == v; });
    assert(it != seeds.end());
    return static_cast<std::int64_t>(it->ms);
  };
  std::int64_t ms = ms_of(starts, vertices.front());
  for (std::size_t i = 1; i < vertices.size(); ++i)
    ms += graph.arc_between(vertices[i - 1], vertices[i])->turn_ms + graph.along_ms(vertices[i]);
  return ms - graph.along_ms(vertices.back()) + ms_of(goals, vertices.back());
}

}  // namespace loopwright::find
