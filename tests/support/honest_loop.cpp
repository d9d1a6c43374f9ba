// 1. The letters are followed turn by turn through the states of the graph.
// 2. Times are summed by pace, as DEVELOPERS.md defines them: a stretch is arrived at after the
//    delay of the turn into it.
// 3. Road driven twice: for each piece, the driven intervals less what they cover.
#include "support/honest_loop.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <stdexcept>
#include <string>
#include <tuple>

#include "loopwright/find/passes.hpp"
#include "loopwright/pace/pace.hpp"

namespace loopwright::test {
namespace {

constexpr Instant lesson_start{1795878000, 0};

find::Drive drive_over(const BuiltTown& town, std::string_view letters) {
  const road::Roads roads = town.roads();
  find::Drive drive;
  for (std::size_t i = 0; i + 1 < letters.size(); ++i) {
    const StretchId stretch = town.stretch(letters.substr(i, 2));
    StateId state;
    if (i == 0) state = StateId{stretch.index()};
    if (i > 0)
      for (const road::Turn& turn : roads.turns_from(drive.states.back()))
        if (roads.stretch_of(turn.to) == stretch) state = turn.to;
    if (!state.known())
      throw std::invalid_argument("honest loop: no legal turn into " +
                                  std::string(letters.substr(i, 2)));
    drive.states.push_back(state);
  }
  drive.start_m = roads.piece(roads.stretch_of(drive.states.front())).length_m / 2;
  drive.end_m = roads.piece(roads.stretch_of(drive.states.back())).length_m / 2;
  return drive;
}

wish::LoopStretch row_of(const road::Roads& roads, StretchId stretch) {
  const road::Piece& piece = roads.piece(stretch);
  wish::LoopStretch row;
  row.stretch = stretch, row.way = piece.way, row.against = stretch.against();
  row.from = roads.nodes[roads.from_node(stretch).index()].osm_id;
  row.to = roads.nodes[roads.to_node(stretch).index()].osm_id;
  row.from_index = stretch.against() ? piece.to_index : piece.from_index;
  row.to_index = stretch.against() ? piece.from_index : piece.to_index;
  const std::string_view name = roads.text(piece.name);
  row.street = name.empty() ? roads.text(piece.ref) : name;
  return row;
}

wish::Range range_of(const pace::Spell& spell) {
  const pace::Percentiles p = pace::percentiles_of(spell);
  return {p.low, p.likely, p.high};
}

/// Stretches with their times; fills the loop's sums.
void add_stretches(const road::Roads& roads, const find::Drive& drive, wish::Loop& loop) {
  const pace::Pace pace(roads, {}, lesson_start);
  pace::Spell so_far;
  for (std::size_t i = 0; i < drive.states.size(); ++i) {
    const StretchId stretch = roads.stretch_of(drive.states[i]);
    const double length = roads.piece(stretch).length_m;
    const bool first = i == 0, last = i + 1 == drive.states.size();
    const double from_m = first ? drive.start_m : 0, to_m = last ? drive.end_m : length;
    if (i > 0)
      for (const road::Turn& turn : roads.turns_from(drive.states[i - 1]))
        if (turn.to == drive.states[i]) so_far += pace.at(turn);
    wish::LoopStretch row = row_of(roads, stretch);
    row.limit = pace.limit(stretch), row.arrive_s = range_of(so_far), row.metres = to_m - from_m;
    if (first || last) row.partial_m = {from_m, to_m};
    so_far += first || last ? pace.along_part(stretch, from_m, to_m) : pace.along(stretch);
    loop.metres += row.metres;
    loop.stretches.push_back(std::move(row));
  }
  loop.seconds = range_of(so_far);
}

double metres_twice(const road::Roads& roads, const wish::Loop& loop) {
  std::map<PieceId, std::vector<std::pair<double, double>>> driven;
  for (const wish::LoopStretch& row : loop.stretches) {
    const double length = roads.piece(row.stretch).length_m;
    auto [from, to] = row.partial_m.value_or(std::array{0.0, length});
    if (row.against) std::tie(from, to) = std::pair(length - to, length - from);
    driven[row.stretch.piece()].emplace_back(from, to);
  }
  double twice = 0;
  for (auto& [piece, parts] : driven) {
    std::sort(parts.begin(), parts.end());
    double covered_to = 0;
    for (const auto& [from, to] : parts) {
      twice += std::max(0.0, std::min(to, covered_to) - from);
      covered_to = std::max(covered_to, to);
    }
  }
  return twice;
}

}  // namespace

wish::Answer honest_answer(const BuiltTown& town, std::string_view letters,
                           std::initializer_list<std::string_view> wants) {
  return honest_answer(town.roads(), drive_over(town, letters), wants);
}

wish::Answer honest_answer(const road::Roads& roads, const find::Drive& drive,
                           std::initializer_list<std::string_view> wants) {
  wish::Answer answer;
  answer.wish.start = lesson_start;
  wish::Loop loop;
  loop.start = lesson_start;
  add_stretches(roads, drive, loop);
  loop.metres_twice = metres_twice(roads, loop);
  for (const find::PlacePass& p : find::passes_of(roads, drive)) loop.passes.push_back(p.pass);
  for (const std::string_view text : wants) {
    const wish::Want want = wish::read_want(text);
    answer.wish.wants.push_back(want);
    const auto got = std::count_if(loop.passes.begin(), loop.passes.end(),
                                   [&](const auto& pass) { return wish::counts_for(pass, want); });
    loop.met.push_back({want, static_cast<int>(got)});
  }
  const StretchId home = loop.stretches.front().stretch;
  const double length = roads.piece(home).length_m;
  answer.wish.home = point_along(roads.shape_of(home.piece()),
                                 home.against() ? length - drive.start_m : drive.start_m);
  answer.wish.through = {answer.wish.home};
  const road::AreaInfo& info = roads.info();
  answer.area = {"town.area",        info.id,
                 info.region.code,   std::string(name(info.region.side)),
                 info.map_timestamp, "© OpenStreetMap contributors (ODbL)"};
  answer.loops.push_back(std::move(loop));
  return answer;
}

}  // namespace loopwright::test
