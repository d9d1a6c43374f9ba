#include "county/ground.hpp"

#include <cmath>

namespace loopwright::county {
namespace {

constexpr double plain_m = 20;  // ours
constexpr double shortest_m = 10;

}  // namespace

double height_m(std::span<const Hill> hills, Spot place) {
  double sum = plain_m;
  for (const Hill& hill : hills) {
    const double share = apart(hill.summit, place) / hill.reach_m;
    sum += hill.height_m * std::exp(-share * share);
  }
  return sum;
}

std::optional<std::string> incline_of(std::span<const Hill> hills, std::span<const Spot> line) {
  const double length = length_m(line);
  if (length < shortest_m) return std::nullopt;
  const double rise = height_m(hills, line.back()) - height_m(hills, line.front());
  const long percent = std::lround(100 * rise / length);
  if (percent == 0) return std::nullopt;
  return std::to_string(percent) + "%";
}

void put_inclines(Drawing& county) {
  for (Line& line : county.lines) {
    const auto tag = line.tags.find("incline");
    if (tag == line.tags.end() || tag->second != "auto") continue;
    if (auto incline = incline_of(county.hills, line.points))
      tag->second = std::move(*incline);
    else
      line.tags.erase(tag);
  }
}

}  // namespace loopwright::county
