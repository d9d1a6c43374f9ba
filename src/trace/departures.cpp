// Method:
//   1. best[i][j] is the most road that the plan from row i and the drive from leg j can have in common.
//   2. Read forwards it gives the common legs; what lies between two of them is a departure when it is long enough.
#include "loopwright/trace/departures.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace loopwright::trace {
namespace {

struct DrivenLeg {
  LegName name;
  StretchId stretch;
  std::int32_t cm = 0;  ///< whole numbers, so that equal sums are equal anywhere
  bool unseen = false;
};

std::vector<DrivenLeg> legs_of(const road::Roads& roads, std::span<const Run> runs) {
  std::vector<DrivenLeg> legs;
  for (std::size_t run = 0; run < runs.size(); ++run)
    for (std::size_t leg = 0; leg < runs[run].legs.size(); ++leg) {
      const Leg& one = runs[run].legs[leg];
      legs.push_back({{run, leg},
                      roads.stretch_of(one.state),
                      static_cast<std::int32_t>(std::lround(100 * (one.to_m - one.from_m))),
                      !one.seen || (run > 0 && leg == 0)});
    }
  return legs;
}

/// The table of the method's first step, a row a plan's stretch.
class Common {
 public:
  Common(std::span<const StretchId> plan, std::span<const DrivenLeg> legs)
      : columns_(legs.size() + 1), best_((plan.size() + 1) * columns_, 0) {
    for (std::size_t i = plan.size(); i-- > 0;)
      for (std::size_t j = legs.size(); j-- > 0;) {
        at(i, j) = std::max(at(i + 1, j), at(i, j + 1));
        if (plan[i] == legs[j].stretch) at(i, j) = std::max(at(i, j), with(i, j, legs[j]));
      }
  }
  std::int32_t& at(std::size_t i, std::size_t j) { return best_[i * columns_ + j]; }
  /// When both have this leg. A centimetre for each keeps one of no length from being given up for none.
  std::int32_t with(std::size_t i, std::size_t j, const DrivenLeg& leg) {
    return at(i + 1, j + 1) + leg.cm + 1;
  }

 private:
  std::size_t columns_;
  std::vector<std::int32_t> best_;
};

/// What lies between the common legs.
class Between {
 public:
  Between(const road::Roads& roads, std::span<const StretchId> plan,
          std::span<const DrivenLeg> legs)
      : roads_(roads), plan_(plan), legs_(legs) {}

  /// Up to this row of the plan and this leg nothing was in common since the last that was.
  void close(std::size_t row, std::size_t leg, bool ends) {
    Departure one;
    one.plan_first = row_, one.plan_end = row;
    if (leg_ > 0) one.left = legs_[leg_ - 1].name;
    if (!ends) one.came_back = legs_[leg].name;
    for (std::size_t i = row_; i < row; ++i) one.missed_m += roads_.piece(plan_[i]).length_m;
    for (std::size_t j = leg_; j < leg; ++j) {
      one.driven_m += legs_[j].cm / 100.0;
      one.unseen = one.unseen || legs_[j].unseen;
    }
    if (!ends) one.unseen = one.unseen || legs_[leg].unseen;
    if (std::max(one.driven_m, one.missed_m) >= least_departure_m) all.departures.push_back(one);
  }
  void in_common(std::size_t row, std::size_t leg) {
    if (row > row_ || leg > leg_) close(row, leg, false);
    all.on_plan_m += legs_[leg].cm / 100.0;
    row_ = row + 1, leg_ = leg + 1;
  }

  Comparison all;

 private:
  const road::Roads& roads_;
  std::span<const StretchId> plan_;
  std::span<const DrivenLeg> legs_;
  std::size_t row_ = 0, leg_ = 0;  ///< behind the last in common
};

}  // namespace

Comparison compared(const road::Roads& roads, std::span<const StretchId> plan,
                    std::span<const Run> runs) {
  const std::vector<DrivenLeg> legs = legs_of(roads, runs);
  Common common(plan, legs);
  Between between(roads, plan, legs);
  std::size_t i = 0, j = 0;
  while (i < plan.size() && j < legs.size()) {
    if (plan[i] == legs[j].stretch && common.at(i, j) == common.with(i, j, legs[j])) {
      between.in_common(i++, j++);
    } else if (common.at(i + 1, j) >= common.at(i, j + 1)) {
      ++i;
    } else {
      ++j;
    }
  }
  between.close(plan.size(), legs.size(), true);
  return std::move(between.all);
}

}  // namespace loopwright::trace
