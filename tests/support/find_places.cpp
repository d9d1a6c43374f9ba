// loopwright_places AREA: looks up each line of standard input, so that other programs can check what
// comes of it. A line out for each line in:
//
//   MICROSECONDS MEANT [ LAT,LON NAME ]…   tab between fields; degrees in units of 1e-7; the best
//                                          first, three at most unless more are meant
#include <chrono>
#include <cstdio>
#include <exception>
#include <iostream>
#include <stdexcept>
#include <string>

#include "loopwright/place/place.hpp"
#include "loopwright/store/area.hpp"

namespace loopwright::test {
namespace {

constexpr std::size_t most_printed = 3;

int look_up(const char* file) {
  using Clock = std::chrono::steady_clock;
  const store::Area area = store::open_area(file);
  const place::Finder finder(area.roads());
  for (std::string line; std::getline(std::cin, line);) {
    const auto start = Clock::now();
    const place::Finding found = finder.find(line);
    const auto took = std::chrono::duration_cast<std::chrono::microseconds>(Clock::now() - start);
    std::printf("%lld\t%zu", static_cast<long long>(took.count()), found.meant);
    for (std::size_t i = 0; i < found.candidates.size(); ++i) {
      if (i >= most_printed && i >= found.meant) break;
      const place::Candidate& candidate = found.candidates[i];
      std::printf("\t%d,%d %s", candidate.at.lat_e7, candidate.at.lon_e7, candidate.name.c_str());
    }
    std::printf("\n");
  }
  return 0;
}

}  // namespace
}  // namespace loopwright::test

int main(int argc, char** argv) {
  try {
    if (argc != 2) throw std::runtime_error("usage: loopwright_places AREA < LINES");
    return loopwright::test::look_up(argv[1]);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "%s\n", error.what());
    return 1;
  }
}
