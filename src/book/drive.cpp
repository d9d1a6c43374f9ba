#include "loopwright/book/drive.hpp"
#include "loopwright/base/object_text.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <string>

#include "loopwright/base/point.hpp"
#include "loopwright/base/table.hpp"
#include "loopwright/road/kind_table.hpp"
#include "loopwright/road/sort.hpp"

namespace loopwright::book {
namespace {

bool is_practice(const wish::Loop& loop, std::size_t first, std::size_t last) {
  return !loop.practice || (first >= loop.practice->at(0) && last <= loop.practice->at(1));
}

/// So near to a door the ledger doesn't count for who lives there (src/rules/caps.txt).
double near_door_m() {
  for (const TableRow& row : read_table(rule_text("caps")))
    if (row[0] == "ledger free metres") return number_cell(row, 1);
  throw std::logic_error("caps.txt: no row 'ledger free metres'");
}

/// Roads that signs lead along are on most drives. Finding the way is practised only where it is asked for: by name, or
/// as a block of minutes.
bool is_practised(const wish::Loop& loop, const wish::Pass& pass) {
  if (!road::is_of_choice(pass.kind)) return true;
  const auto asks = [&](const wish::Met& met) { return met.want.kind == pass.kind; };
  return std::ranges::any_of(loop.met, asks) ||
         std::ranges::any_of(
             loop.parts,
             [&](const wish::LoopPart& part) { return std::ranges::any_of(part.met, asks); }) ||
         std::ranges::any_of(loop.independent, [&](const wish::IndependentStretch& block) {
           return block.first <= pass.last && pass.first <= block.last;
         });
}

bool is_near_door(const road::Roads& roads, const wish::Wish& wish, PieceId piece) {
  static const double near_m = near_door_m();
  const auto near = [&](Point door) {
    return nearest_on_line(roads.shape_of(piece), door).off_m <= near_m;
  };
  return near(wish.home) || near(wish.end.value_or(wish.home));
}

/// Likely seconds on each stretch that counts as practice.
template <class Tell>
void each_practised(const wish::Loop& loop, Tell tell) {
  for (std::size_t k = 0; k < loop.stretches.size(); ++k) {
    if (!is_practice(loop, k, k)) continue;
    const double end =
        k + 1 < loop.stretches.size() ? loop.stretches[k + 1].arrive_s.likely : loop.seconds.likely;
    tell(loop.stretches[k], std::max(end - loop.stretches[k].arrive_s.likely, 0.0));
  }
}

}  // namespace

std::vector<LessonPass> passes_of(const wish::Loop& loop) {
  std::vector<LessonPass> passes;
  for (const wish::Pass& pass : loop.passes)
    if (is_practice(loop, pass.first, pass.last) && is_practised(loop, pass))
      passes.push_back({{pass.kind, pass.movement}, pass.hardness, text_of(pass.source)});
  return passes;
}

std::vector<StreetDriven> streets_of(const road::Roads& roads, const wish::Wish& wish,
                                     const wish::Loop& loop) {
  std::map<PieceId, int> times;
  for (std::size_t k = 0; k < loop.stretches.size(); ++k)
    if (is_practice(loop, k, k) &&
        (roads.piece(loop.stretches[k].stretch).flags & road::piece_flag::quiet) != 0)
      ++times[loop.stretches[k].stretch.piece()];
  std::vector<StreetDriven> streets;
  for (const auto& [id, count] : times) {
    const road::Piece& piece = roads.pieces[id.index()];
    const auto [low, high] =
        std::minmax(roads.nodes[piece.a.index()].osm_id, roads.nodes[piece.b.index()].osm_id);
    streets.push_back({piece.way, low, high, count, is_near_door(roads, wish, id)});
  }
  std::sort(streets.begin(), streets.end());
  return streets;
}

std::vector<Plan::Road> roads_of(const road::Roads& roads, const wish::Loop& loop) {
  std::map<std::string_view, double> seconds;
  each_practised(loop, [&](const wish::LoopStretch& on, double of) {
    seconds[road::sort_of(roads, on.stretch)] += of;
  });
  std::vector<Plan::Road> all;
  for (const auto& [name, of] : seconds) all.push_back({std::string(name), of / 60});
  return all;
}

std::vector<Plan::Limit> limits_of(const wish::Loop& loop) {
  std::map<std::pair<SpeedUnit, int>, double> seconds;
  each_practised(loop, [&](const wish::LoopStretch& on, double of) {
    seconds[{on.limit.unit, on.limit.value}] += of;
  });
  std::vector<Plan::Limit> all;
  for (const auto& [limit, of] : seconds) all.push_back({limit.second, limit.first, of / 60});
  return all;
}

}  // namespace loopwright::book
