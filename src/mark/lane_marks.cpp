// How many lanes a stretch has in its direction, and the arrows on them, for whoever drives it.
//
// 1. The arrows are turn:lanes of the direction (lane_counts.cpp) as mapped, spaces taken out.
// 2. The number is that of the lanes cars may use; where tags contradict each other there is none.
// A stretch of which neither is mapped has no row: nothing is made up from the road's class.
// Sources: OSM wiki, pages Key:lanes, Key:turn.
#include "lane_counts.hpp"
#include "loopwright/mark/rules.hpp"

namespace loopwright::mark {
namespace {

std::string without_spaces(std::string_view text) {
  std::string kept;
  for (const char c : text)
    if (c != ' ') kept += c;
  return kept;
}

/// The value of "turn:lanes:forward=left|through".
std::string_view value_of(std::string_view tag) {
  return tag.substr(tag.find('=') + 1);
}

}  // namespace

void mark_lane_marks(Draft& draft) {
  constexpr int most_lanes = 255;  // what a row holds; more is a slip of the pen
  for (std::size_t row = 0; row < draft.tables.stretches.size(); ++row) {
    if ((draft.tables.stretches[row].flags & road::stretch_flag::drivable) == 0) continue;
    const StretchId stretch{row};
    const auto arrows = lane_arrows(draft, stretch);
    const auto lanes = car_lanes(draft, stretch);
    const bool counted = lanes && lanes->count <= most_lanes;
    if (!arrows && !counted) continue;
    road::LaneMarks marks;
    marks.stretch = stretch;
    marks.arrows = draft.text(arrows ? without_spaces(value_of(arrows->tag)) : std::string());
    marks.source = draft.text(arrows ? arrows->tag : lanes->tag);
    if (counted) marks.count = static_cast<std::uint8_t>(lanes->count);
    marks.certain = counted && lanes->certain ? 1 : 0;
    draft.tables.lane_marks.push_back(marks);
  }
  draft.report.count("stretches with lanes mapped",
                     static_cast<std::int64_t>(draft.tables.lane_marks.size()));
}

}  // namespace loopwright::mark
