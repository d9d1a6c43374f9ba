// Method:
// 1. Where signs use miles: yards to the nearest 50; near a quarter of a mile, and from half a mile
//    on, quarter miles. 2. Elsewhere: metres to the nearest 50, from a kilometre on tenths of one.
// Source: TRADE practice for route cards: distances rounded to 50 m; British drivers think in miles
// and yards, and signs give both (Traffic Signs Manual). 1 mile = 1760 yd = 1609.344 m.
#include <array>
#include <cassert>
#include <cmath>

#include "loopwright/say/say.hpp"
#include "loopwright/say/words.hpp"

namespace loopwright::say {
namespace {

constexpr double metres_per_yard = 0.9144;
constexpr long yards_per_quarter_mile = 440;

std::string miles(const Words& words, long quarters) {
  constexpr std::array<std::string_view, 4> fractions{"", "¼", "½", "¾"};
  const long whole = quarters / 4;
  std::string number = whole == 0 ? std::string() : std::to_string(whole);
  number.append(fractions.at(static_cast<std::size_t>(quarters % 4)));
  return words.fill(quarters <= 4 ? "distance.mile" : "distance.miles", {{"n", number}});
}

std::string in_miles_and_yards(const Words& words, double metres) {
  const double yards = metres / metres_per_yard;
  const long fifties = std::lround(yards / 50);
  if (fifties == 0) return std::string(words.at("distance.short_yd"));
  const long quarters = std::lround(yards / static_cast<double>(yards_per_quarter_mile));
  // 450 yd is a quarter of a mile, and 800 is nearly half of one.
  if (fifties == 9 || fifties >= 16) return miles(words, quarters);
  return words.fill("distance.yd", {{"n", std::to_string(50 * fifties)}});
}

std::string in_metres(const Words& words, double metres) {
  const long fifties = std::lround(metres / 50);
  if (fifties == 0) return std::string(words.at("distance.short_m"));
  if (fifties < 20) return words.fill("distance.m", {{"n", std::to_string(50 * fifties)}});
  const long tenths = std::lround(metres / 100);
  std::string number = std::to_string(tenths / 10);
  if (tenths % 10 != 0) number += '.' + std::to_string(tenths % 10);
  return words.fill("distance.km", {{"n", number}});
}

}  // namespace

std::string say_distance(double metres, SpeedUnit unit) {
  return say_distance(metres, unit, Words());
}

std::string say_distance(double metres, SpeedUnit unit, const Words& words) {
  assert(metres >= 0);
  return unit == SpeedUnit::mph ? in_miles_and_yards(words, metres) : in_metres(words, metres);
}

}  // namespace loopwright::say
