// Seconds for a million answers of one compiled text of hours, and for a million conversions of a
// moment to local time by the C library, which anyone who asks hours needs as well: two numbers.
//
//   TZ=Europe/London hours_rate
//
// Alternating rounds of both, medians.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <ctime>
#include <vector>

#include "loopwright/hours/hours.hpp"

namespace {

using namespace loopwright;

constexpr int rounds = 7, asked = 1'000'000;
constexpr std::int64_t from_2026 = 1'767'225'600, step_s = 1'861;

template <class Ask>
double seconds_of(Ask ask) {
  const auto before = std::chrono::steady_clock::now();
  for (int k = 0; k < asked; ++k) ask(from_2026 + k % 17'000 * step_s);
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - before).count();
}

double median(std::vector<double> times) {
  std::ranges::nth_element(times, times.begin() + rounds / 2);
  return times[rounds / 2];
}

}  // namespace

int main() {
  const auto hours = hours::read_hours("Mo-Fr 07:00-10:00,16:00-19:00; Sa 08:00-12:00; PH off");
  const hours::Setting setting("GB-ENG", "Europe/London", std::nullopt);
  std::vector<double> answers, conversions;
  long kept = 0;  // so that nothing is left out as unused
  for (int round = 0; round < rounds; ++round) {
    answers.push_back(seconds_of([&](std::int64_t at) {
      kept += hours.at(Instant{at, 0}, setting).in_force == hours::Tri::yes;
    }));
    conversions.push_back(seconds_of([&](std::int64_t at) {
      std::tm local{};
      const std::time_t time = at;
      kept += localtime_r(&time, &local) != nullptr && local.tm_hour == 8;
    }));
  }
  std::printf("%.6f %.6f\n", median(answers), median(conversions));
  return kept > 0 ? 0 : 1;
}
