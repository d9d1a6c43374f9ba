// What a course came to: lessons met and not, by reason, and the time of searching.
#pragma once

#include <cstdint>
#include <map>
#include <string>

#include "command/next_plan.hpp"

namespace loopwright::test {

class CourseTally {
 public:
  void add(const command::NextPlan& plan, double took_s);
  void add_not_driven() { ++not_driven_; }
  /// On standard output.
  void tell() const;

 private:
  int lessons_ = 0, not_driven_ = 0, met_ = 0, passed_over_in_ = 0;
  std::int64_t claims_ = 0;
  double searched_s_ = 0, longest_s_ = 0;
  std::map<std::string, int> short_of_, passed_over_;
};

}  // namespace loopwright::test
