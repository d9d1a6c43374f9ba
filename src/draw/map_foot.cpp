#include "draw/map_foot.hpp"

#include <span>

#include "draw/way_ink.hpp"

namespace loopwright::draw {
namespace {

// Metres of a yard and a mile: by definition 0.9144 m and 1760 yards.
constexpr double yard = 0.9144, mile = 1760 * yard;
constexpr ScaleLength of_miles[] = {
    {10 * yard, "map.yards", 10},   {20 * yard, "map.yards", 20},   {50 * yard, "map.yards", 50},
    {100 * yard, "map.yards", 100}, {200 * yard, "map.yards", 200}, {mile / 4, "map.quarter_mile"},
    {mile / 2, "map.half_mile"},    {mile, "map.miles", 1},         {2 * mile, "map.miles", 2},
    {5 * mile, "map.miles", 5},     {10 * mile, "map.miles", 10}};
constexpr ScaleLength of_kilometres[] = {
    {10, "map.metres", 10},         {20, "map.metres", 20},        {50, "map.metres", 50},
    {100, "map.metres", 100},       {200, "map.metres", 200},      {500, "map.metres", 500},
    {1000, "map.kilometres", 1},    {2000, "map.kilometres", 2},   {5000, "map.kilometres", 5},
    {10'000, "map.kilometres", 10}, {20'000, "map.kilometres", 20}};

constexpr Type type{9};

using say::Words;

void draw_scale(Picture& page, const MapFrame& frame, SpeedUnit unit, const Words& words, Spot at) {
  const ScaleLength length = scale_length(frame, unit, page.width / 4);
  const double mm = length.metres * frame.mm_per_m;
  page.add(Stroke{{at, at + Spot{mm, 0}}, 0.5});
  for (const double x : {0.0, mm}) page.add(Stroke{{at + Spot{x, -1.1}, at + Spot{x, 1.1}}, 0.5});
  page.add(Label{at + Spot{mm + 2, -2}, words.count(length.key, length.count), type});
}

/// The credit, where the start is named, and the numbers without room as far as the line is long.
std::string last_line(const FootWords& said, double width) {
  std::string begin = said.credit;
  if (!said.start_part.empty())
    begin.append(begin.empty() ? "" : "; ")
        .append(said.words.fill("map.start_on", {{"part", said.start_part}}));
  if (said.no_room.empty()) return begin;
  if (!begin.empty()) begin += "; ";
  std::string numbers = said.no_room;
  const auto text = [&] { return begin + said.words.fill("map.no_room", {{"numbers", numbers}}); };
  while (extent_of(Label{{}, text(), type}).width > width) {
    const std::size_t comma = numbers.rfind(',');
    if (comma == std::string::npos) return begin + std::string(said.words.at("map.no_room_many"));
    numbers = numbers.substr(0, comma) + " …";
  }
  return text();
}

/// How the way shows its direction.
void draw_key(Picture& page, const Words& words, Spot at) {
  constexpr double sample = 17;
  draw_swelling(page, at, sample);
  page.add(Label{at + Spot{sample + 2.5, -2}, std::string(words.at("map.key")), type});
}

void draw_north(Picture& page, const Words& words, Spot foot) {
  page.add(Stroke{{foot, foot + Spot{0, -7.5}}, 0.5});
  page.add(Label{foot + Spot{-2, -6},
                 std::string(words.at("map.north")),
                 {9, true, Ink::black, Align::right}});
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
  draw_scale(page, frame, unit, said.words, {1, top + 6.5});
  draw_key(page, said.words, {page.width * 0.42, top + 6.5});
  draw_north(page, said.words, {page.width - 1, top + 10});
  const std::string line = last_line(said, page.width - 2);
  if (!line.empty()) page.add(Label{{0.7, page.height - 4.2}, line, {9, false, Ink::grey}});
}

}  // namespace loopwright::draw
