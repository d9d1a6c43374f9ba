// On which days the rules of a text speak, and what of one begins the night before, so that words can
// tell which rule takes from which.
//
// Rules: private to hours. Days are tried, not reasoned about, by the same speaks_of() as the answers:
// one week, or some years when dates are named, each day as holiday and as none. So a holiday is
// never taken for a weekday, or the other way round. Of texts too long to try, nothing is known.
#pragma once

#include <cstdint>
#include <vector>

#include "hours/rules.hpp"

namespace loopwright::hours {

class RuleDays {
 public:
  explicit RuleDays(const Rules& rules);

  /// Days tried; 0 when nothing is known.
  [[nodiscard]] std::size_t count() const { return tried_.size(); }
  [[nodiscard]] bool on(std::size_t rule, std::size_t day) const { return on_[rule][day]; }
  /// The rule speaks of the day before.
  [[nodiscard]] bool before(std::size_t rule, std::size_t day) const { return before_[rule][day]; }

  /// Both speak of some day. True when nothing is known.
  [[nodiscard]] bool share(std::size_t rule, std::size_t other) const;
  /// The other speaks of all days of the rule. False when nothing is known, or it has none.
  [[nodiscard]] bool within(std::size_t rule, std::size_t other) const;

  /// One week without holidays stands for all days.
  [[nodiscard]] bool is_week() const { return is_week_; }
  /// Monday 0
  [[nodiscard]] int weekday(std::size_t day) const { return tried_[day].weekday; }

 private:
  struct Tried {
    std::int64_t day = 0;
    std::uint32_t holidays = 0;  ///< as of Assumption
    int weekday = 0;
  };
  void add_days(std::int64_t first, std::int64_t count, bool as_holidays);

  std::vector<Tried> tried_;
  std::vector<std::vector<bool>> on_, before_;
  bool is_week_ = true;
};

}  // namespace loopwright::hours
