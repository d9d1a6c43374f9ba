// 1. "8%", "8 %", "-8.5%": so many metres up in 100 along the way. "10°": the tangent of the angle.
// 2. "up", "down": the sign, not how steep.
// 3. Anything else is not read: a bare number (nobody knows whether % or degrees), "10% up" (two
//    ways of telling the sign), "1:8", words, and more than 45 %: the steepest streets there are
//    have 35 to 38 % (from memory).
// Source: OSM wiki, page Key:incline.
#include "incline.hpp"

#include <cmath>
#include <numbers>

#include "loopwright/base/text.hpp"

namespace loopwright::mark {
namespace {

constexpr double most_percent = 45;
constexpr std::string_view degree_sign = "\u00b0";

std::optional<double> read_percent(std::string_view text) {
  if (text.ends_with('%')) return read_number(trim(text.substr(0, text.size() - 1)));
  if (!text.ends_with(degree_sign)) return std::nullopt;
  const auto degrees = read_number(trim(text.substr(0, text.size() - degree_sign.size())));
  if (!degrees) return std::nullopt;
  return 100 * std::tan(*degrees * std::numbers::pi / 180);
}

int sign_of(double value) {
  return value > 0 ? 1 : value < 0 ? -1 : 0;
}

}  // namespace

std::optional<Incline> read_incline(std::string_view text) {
  text = trim(text);
  if (text == "up") return Incline{1, std::nullopt};
  if (text == "down") return Incline{-1, std::nullopt};
  const auto percent = read_percent(text);
  if (!percent || !(std::abs(*percent) <= most_percent)) return std::nullopt;
  return Incline{sign_of(*percent), percent};
}

}  // namespace loopwright::mark
