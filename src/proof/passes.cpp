// Method:
// 1. At the end of each row, every place that the node belongs to is entered, if the row itself
//    isn't inside it. The drive is followed through what lies inside to the way out; the area's
//    chance of (place, entry, exit) says what kind of pass that is. No chance, no pass: so only
//    places that the area has a chance of from this entry are looked at.
// 2. A stretch-like kind is passed along each unbroken run of rows that carry it or its special
//    form and lie in one place, if what is driven of it is long enough. Narrow road and single track
//    are one run, named single-track when an unbroken part of that kind is long enough by itself.
// 3. What lies beside the road is passed by driving along the metre at which it lies. A manoeuvre is
//    a matter of choice: each one claimed must be one of the area's, on a row of its own.
#include <algorithm>
#include <set>
#include <tuple>

#include "loopwright/road/kind_table.hpp"
#include "loopwright/road/note.hpp"
#include "proof/checks.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

using road::Kind;
using road::KindForm;

bool is_inside(const road::Roads& roads, PlaceId place, StretchId stretch) {
  const auto pieces = roads.pieces_of(place);
  return std::find(pieces.begin(), pieces.end(), stretch.piece()) != pieces.end();
}

const road::Chance* find_chance(const road::Roads& roads, PlaceId place, StretchId entry,
                                StretchId exit) {
  const auto key = std::tuple(entry, place, exit);
  const auto key_of = [](const road::Chance& c) { return std::tuple(c.entry, c.place, c.exit); };
  const auto at = std::partition_point(roads.chances.begin(), roads.chances.end(),
                                       [&](const road::Chance& c) { return key_of(c) < key; });
  for (auto chance = at; chance != roads.chances.end() && key_of(*chance) == key; ++chance)
    if (road::form_of(chance->kind) == KindForm::junction) return &*chance;
  return nullptr;
}

wish::Pass pass_of(const road::Roads& roads, const road::Chance& chance, std::size_t first,
                   std::size_t last) {
  wish::Pass pass;
  pass.kind = chance.kind;
  pass.movement = chance.movement;
  pass.exit = chance.exit_number;
  pass.first = first;
  pass.last = last;
  pass.hardness = chance.hardness;
  pass.confidence = chance.confidence;
  pass.source = chance.source;
  pass.tag = std::string(roads.text(chance.tag));
  return pass;
}

bool holds_node(const road::Roads& roads, PlaceId place, NodeId node) {
  const auto nodes = roads.nodes_of(place);
  return std::find(nodes.begin(), nodes.end(), node) != nodes.end();
}

void add_junctions(Drive& drive, std::size_t i) {
  const StretchId entry = drive.stretches[i];
  const NodeId node = drive.roads.to_node(entry);
  PlaceId before;
  for (const road::Chance& from_here : drive.roads.chances_from(entry)) {
    const PlaceId place = from_here.place;
    if (place == before) continue;  // chances are by entry, then place
    before = place;
    if (!holds_node(drive.roads, place, node) || is_inside(drive.roads, place, entry)) continue;
    std::size_t exit = i + 1;
    while (exit < drive.stretches.size() && is_inside(drive.roads, place, drive.stretches[exit]))
      ++exit;
    if (exit == drive.stretches.size()) continue;
    const road::Chance* chance = find_chance(drive.roads, place, entry, drive.stretches[exit]);
    if (chance != nullptr) drive.passes.push_back({pass_of(drive.roads, *chance, i, exit), place});
  }
}

/// True when the row drives along the metre at which the chance's place lies beside it.
bool drives_by(const Drive& drive, std::size_t row, const road::Chance& chance) {
  const road::Roads& roads = drive.roads;
  const PieceId piece = chance.entry.piece();
  const double along_m =
      nearest_on_line(roads.shape_of(piece), roads.places[chance.place.index()].at).along_m;
  const double at_m =
      chance.entry.against() ? roads.pieces[piece.index()].length_m - along_m : along_m;
  const Part& part = drive.parts[row];
  return at_m >= part.from_m - length_tolerance_m && at_m <= part.to_m + length_tolerance_m;
}

void add_beside(Drive& drive, std::size_t row) {
  for (const road::Chance& chance : drive.roads.chances_from(drive.stretches[row]))
    if (road::form_of(chance.kind) == KindForm::roadside && drives_by(drive, row, chance))
      drive.passes.push_back({pass_of(drive.roads, chance, row, row), chance.place});
}

