// Method: runs of ground that aren't inked yet are cut into swells of about `swell_mm`, each a row of
// short strokes a little wider than the one before.
#include "draw/way_ink.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

#include "draw/map_lines.hpp"
#include "draw/taken.hpp"

namespace loopwright::draw {
namespace {

// Ours, tried on paper: shorter swells look like beads, longer ones like one line.
constexpr double swell_mm = 9;
constexpr std::size_t strokes = 10;
constexpr double same_line = 0.35;
constexpr Type number_type{9, true};

/// True for points of a way that lie on ground driven the same way before.
std::vector<bool> driven_before(const Way& way) {
  std::vector<bool> before(way.line.size(), false);
  for_near_pairs(way.line, same_line, [&](std::size_t early, std::size_t late) {
    if (way.along[late] - way.along[early] < 4 * way_step) return;
    const Spot one = way.direction_at(way.along[early]), two = way.direction_at(way.along[late]);
    if (length_of(one - two) < 0.5) before[late] = true;
  });
  return before;
}

void add_swells(std::vector<Stroke>& ink, const Line& run, const Box& box) {
  const double length = length_of(run);
  const auto swells = static_cast<std::size_t>(std::max(1.0, std::round(length / swell_mm)));
  std::size_t i = 0;
  for (const Line& stroke : cut_evenly(run, swells * strokes)) {
    const double grown = (static_cast<double>(i++ % strokes) + 0.5) / strokes;
    for (const Line& part : clipped(stroke, box))
      ink.push_back({part, way_thin + (way_thick - way_thin) * grown, Ink::black, Cap::round});
  }
}

/// Those of one width together, which a renderer draws as one.
void add_by_width(Picture& map, std::vector<Stroke> ink) {
  std::stable_sort(ink.begin(), ink.end(),
                   [](const Stroke& a, const Stroke& b) { return a.width < b.width; });
  for (Stroke& stroke : ink) map.add(std::move(stroke));
}

}  // namespace

void draw_way(Picture& map, const Way& way, const Box& box) {
  const std::vector<bool> before = driven_before(way);
  std::vector<Stroke> ink;
  Line run;
  for (std::size_t i = 0; i < way.line.size(); ++i) {
    run.push_back(way.line[i]);
    if (!before[i] && i + 1 < way.line.size()) continue;
    if (run.size() > 1) add_swells(ink, run, box);
    run = {way.line[i]};
  }
  add_by_width(map, std::move(ink));
}

double opening_for(const std::string& text) {
  constexpr double air = 0.2, least = 2.45;
  // Figures fill the middle six tenths of their line.
  const Extent extent = extent_of(Label{{}, text, number_type});
  return std::max(least, std::hypot(extent.width, 0.6 * extent.height) / 2 + air);
}

void draw_number(Picture& map, const Way& way, double at, const std::string& text) {
  const double opening = opening_for(text);
  constexpr double straight = 0.7, shoulder = 2.2, edge = 0.5;
  const double from = std::max(at - straight, 0.0), to = std::min(at + straight, way.length());
  for (double step = 1; step > 0; step -= 0.2) {
    const double width = way_thick + (2 * opening - way_thick) * (1 - step) * (1 - step);
    map.add(Stroke{way.part(std::max(from - shoulder * step, 0.0),
                            std::min(to + shoulder * step, way.length())),
                   width, Ink::black, Cap::round});
  }
  map.add(Stroke{way.part(from, to), 2 * opening, Ink::black, Cap::round});
  map.add(Stroke{way.part(from, to), 2 * (opening - edge), Ink::paper, Cap::round});
  const Extent extent = extent_of(Label{{}, text, number_type});
  map.add(label_in({way.spot_at(at), extent.width, extent.height}, text, number_type));
}

void draw_swelling(Picture& map, Spot from, double length) {
  std::vector<Stroke> ink;
  add_swells(ink, {from, from + Spot{length, 0}}, {0, 0, map.width, map.height});
  add_by_width(map, std::move(ink));
}

void draw_bar(Picture& map, Spot at, Spot direction) {
  constexpr double half = 2.4, width = 1.3;
  const Spot across = half * left_of(direction);
  map.add(Stroke{{at - across, at + across}, width});
}

}  // namespace loopwright::draw
