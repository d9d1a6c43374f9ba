// When a car was how far along its run, and where it stood.
//
// Rules: pure; metres never fall as time goes on.
#pragma once

#include <span>
#include <vector>

#include "loopwright/trace/match.hpp"
#include "trace/legs.hpp"

namespace loopwright::trace {

/// At one place from the one moment to the other.
struct Block {
  double at_m = 0;
  double from_s = 0, to_s = 0;
};

/// The best rising line through points that scatter (least squares): equal neighbours are one block.
/// Source: pool adjacent violators, R. E. Barlow et al., Statistical Inference under Order Restrictions, 1972.
std::vector<Block> rising(std::span<const Block> points);

class Progress {
 public:
  /// fixes: of the whole drive; way: of one run of it.
  Progress(std::span<const Fix> fixes, const Way& way, std::span<const Point> line,
           const Noise& noise);
  /// When so far along the run was left; what lies outside is the run's first or last moment.
  [[nodiscard]] double left_s(double metres) const;
  [[nodiscard]] std::span<const Block> blocks() const { return blocks_; }

 private:
  std::vector<Block> blocks_;
};

/// Where the car stood for at least so long, moving no farther than tolerance_m.
std::vector<Block> standing(std::span<const Block> blocks, double least_s, double tolerance_m);

}  // namespace loopwright::trace
