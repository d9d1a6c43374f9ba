#include "county/grow_cut.hpp"

#include <algorithm>
#include <iterator>
#include <utility>

namespace loopwright::county {
namespace {

constexpr double least_m = 12;  // of a part, and between a cut and a Spot that is there

/// Where a line goes through an outline, in the line's order.
std::vector<Spot> meetings(const std::vector<Spot>& points, std::span<const Spot> outline) {
  std::vector<Spot> found;
  for (std::size_t i = 0; i + 1 < points.size(); ++i)
    for (std::size_t c = 0; c < outline.size(); ++c) {
      const auto place =
          meeting(points[i], points[i + 1], outline[c], outline[(c + 1) % outline.size()]);
      if (!place) continue;
      const Spot near =
          apart(points[i], *place) < apart(points[i + 1], *place) ? points[i] : points[i + 1];
      const Spot at = apart(near, *place) < 2 ? near : *place;
      if (found.empty() || apart(found.back(), at) >= least_m) found.push_back(at);
    }
  return found;
}

}  // namespace

std::size_t cut(Drawing& county, std::size_t number, Spot at) {
  Line& line = county.lines[number];
  const auto where = std::find(line.points.begin() + 1, line.points.end(), at);
  Line rest = line;
  rest.points.assign(where, line.points.end());
  rest.ends[0] = End::meets;
  line.points.erase(std::next(where), line.points.end());
  line.ends[1] = End::meets;
  county.lines.push_back(std::move(rest));
  return county.lines.size() - 1;
}

std::vector<std::size_t> cut_at(Drawing& county, std::size_t number,
                                std::span<const Spot> outline) {
  std::vector<std::size_t> parts{number};
  for (const Spot place : meetings(county.lines[number].points, outline)) {
    std::vector<Spot>& points = county.lines[parts.back()].points;
    if (apart(points.front(), place) < least_m || apart(points.back(), place) < least_m) continue;
    if (std::find(points.begin(), points.end(), place) == points.end()) {
      const std::size_t segment = nearest(points, place).segment;
      points.insert(points.begin() + static_cast<std::ptrdiff_t>(segment) + 1, place);
    }
    parts.push_back(cut(county, parts.back(), place));
  }
  return parts;
}

}  // namespace loopwright::county
