#include <catch2/catch.hpp>

#include "trace/progress.hpp"

namespace loopwright::trace {
namespace {

std::vector<Block> points(const std::vector<double>& metres) {
  std::vector<Block> all;
  for (std::size_t k = 0; k < metres.size(); ++k)
    all.push_back({metres[k], static_cast<double>(k), static_cast<double>(k)});
  return all;
}

// The example of R's isoreg help page, stats package: isoreg(c(1,0,4,3,3,5,4,2,0)) fits
// 0.5 0.5 3 3 3 3 3 3 3. From memory of that page.
TEST_CASE("the best rising line pools what falls", "[trace]") {
  CHECK(rising({}).empty());
  const auto blocks = rising(points({1, 0, 4, 3, 3, 5, 4, 2, 0}));
  REQUIRE(blocks.size() == 2);
  CHECK(blocks[0].at_m == Approx(0.5));
  CHECK(blocks[0].from_s == 0);
  CHECK(blocks[0].to_s == 1);
  CHECK(blocks[1].at_m == Approx(3));
  CHECK(blocks[1].from_s == 2);
  CHECK(blocks[1].to_s == 8);
}

TEST_CASE("a car stands where it moves no farther than the noise for long enough", "[trace]") {
  const auto blocks = rising(points({0, 10, 20, 21, 22, 22, 23, 33, 43}));
  CHECK(standing(blocks, 5, 4).empty());
  const auto stops = standing(blocks, 4, 4);
  REQUIRE(stops.size() == 1);
  CHECK(stops[0].from_s == 2);
  CHECK(stops[0].to_s == 6);
}

}  // namespace
}  // namespace loopwright::trace
