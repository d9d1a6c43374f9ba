// open_area AREA: the median time in milliseconds of opening an area file, for tools/bench.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <exception>
#include <vector>

#include "loopwright/store/area.hpp"

int main(int argc, char** argv) {
  using Clock = std::chrono::steady_clock;
  if (argc != 2) return 2;
  try {
    std::vector<double> times_ms;
    for (int run = 0; run < 21; ++run) {
      const auto before = Clock::now();
      const loopwright::store::Area area = loopwright::store::open_area(argv[1]);
      times_ms.push_back(std::chrono::duration<double, std::milli>(Clock::now() - before).count());
      if (area.roads().pieces.empty()) return 1;
    }
    std::nth_element(times_ms.begin(), times_ms.begin() + 10, times_ms.end());
    std::printf("%.3f\n", times_ms[10]);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 1;
  }
  return 0;
}
