// Method: the ledger's rows are by way, ascending; only the ways that stand in it are looked at closer.
#include "find/street_caps.hpp"

#include <algorithm>

#include "loopwright/base/point.hpp"

namespace loopwright::find {

bool StreetCaps::is_near_door(PieceId piece) const {
  const auto line = roads_.shape_of(piece);
  const auto near = [&](Point door) {
    return nearest_on_line(line, door).off_m <= caps_.ledger_free_m;
  };
  return near(wish_.home) || (wish_.end && near(*wish_.end));
}

int StreetCaps::most(PieceId piece) const {
  constexpr int out_and_back = 2;
  const auto& use = wish_.street_use;
  const std::int64_t way = roads_.pieces[piece.index()].way;
  const auto row = std::lower_bound(
      use.begin(), use.end(), way,
      [](const wish::StreetUse& one, std::int64_t other) { return one.way < other; });
  const bool in_ledger = row != use.end() && row->way == way;
  if (!in_ledger && caps_.quiet_passes >= out_and_back) return caps_.quiet_passes;
  if (is_near_door(piece)) return std::max(caps_.quiet_passes, out_and_back);
  if (!in_ledger) return caps_.quiet_passes;
  return std::clamp(std::min(caps_.day_passes - row->today, caps_.month_passes - row->month), 0,
                    caps_.quiet_passes);
}

void StreetCaps::apply(reach::Costs& costs) const {
  if (!wish_.through.empty()) return;  // one's own drive goes where one likes
  for (const wish::StreetUse& use : wish_.street_use)
    for (const road::Piece& piece : roads_.pieces_of_way(use.way)) {
      const PieceId id = roads_.id_of(piece);
      if ((piece.flags & road::piece_flag::quiet) == 0 || most(id) > 0) continue;
      costs.shut(id);
    }
}

}  // namespace loopwright::find
