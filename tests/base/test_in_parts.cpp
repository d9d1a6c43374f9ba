#include <catch2/catch.hpp>
#include <mutex>
#include <numeric>
#include <stdexcept>
#include <vector>

#include "loopwright/base/at_once.hpp"
#include "loopwright/base/in_parts.hpp"

namespace loopwright {
namespace {

TEST_CASE("no rows, no work", "[base]") {
  in_parts(0, [](std::size_t, std::size_t) { FAIL("called"); });
  each_in_order(
      0, [](std::size_t row) { return row; }, [](std::size_t, std::size_t) { FAIL("called"); });
}

TEST_CASE("each row is worked on once", "[base]") {
  for (const std::size_t count : {1U, 255U, 256U, 257U, 10'000U}) {
    std::vector<int> times(count, 0);
    in_parts(count, [&](std::size_t first, std::size_t end) {
      for (std::size_t row = first; row < end; ++row) ++times[row];
    });
    CHECK(times == std::vector<int>(count, 1));
  }
}

TEST_CASE("results are taken in order, whichever thread made them", "[base]") {
  constexpr std::size_t count = 100'000;
  std::vector<std::size_t> taken;
  each_in_order(
      count, [](std::size_t row) { return std::vector<std::size_t>(row % 3, row); },
      [&](std::size_t row, std::vector<std::size_t>&& made) {
        CHECK(made == std::vector<std::size_t>(row % 3, row));
        taken.push_back(row);
      });
  std::vector<std::size_t> all(count);
  std::iota(all.begin(), all.end(), std::size_t{0});
  CHECK(taken == all);
}

TEST_CASE("what the work throws comes out when both threads are done", "[base]") {
  std::mutex one_at_a_time;
  std::size_t rows = 0;
  const auto work = [&](std::size_t first, std::size_t end) {
    const std::lock_guard lock(one_at_a_time);
    rows += end - first;
    if (first == 512) throw std::runtime_error("a bad row");
  };
  CHECK_THROWS_WITH(in_parts(100'000, work), "a bad row");
  CHECK(rows >= 256);
}

TEST_CASE("two pieces of work are both done, whatever one of them throws", "[base]") {
  int first = 0, second = 0;
  at_once([&] { first = 1; }, [&] { second = 2; });
  CHECK(first == 1);
  CHECK(second == 2);
  CHECK_THROWS_WITH(at_once([] { throw std::runtime_error("the first"); }, [&] { second = 3; }),
                    "the first");
  CHECK(second == 3);
  CHECK_THROWS_WITH(at_once([&] { first = 4; }, [] { throw std::runtime_error("the second"); }),
                    "the second");
  CHECK(first == 4);
}

}  // namespace
}  // namespace loopwright
