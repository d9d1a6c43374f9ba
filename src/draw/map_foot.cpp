#include "draw/map_foot.hpp"

#include <span>

#include "draw/way_ink.hpp"

namespace loopwright::draw {
namespace {

// Metres of a yard and a mile: by definition 0.9144 m and 1760 yards.
constexpr double yard = 0.9144, mile = 1760 * yard;
constexpr ScaleLength of_miles[] = {
    {50 * yard, "50 yd"},  {100 * yard, "100 yd"}, {200 * yard, "200 yd"},
    {mile / 4, "¼ mile"},  {mile / 2, "½ mile"},   {mile, "1 mile"},
    {2 * mile, "2 miles"}, {5 * mile, "5 miles"},  {10 * mile, "10 miles"}};
constexpr ScaleLength of_kilometres[] = {{50, "50 m"},   {100, "100 m"},    {200, "200 m"},
                                         {500, "500 m"}, {1000, "1 km"},    {2000, "2 km"},
                                         {5000, "5 km"}, {10'000, "10 km"}, {20'000, "20 km"}};

constexpr Type words{9};

void draw_scale(Picture& page, const MapFrame& frame, SpeedUnit unit, Spot at) {
  const ScaleLength length = scale_length(frame, unit, page.width / 4);
  const double mm = length.metres * frame.mm_per_m;
  page.add(Stroke{{at, at + Spot{mm, 0}}, 0.5});
  for (const double x : {0.0, mm}) page.add(Stroke{{at + Spot{x, -1.1}, at + Spot{x, 1.1}}, 0.5});
  page.add(Label{at + Spot{mm + 2, -2}, length.words, words});
}

/// The credit, and the numbers without room as far as the line is long.
std::string last_line(const FootWords& said, double width) {
  if (said.no_room.empty()) return said.credit;
  const std::string begin = said.credit.empty() ? "" : said.credit + "; ";
  std::string text = begin + "no room for " + said.no_room;
  while (extent_of(Label{{}, text, words}).width > width) {
    const std::size_t comma = text.rfind(',');
    if (comma == std::string::npos || comma < begin.size())
      return begin + "some numbers have no room";
    text = text.substr(0, comma) + " …";
  }
  return text;
}

/// How the way shows its direction.
void draw_key(Picture& page, Spot at) {
  constexpr double sample = 17;
  draw_swelling(page, at, sample);
  page.add(Label{at + Spot{sample + 2.5, -2}, "swells the way you drive", words});
}

void draw_north(Picture& page, Spot foot) {
  page.add(Stroke{{foot, foot + Spot{0, -7.5}}, 0.5});
  page.add(Label{foot + Spot{-2, -6}, "N", {9, true, Ink::black, Align::right}});
}

}  // namespace

ScaleLength scale_length(const MapFrame& frame, SpeedUnit unit, double most_mm) {
  const std::span<const ScaleLength> lengths =
      unit == SpeedUnit::mph ? std::span<const ScaleLength>(of_miles) : of_kilometres;
  ScaleLength best = lengths.front();
  for (const ScaleLength& length : lengths)
    if (length.metres * frame.mm_per_m <= most_mm) best = length;
  return best;
}

void draw_foot(Picture& page, const MapFrame& frame, SpeedUnit unit, const FootWords& said) {
  const double top = frame.map.y + frame.map.height;
  page.add(Stroke{{{0, top}, {page.width, top}}, 0.3, Ink::grey});
  draw_scale(page, frame, unit, {1, top + 6.5});
  draw_key(page, {page.width * 0.42, top + 6.5});
  draw_north(page, {page.width - 1, top + 10});
  const std::string line = last_line(said, page.width - 2);
  if (!line.empty()) page.add(Label{{0.7, page.height - 4.2}, line, {9, false, Ink::grey}});
}

}  // namespace loopwright::draw
