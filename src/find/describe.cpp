// Method:
//   1. Along the drive, likely milliseconds and variance add up: part of the first stretch, then
//      for each further one the wait at the turn and the stretch, at last a part again. What comes
//      after a planned stop is reached later by its minutes.
//   2. Road driven twice is measured per piece as the driven length less the length covered.
//   3. Passes, bus-lane verdicts and counts against the wish come from their own rooms and files.
#include "find/describe.hpp"

#include <algorithm>
#include <map>
#include <tuple>

#include "find/counting.hpp"
#include "find/stops.hpp"
#include "loopwright/find/find.hpp"
#include "loopwright/lanes/lanes.hpp"
#include "loopwright/wish/lesson.hpp"

namespace loopwright::find {

namespace {

const road::Turn& turn_between(const road::Roads& roads, StateId from, StateId to) {
  const auto turns = roads.turns_from(from);
  const auto it =
      std::find_if(turns.begin(), turns.end(), [&](const road::Turn& t) { return t.to == to; });
  assert(it != turns.end());
  return *it;
}

wish::Range range_of(const pace::Spell& spell, double later_s = 0) {
  const pace::Percentiles p = pace::percentiles_of(spell);
  return {p.low + later_s, p.likely + later_s, p.high + later_s};
}

std::string street_of(const road::Roads& roads, const road::Piece& piece) {
  const std::string_view name = roads.text(piece.name);
  return std::string(name.empty() ? roads.text(piece.ref) : name);
}

/// All of a row but its stretch, limit and times.
void name_row(const road::Roads& roads, const Drive& drive, std::size_t i, wish::LoopStretch& row) {
  const StretchId s = row.stretch;
  const road::Piece& piece = roads.piece(s);
  row.way = piece.way, row.against = s.against();
  row.from = roads.nodes[roads.from_node(s).index()].osm_id;
  row.to = roads.nodes[roads.to_node(s).index()].osm_id;
  row.from_index = s.against() ? piece.to_index : piece.from_index;
  row.to_index = s.against() ? piece.from_index : piece.to_index;
  row.metres = driven_m(roads, drive, i);
  row.street = street_of(roads, piece);
  const bool first = i == 0;
  const bool last = i + 1 == drive.states.size();
  if (first || last)
    row.partial_m = {first ? drive.start_m : 0.0, last ? drive.end_m : piece.length_m};
}

/// Driving the i-th stretch of a drive, or the part of it that is driven.
pace::Spell spell_along(const road::Roads& roads, const pace::Pace& pace, const Drive& drive,
                        std::size_t i) {
  const StretchId s = roads.stretch_of(drive.states[i]);
  const bool first = i == 0;
  const bool last = i + 1 == drive.states.size();
  if (!first && !last) return pace.along(s);
  return pace.along_part(s, first ? drive.start_m : 0,
                         last ? drive.end_m : roads.piece(s).length_m);
}

/// Of the stops on the rows before this one.
double stop_seconds(const road::Roads& roads, const Drive& drive, std::size_t row) {
  return static_cast<double>(stops_before_ms(roads, drive, row)) / 1000;
}

/// One driven interval of a piece, in metres from its first node.
struct Interval {
  PieceId piece;
  double from = 0, to = 0;
};

std::vector<Interval> driven_intervals(const road::Roads& roads, const Drive& drive,
                                       std::uint32_t piece_flags) {
  std::vector<Interval> intervals;
  for (std::size_t i = 0; i < drive.states.size(); ++i) {
    const StretchId s = roads.stretch_of(drive.states[i]);
    if ((roads.piece(s).flags & piece_flags) != piece_flags) continue;
    const double length = roads.piece(s).length_m;
    const double begin = i == 0 ? drive.start_m : 0;
    const double end = begin + driven_m(roads, drive, i);
    intervals.push_back(s.against() ? Interval{s.piece(), length - end, length - begin}
                                    : Interval{s.piece(), begin, end});
  }
  return intervals;
}

/// Length of a loop by way, node pair and direction, its ends left out.
std::map<std::tuple<std::int64_t, std::uint32_t, std::uint32_t>, double> lengths_of(
    const wish::Loop& loop, double exempt_m) {
  std::map<std::tuple<std::int64_t, std::uint32_t, std::uint32_t>, double> lengths;
  double at = 0;
  for (const wish::LoopStretch& row : loop.stretches) {
    const double from = std::max(at, exempt_m);
    const double to = std::min(at + row.metres, loop.metres - exempt_m);
    if (to > from) lengths[{row.way, row.from_index, row.to_index}] += to - from;
    at += row.metres;
  }
  return lengths;
}

}  // namespace

double metres_twice(const road::Roads& roads, const Drive& drive, std::uint32_t piece_flags) {
  std::vector<Interval> intervals = driven_intervals(roads, drive, piece_flags);
  std::sort(intervals.begin(), intervals.end(), [](const Interval& a, const Interval& b) {
    return std::tuple(a.piece, a.from, a.to) < std::tuple(b.piece, b.from, b.to);
  });
  double twice = 0;
  double covered_to = 0;
  PieceId piece;
  for (const Interval& part : intervals) {
    if (part.piece != piece) piece = part.piece, covered_to = 0;
    twice += std::max(0.0, std::min(part.to, covered_to) - part.from);
    covered_to = std::max(covered_to, part.to);
  }
  return twice;
}

double shared_part(const wish::Loop& a, const wish::Loop& b, double exempt_m) {
  const auto in_a = lengths_of(a, exempt_m);
  const auto in_b = lengths_of(b, exempt_m);
  double shared = 0, length_a = 0, length_b = 0;
  for (const auto& [key, metres] : in_a) {
    length_a += metres;
    const auto it = in_b.find(key);
    if (it != in_b.end()) shared += std::min(metres, it->second);
  }
  for (const auto& [key, metres] : in_b) length_b += metres;
  const double shorter = std::min(length_a, length_b);
  return shorter > 0 ? shared / shorter : 1;
}

std::vector<pace::Spell> spells_before(const road::Roads& roads, const pace::Pace& pace,
                                       const Drive& drive) {
  std::vector<pace::Spell> spells;
  pace::Spell so_far;
  for (std::size_t i = 0; i < drive.states.size(); ++i) {
    if (i > 0) so_far += pace.at(turn_between(roads, drive.states[i - 1], drive.states[i]));
    spells.push_back(so_far);
    so_far += spell_along(roads, pace, drive, i);
  }
  spells.push_back(so_far);
  return spells;
}

wish::Loop timed(const Ground& ground, const Drive& drive) {
  const road::Roads& roads = ground.roads;
  wish::Loop loop;
  loop.start = ground.wish.start;
  const std::vector<pace::Spell> spells = spells_before(roads, ground.pace, drive);
  loop.stretches.resize(drive.states.size());
  for (std::size_t i = 0; i < drive.states.size(); ++i) {
    loop.stretches[i].stretch = roads.stretch_of(drive.states[i]);
    loop.stretches[i].arrive_s = range_of(spells[i], stop_seconds(roads, drive, i));
  }
  loop.stop_seconds = stop_seconds(roads, drive, drive.states.size());
  loop.seconds = range_of(spells.back());
  return loop;
}

wish::LoopStretch row_of(const Ground& ground, const Drive& drive, std::size_t i) {
  wish::LoopStretch row;
  row.stretch = ground.roads.stretch_of(drive.states[i]);
  name_row(ground.roads, drive, i, row);
  row.limit = ground.pace.limit(row.stretch);
  return row;
}

pace::Spell turn_spell(const Ground& ground, StateId from, StateId to) {
  return ground.pace.at(turn_between(ground.roads, from, to));
}

void judge_lanes(const Ground& ground, const wish::Loop& loop, std::span<PlacePass> passes) {
  for (PlacePass& found : passes)
    if (!wish::verdicts_of(found.pass.kind).empty())
      found.pass.verdict = ground.lane_verdicts.on(loop, {found.pass.first, found.pass.last});
}

wish::Loop describe(const Ground& ground, const Drive& drive) {
  const road::Roads& roads = ground.roads;
  const wish::Wish& wish = ground.wish;
  wish::Loop loop = timed(ground, drive);
  for (std::size_t i = 0; i < drive.states.size(); ++i) {
    wish::LoopStretch& row = loop.stretches[i];
    name_row(roads, drive, i, row);
    row.limit = ground.pace.limit(row.stretch);
    loop.metres += row.metres;
  }
  loop.end = wish::likely_end(loop, ground.setting);
  loop.metres_twice = metres_twice(roads, drive);
  std::vector<PlacePass> passes = passes_of(roads, drive);
  judge_lanes(ground, loop, passes);
  for (const PlacePass& found : passes) loop.passes.push_back(found.pass);
  loop.bus_lanes = lanes::bus_lanes_on(roads, loop, ground.setting);
  time_passes(ground, drive, passes);
  for (const wish::Want& want : wish.wants) {
    wish::Met met{want, static_cast<int>(counting(ground, passes, want).size())};
    if (!want.count) met.practised = practised(ground, passes, want).passes;
    loop.met.push_back(std::move(met));
  }
  return loop;
}

}  // namespace loopwright::find