/// The area's manoeuvre that a claim of the file speaks of, when the drive goes by it.
const road::Chance* find_manoeuvre(const Drive& drive, const wish::Pass& said) {
  if (said.first != said.last || said.last >= drive.stretches.size()) return nullptr;
  for (const road::Chance& chance : drive.roads.chances_from(drive.stretches[said.first]))
    if (chance.kind == said.kind && drives_by(drive, said.first, chance)) return &chance;
  return nullptr;
}

void add_manoeuvres(Drive& drive) {
  std::set<std::size_t> rows;
  for (const wish::Pass& said : drive.loop.passes) {
    if (road::form_of(said.kind) != KindForm::manoeuvre) continue;
    const road::Chance* chance = find_manoeuvre(drive, said);
    if (chance == nullptr || !rows.insert(said.first).second) continue;
    wish::Pass own = pass_of(drive.roads, *chance, said.first, said.first);
    own.stop_s = 60.0 * road::kind_row(said.kind).minutes;
    drive.passes.push_back({own, chance->place});
  }
}

/// One run of rows with a stretch-like kind, [first, end).
struct Run {
  std::size_t first = 0, end = 0;
};

/// The place of one of the kinds whose run a row is part of; none when it is part of none.
PlaceId run_place(const Drive& drive, std::uint64_t kinds, std::size_t row) {
  for (const road::RunFact& fact : drive.roads.run_facts_of(drive.stretches[row])) {
    if ((road::bit(fact.kind) & kinds) != 0) return fact.place;
  }
  return {};
}

/// Unbroken runs of rows within bounds that carry one of the kinds and lie in one place.
std::vector<Run> runs_with(const Drive& drive, std::uint64_t kinds, Run bounds) {
  std::vector<Run> runs;
  PlaceId before;
  for (std::size_t i = bounds.first; i < bounds.end; ++i) {
    const PlaceId place = run_place(drive, kinds, i);
    if (place.known() && place != before) runs.push_back({i, i});
    if (place.known()) runs.back().end = i + 1;
    before = place;
  }
  return runs;
}

double driven_m(const Drive& drive, Run run) {
  double sum = 0;
  for (std::size_t i = run.first; i < run.end; ++i) sum += drive.parts[i].metres();
  return sum;
}

/// single_track when it has an unbroken part of the run long enough by itself, else the kind.
Kind named(const Drive& drive, Kind kind, Run run) {
  if (kind != Kind::narrow_road) return kind;
  const auto parts = runs_with(drive, road::bit(Kind::single_track), run);
  const bool long_enough = std::any_of(parts.begin(), parts.end(), [&](Run part) {
    return driven_m(drive, part) >= road::least_run_m(Kind::single_track);
  });
  return long_enough ? Kind::single_track : kind;
}

/// Facts of a run: the hardest, the least certain, and the first of the kind it is named by.
void describe_run(const Drive& drive, std::uint64_t kinds, Run run, FoundPass& found) {
  bool sourced = false;
  found.pass.hardness = 0;
  for (std::size_t i = run.first; i < run.end; ++i) {
    for (const road::RunFact& fact : drive.roads.run_facts_of(drive.stretches[i])) {
      if ((road::bit(fact.kind) & kinds) == 0) continue;
      found.pass.hardness = std::max<int>(found.pass.hardness, fact.hardness);
      found.pass.confidence = road::less_sure(found.pass.confidence, fact.confidence);
      const bool names_it = fact.kind == found.pass.kind || found.pass.kind == Kind::narrow_road;
      if (sourced || !names_it) continue;
      sourced = true;
      found.pass.source = {.id = drive.roads.piece(fact.stretch).way, .type = ObjectType::way};
      found.pass.tag = std::string(drive.roads.text(fact.tag));
      found.place = fact.place;
    }
  }
}

void add_runs(Drive& drive, Kind kind) {
  std::uint64_t kinds = road::bit(kind);
  if (kind == Kind::narrow_road) kinds |= road::bit(Kind::single_track);
  for (const Run run : runs_with(drive, kinds, {0, drive.stretches.size()})) {
    if (driven_m(drive, run) < road::least_run_m(kind)) continue;
    FoundPass found;
    found.pass.kind = named(drive, kind, run);
    found.pass.first = run.first;
    found.pass.last = run.end - 1;
    describe_run(drive, kinds, run, found);
    drive.passes.push_back(found);
  }
}

}  // namespace

void find_passes(Drive& drive) {
  for (std::size_t i = 0; i + 1 < drive.stretches.size(); ++i) add_junctions(drive, i);
  for (std::size_t i = 0; i < drive.stretches.size(); ++i) add_beside(drive, i);
  add_manoeuvres(drive);
  for (const Kind kind : road::all_kinds())
    if (road::is_stretch_like(kind) && kind != Kind::single_track) add_runs(drive, kind);
}

}  // namespace loopwright::proof
