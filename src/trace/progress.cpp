// Method:
//   1. Every fix, also those the chain left out, is put on the part of the line between the two chosen places around it,
//      a little beyond each.
//   2. A line that never falls is laid through these (pool adjacent violators): a car that stands makes a flat.
#include "trace/progress.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace loopwright::trace {
namespace {

/// A line with how far along it each of its points is.
class Ruler {
 public:
  explicit Ruler(std::span<const Point> line) : line_(line), at_m_(line.size(), 0) {
    for (std::size_t i = 1; i < line.size(); ++i)
      at_m_[i] = at_m_[i - 1] + distance_m(line[i - 1], line[i]);
  }
  /// Where on the part between the two a point is nearest.
  [[nodiscard]] double nearest_m(Point at, double from_m, double to_m) const {
    const auto after = std::upper_bound(at_m_.begin(), at_m_.end(), from_m);
    const auto first =
        static_cast<std::size_t>(std::max<std::ptrdiff_t>(after - at_m_.begin() - 1, 0));
    const auto behind = std::lower_bound(at_m_.begin(), at_m_.end(), to_m);
    const std::size_t last =
        std::min(static_cast<std::size_t>(behind - at_m_.begin()), line_.size() - 1);
    const Foot foot = nearest_on_line(line_.subspan(first, std::max(last, first) - first + 1), at);
    return std::clamp(at_m_[first] + foot.along_m, from_m, std::max(from_m, to_m));
  }
  [[nodiscard]] double whole_m() const { return at_m_.back(); }

 private:
  std::span<const Point> line_;
  std::vector<double> at_m_;
};

double at_time(const Block& a, const Block& b, double metres) {
  if (b.at_m <= a.at_m) return b.from_s;
  return a.to_s + (b.from_s - a.to_s) * (metres - a.at_m) / (b.at_m - a.at_m);
}

}  // namespace

std::vector<Block> rising(std::span<const Block> points) {
  std::vector<Block> blocks;
  std::vector<double> weights;
  for (const Block& point : points) {
    blocks.push_back(point);
    weights.push_back(1);
    while (blocks.size() > 1 && blocks[blocks.size() - 2].at_m >= blocks.back().at_m) {
      const Block last = blocks.back();
      const double weight = weights.back();
      blocks.pop_back();
      weights.pop_back();
      Block& into = blocks.back();
      into.at_m = (into.at_m * weights.back() + last.at_m * weight) / (weights.back() + weight);
      into.to_s = last.to_s;
      weights.back() += weight;
    }
  }
  return blocks;
}

Progress::Progress(std::span<const Fix> fixes, const Way& way, std::span<const Point> line,
                   const Noise& noise) {
  assert(!way.reached.empty() && !line.empty());
  const Ruler ruler(line);
  const double beyond_m = 2 * noise.sigma_m;
  std::vector<Block> points;
  for (std::size_t k = 0; k < way.reached.size(); ++k) {
    const Reached& here = way.reached[k];
    const Reached& next = way.reached[std::min(k + 1, way.reached.size() - 1)];
    const double from_m = std::max(here.progress_m - beyond_m, 0.0);
    const double to_m = std::min(next.progress_m + beyond_m, ruler.whole_m());
    const std::size_t end = k + 1 < way.reached.size() ? next.fix : way.end_row;
    for (std::size_t fix = here.fix; fix < end; ++fix)
      points.push_back(
          {ruler.nearest_m(fixes[fix].at, from_m, to_m), fixes[fix].unix_s, fixes[fix].unix_s});
  }
  blocks_ = rising(points);
}

double Progress::left_s(double metres) const {
  const auto next = std::upper_bound(blocks_.begin(), blocks_.end(), metres,
                                     [](double m, const Block& block) { return m < block.at_m; });
  if (next == blocks_.begin()) return blocks_.front().from_s;
  if (next == blocks_.end()) return blocks_.back().to_s;
  return at_time(*(next - 1), *next, metres);
}

std::vector<Block> standing(std::span<const Block> blocks, double least_s, double tolerance_m) {
  std::vector<Block> stops;
  for (std::size_t first = 0; first < blocks.size();) {
    std::size_t last = first;
    while (last + 1 < blocks.size() && blocks[last + 1].at_m - blocks[first].at_m <= tolerance_m)
      ++last;
    if (blocks[last].to_s - blocks[first].from_s < least_s) {
      ++first;
      continue;
    }
    // The middle one by time says where.
    const double half_s = (blocks[first].from_s + blocks[last].to_s) / 2;
    std::size_t middle = first;
    while (middle < last && blocks[middle].to_s < half_s) ++middle;
    stops.push_back({blocks[middle].at_m, blocks[first].from_s, blocks[last].to_s});
    first = last + 1;
  }
  return stops;
}

}  // namespace loopwright::trace
