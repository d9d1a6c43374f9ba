#include "loopwright/road/in_box.hpp"

#include <algorithm>
#include <cassert>

#include "road/grid.hpp"

namespace loopwright::road {

std::vector<CellRun> cell_runs(const Box& box) {
  assert(box.south_west.lat_e7 <= box.north_east.lat_e7 &&
         box.south_west.lon_e7 <= box.north_east.lon_e7);
  std::vector<CellRun> runs;
  const auto add_row = [&](std::int64_t lat_e7) {
    const auto lat = static_cast<std::int32_t>(lat_e7);
    const CellRun run{grid_cell({lat, box.south_west.lon_e7}),
                      grid_cell({lat, box.north_east.lon_e7})};
    if (runs.empty() || runs.back().west != run.west) runs.push_back(run);
  };
  for (std::int64_t lat = box.south_west.lat_e7; lat < box.north_east.lat_e7; lat += cell_e7)
    add_row(lat);
  add_row(box.north_east.lat_e7);
  return runs;
}

std::vector<PieceId> pieces_in(const Roads& roads, const Box& box) {
  std::vector<PieceId> found;
  for (const CellRun& run : cell_runs(box)) {
    const auto first = std::ranges::lower_bound(roads.grid, run.west, {}, &GridEntry::cell);
    const auto last = std::upper_bound(
        first, roads.grid.end(), run.east,
        [](std::uint64_t cell, const GridEntry& entry) { return cell < entry.cell; });
    for (auto entry = first; entry != last; ++entry) found.push_back(entry->piece);
  }
  std::ranges::sort(found);
  found.erase(std::unique(found.begin(), found.end()), found.end());
  return found;
}

}  // namespace loopwright::road
