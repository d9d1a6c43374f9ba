#include "course/tally.hpp"

#include <algorithm>
#include <cstdio>

namespace loopwright::test {
namespace {

/// Every number as N, so that like reasons count together.
std::string like(const std::string& why) {
  std::string text;
  for (const char letter : why) {
    const bool is_digit = letter >= '0' && letter <= '9';
    if (!is_digit || text.empty() || text.back() != 'N') text += is_digit ? 'N' : letter;
  }
  return text;
}

}  // namespace

void CourseTally::add(const command::NextPlan& plan, double took_s) {
  ++lessons_;
  claims_ += plan.found.claims;
  searched_s_ += took_s;
  longest_s_ = std::max(longest_s_, took_s);
  passed_over_in_ += plan.passed_over.empty() ? 0 : 1;
  for (const std::string& over : plan.passed_over) ++passed_over_[like(over)];
  const wish::Answer& answer = plan.found.answer;
  if (!answer.shortfall) {
    ++met_;
    return;
  }
  bool any = false;
  if (!answer.loops.empty())
    for (const wish::Met& met : answer.loops.front().met) {
      if (met.got >= met.want.count.value_or(0)) continue;
      any = true;
      ++short_of_[std::string(road::name(met.want.kind)) + (met.got == 0 ? ", not once" : "")];
    }
  if (any) return;
  ++short_of_[answer.shortfall->why.empty() ? "a stop has no place" : like(answer.shortfall->why)];
}

void CourseTally::tell() const {
  std::printf("%d lessons, %d of them not driven; all met %d; claims proved %lld\n", lessons_,
              not_driven_, met_, static_cast<long long>(claims_));
  for (const auto& [what, times] : short_of_)
    std::printf("  fewer than asked: %s: %d\n", what.c_str(), times);
  std::printf("  something was passed over first in %d\n", passed_over_in_);
  for (const auto& [what, times] : passed_over_)
    std::printf("  passed over: %s: %d\n", what.c_str(), times);
  std::printf("  searching: %.1f min, %.1f s a lesson, at most %.1f s\n", searched_s_ / 60,
              searched_s_ / std::max(lessons_, 1), longest_s_);
}

}  // namespace loopwright::test
