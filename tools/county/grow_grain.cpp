// Value noise: a chance number at each corner of a square net, and a smooth passage between corners.
#include <cmath>

#include "county/grow_fill.hpp"

namespace loopwright::county {
namespace {

constexpr double sway_cell_m = 260;

double lattice(long x, long y, std::uint64_t seed) {
  Dice dice(seed ^ (static_cast<std::uint64_t>(x) * 0x9e3779b97f4a7c15ULL) ^
            (static_cast<std::uint64_t>(y) * 0xc2b2ae3d27d4eb4fULL));
  dice.next();
  return 2 * dice.share() - 1;
}

double smooth(double t) {
  return t * t * (3 - 2 * t);
}

double noise(double x, double y, std::uint64_t seed) {
  const double fx = std::floor(x);
  const double fy = std::floor(y);
  const long ix = static_cast<long>(fx);
  const long iy = static_cast<long>(fy);
  const double tx = smooth(x - fx);
  const double ty = smooth(y - fy);
  const double low = lattice(ix, iy, seed) * (1 - tx) + lattice(ix + 1, iy, seed) * tx;
  const double high = lattice(ix, iy + 1, seed) * (1 - tx) + lattice(ix + 1, iy + 1, seed) * tx;
  return low * (1 - ty) + high * ty;
}

}  // namespace

std::function<double(Spot)> grain_of(double base, double sway, std::uint64_t seed) {
  return [=](Spot at) {
    return base + sway * noise(at.x() / sway_cell_m, at.y() / sway_cell_m, seed);
  };
}

double longest_side(const std::vector<Spot>& outline) {
  double best = -1;
  double angle = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Spot a = outline[i];
    const Spot b = outline[(i + 1) % outline.size()];
    if (apart(a, b) > best) {
      best = apart(a, b);
      angle = angle_of(a, b);
    }
  }
  return angle;
}

}  // namespace loopwright::county
