// Method: what notes say is there goes into cells a little larger than the reach, by kind and first
// point; each "not" looks into the cells around its own ends, so that many notes cost no more than
// their number.
#include "file/contradictions.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace loopwright::file {
namespace {

using road::Note;

constexpr double reach_m = 10;
constexpr std::int32_t cell_e7 = 5000;  // 55 m of latitude, 20 m of longitude at 69 degrees north
constexpr double most_turned_deg = 60;  // as a heading is read: DEVELOPERS.md, notes file

using Cell = std::tuple<road::Kind, std::int32_t, std::int32_t>;

std::int32_t cell_of(std::int32_t e7) {
  return static_cast<std::int32_t>(std::floor(static_cast<double>(e7) / cell_e7));
}

bool lies_along(std::span<const Point> line, std::span<const Point> other) {
  return std::ranges::all_of(
      line, [&](const Point& at) { return nearest_on_line(other, at).off_m <= reach_m; });
}

/// Both along only, and driven the other way.
bool opposed(const Note& a, const Note& b) {
  if (a.heading_deg && b.heading_deg)
    return std::abs(heading_change_deg(*a.heading_deg, *b.heading_deg)) > most_turned_deg;
  if (a.line.size() < 2 || a.way != road::NoteWay::along || b.way != road::NoteWay::along)
    return false;
  return nearest_on_line(b.line, a.line.back()).along_m <
         nearest_on_line(b.line, a.line.front()).along_m;
}

bool of_one_place(const Note& a, const Note& b) {
  if ((a.line.size() == 1) != (b.line.size() == 1) || opposed(a, b)) return false;
  return lies_along(a.line, b.line) && lies_along(b.line, a.line);
}

}  // namespace

std::optional<Contradiction> contradiction_in(std::span<const Note> notes) {
  std::multimap<Cell, std::size_t> there;
  for (std::size_t k = 0; k < notes.size(); ++k) {
    const auto kind = practice_of(notes[k]);
    if (!kind || notes[k].says == road::NoteKind::not_so) continue;
    const Point& at = notes[k].line.front();
    there.emplace(Cell{*kind, cell_of(at.lat_e7), cell_of(at.lon_e7)}, k);
  }
  for (std::size_t k = 0; k < notes.size(); ++k) {
    if (notes[k].says != road::NoteKind::not_so || !notes[k].kind) continue;
    for (const Point& end : {notes[k].line.front(), notes[k].line.back()})
      for (int north = -1; north <= 1; ++north)
        for (int east = -1; east <= 1; ++east) {
          const auto [begin, stop] = there.equal_range(
              {*notes[k].kind, cell_of(end.lat_e7) + north, cell_of(end.lon_e7) + east});
          for (auto it = begin; it != stop; ++it)
            if (of_one_place(notes[k], notes[it->second]))
              return Contradiction{it->second, k, *notes[k].kind};
        }
  }
  return std::nullopt;
}

std::string words_for(const Contradiction& found) {
  return "note " + std::to_string(found.not_there + 1) + " says there is no " +
         std::string(road::name(found.kind)) + " where note " + std::to_string(found.there + 1) +
         " says there is one; take out the one that isn't so";
}

}  // namespace loopwright::file
