// Method:
// 1. A number with nothing behind it is bare (km/h by the documentation; the caller knows whether
//    that can be meant). With mph, km/h, kmh or kph behind it, with or without a space and in any
//    case, it has that unit. Fractions are rounded.
// 2. none, walk, national, signals and variable are words of their own.
// 3. <country>:<zone>: the zone is looked up in a table; a zone that ends in a number (zone20,
//    zone:30, 20) is that number in the unit of the country.
// Sources: OSM wiki, pages Key:maxspeed, Key:maxspeed:type, Key:zone:maxspeed; the Irish names from
// memory.
#include "limit_texts.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "loopwright/base/text.hpp"

namespace loopwright::mark {
namespace {

using road::LimitRule;
using What = LimitText::What;

constexpr std::array<std::pair<std::string_view, LimitRule>, 16> zones{
    {{"nsl_single", LimitRule::national_single},
     {"nsl_dual", LimitRule::national_dual},
     {"nsl_restricted", LimitRule::restricted},
     {"motorway", LimitRule::motorway},
     {"urban", LimitRule::urban},
     {"rural", LimitRule::rural},
     {"trunk", LimitRule::rural},     // a road outside towns in most countries that use it
     {"regional", LimitRule::rural},  // Ireland's R roads
     {"local", LimitRule::rural_minor},
     {"living_street", LimitRule::walk},
     {"pedestrian_zone", LimitRule::walk},
     {"walk", LimitRule::walk},
     {"none", LimitRule::no_limit},
     {"single_carriageway", LimitRule::national_single},
     {"dual_carriageway", LimitRule::national_dual},
     {"restricted", LimitRule::restricted}}};

constexpr int fastest = 300;  // a larger number is a slip; ours

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}
bool is_upper(char c) {
  return c >= 'A' && c <= 'Z';
}

LimitText of_rule(LimitRule rule) {
  return {What::rule, rule, 0, SpeedUnit::kmh};
}

std::optional<SpeedUnit> read_unit(std::string_view text) {
  const std::string unit = lower(text);
  if (unit == "mph") return SpeedUnit::mph;
  if (unit == "km/h" || unit == "kmh" || unit == "kph") return SpeedUnit::kmh;
  return std::nullopt;
}

LimitText read_with_number(std::string_view text) {
  const std::size_t end = std::min(text.find_first_not_of("0123456789."), text.size());
  const auto number = read_number(text.substr(0, end));
  if (!number || *number < 1 || *number > fastest) return {};
  const int value = static_cast<int>(std::lround(*number));
  const std::string_view rest = trim(text.substr(end));
  if (rest.empty()) return {What::bare_number, LimitRule::signed_value, value, SpeedUnit::kmh};
  const auto unit = read_unit(rest);
  return unit ? LimitText{What::number, LimitRule::signed_value, value, *unit} : LimitText{};
}

/// "zone20", "zone:30", "20": a zone with a number of its own.
LimitText read_numbered_zone(std::string_view country, std::string_view zone) {
  const std::size_t at = zone.find_first_of("0123456789");
  const auto value = at == std::string_view::npos ? std::nullopt : read_int(zone.substr(at));
  if (!value || *value < 1 || *value > fastest) return {};
  const SpeedUnit unit = country == "GB" ? SpeedUnit::mph : SpeedUnit::kmh;
  const bool twenty = unit == SpeedUnit::mph && *value == 20;
  return {What::rule, twenty ? LimitRule::zone_twenty : LimitRule::zone_other, *value, unit};
}

LimitText read_zone(std::string_view text) {
  const std::string_view country = text.substr(0, 2);
  const std::string zone = lower(text.substr(text.find(':') + 1));
  if (zone == "national") {
    return country == "IE" ? of_rule(LimitRule::national_single)
                           : LimitText{What::national, LimitRule::unknown, 0, SpeedUnit::kmh};
  }
  const auto found = std::ranges::find(zones, zone, &std::pair<std::string_view, LimitRule>::first);
  return found != zones.end() ? of_rule(found->second) : read_numbered_zone(country, zone);
}

}  // namespace

bool names_zone(std::string_view text) {
  const std::size_t colon = text.find(':');
  if (colon == std::string_view::npos || colon < 2 || colon + 1 == text.size()) return false;
  const bool region = colon > 2 && text[2] == '-';
  return is_upper(text[0]) && is_upper(text[1]) && (colon == 2 || region);
}

LimitText read_limit(std::string_view text) {
  text = trim(text);
  if (text.empty()) return {};
  if (is_digit(text[0])) return read_with_number(text);
  if (names_zone(text)) return read_zone(text);
  if (text == "none") return of_rule(LimitRule::no_limit);
  if (text == "walk") return of_rule(LimitRule::walk);
  if (text == "national") return {What::national, LimitRule::unknown, 0, SpeedUnit::kmh};
  if (text == "signals" || text == "variable") {
    return {What::varies, LimitRule::unknown, 0, SpeedUnit::kmh};
  }
  return {};
}

}  // namespace loopwright::mark
