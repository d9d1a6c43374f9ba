// Method:
// 1. From every row on, the shortest stretch of the minutes asked: one for each place or number that is
//    followed on that row and signed at every decision; one by directions, at most three.
// 2. Of these the best: one with something to find; signed before told; fewer directions; less of the first and last minutes of the
//    lesson; the earlier one. When none has the minutes, the longest.
#include "find/independent.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "find/decisions.hpp"

namespace loopwright::find {

namespace {

class StretchFinder {
 public:
  StretchFinder(const road::Roads& roads, const wish::Loop& loop, int minutes)
      : roads_(roads),
        loop_(loop),
        need_s_(60.0 * minutes - wish::independent_rounding_s),
        inside_(rows_inside(roads, loop)),
        decisions_(decisions_of(roads, loop)) {
    for (std::size_t row = 0; row <= loop.stretches.size(); ++row)
      driven_s_.push_back(wish::driven_before_s(loop, row));
  }

  std::optional<FoundIndependent> find() {
    const auto [first, last] =
        loop_.practice.value_or(std::array<std::size_t, 2>{0, loop_.stretches.size() - 1});
    end_ = last + 1;
    for (std::size_t row = first; row < end_; ++row) {
      if (inside_[row]) continue;
      for (const std::string_view name : followed_on(roads_, at(row))) follow(row, name);
      tell(row);
    }
    return std::move(best_);
  }

 private:
  [[nodiscard]] StretchId at(std::size_t row) const { return loop_.stretches[row].stretch; }

  [[nodiscard]] double seconds_of(std::size_t first, std::size_t last) const {
    return driven_s_[last + 1] - driven_s_[first];
  }

  [[nodiscard]] bool leads_to(StretchId stretch, std::string_view name) const {
    const auto names = followed_on(roads_, stretch);
    return std::find(names.begin(), names.end(), name) != names.end();
  }

  /// The way taken, and no other, is signed; or it is the road ahead and nothing else is signed.
  [[nodiscard]] bool is_signed(const Decision& decision, std::string_view name) const {
    if (std::any_of(decision.others.begin(), decision.others.end(),
                    [&](StretchId other) { return leads_to(other, name); }))
      return false;
    return !decision.needs_direction || leads_to(at(decision.exit), name);
  }

  /// The first decision that begins on this row or after it.
  [[nodiscard]] std::size_t decision_from(std::size_t row) const {
    const auto found =
        std::lower_bound(decisions_.begin(), decisions_.end(), row,
                         [](const Decision& one, std::size_t from) { return one.entry < from; });
    return static_cast<std::size_t>(found - decisions_.begin());
  }

  /// The longest stretch from a row that `goes_on` takes through each decision, as far as the minutes
  /// need; it may end on a row that `may_end` there.
  template <class GoesOn, class MayEnd>
  [[nodiscard]] std::size_t last_from(std::size_t first, GoesOn goes_on, MayEnd may_end) const {
    std::size_t last = first;
    std::size_t row = first;
    for (std::size_t k = decision_from(first); k < decisions_.size(); ++k) {
      if (seconds_of(first, last) >= need_s_ || decisions_[k].exit >= end_) break;
      if (decisions_[k].entry != row || !goes_on(decisions_[k])) break;
      row = decisions_[k].exit;
      if (may_end(row)) last = row;
    }
    return last;
  }

  void follow(std::size_t first, std::string_view name) {
    const std::size_t last = last_from(
        first, [&](const Decision& decision) { return is_signed(decision, name); },
        [&](std::size_t row) { return leads_to(at(row), name); });
    take({first, last, std::string(name), {}});
  }

  void tell(std::size_t first) {
    std::vector<std::string> directions;
    const std::size_t last = last_from(
        first,
        [&](const Decision& decision) {
          if (!decision.needs_direction) return true;
          std::string text = wish::direction_text(decision.direction);
          if (text.empty() || directions.size() == wish::most_directions) return false;
          directions.push_back(std::move(text));
          return true;
        },
        [](std::size_t) { return true; });
    take({first, last, {}, std::move(directions)});
  }

  /// Seconds of a stretch that lie in the first and the last minutes of the lesson.
  [[nodiscard]] double unsettled_s(const wish::IndependentStretch& stretch) const {
    const double whole_s = driven_s_.back();
    const double from_s = driven_s_[stretch.first], to_s = driven_s_[stretch.last + 1];
    return std::max(0.0, std::min(to_s, wish::settle_s) - from_s) +
           std::max(0.0, to_s - std::max(from_s, whole_s - wish::settle_s));
  }

  /// At how many decisions the learner must find the way.
  [[nodiscard]] std::ptrdiff_t finds(const wish::IndependentStretch& stretch) const {
    return std::count_if(decisions_.begin(), decisions_.end(), [&](const Decision& decision) {
      return decision.needs_direction && decision.entry >= stretch.first &&
             decision.exit <= stretch.last;
    });
  }

  [[nodiscard]] bool better(const FoundIndependent& one) const {
    if (!best_) return true;
    if (one.whole != best_->whole) return one.whole;
    if (!one.whole) return one.seconds > best_->seconds;
    const bool leads_nowhere = finds(one.stretch) == 0;
    if (leads_nowhere != (finds(best_->stretch) == 0)) return !leads_nowhere;
    const bool is_signed = !one.stretch.follow.empty();
    if (is_signed != !best_->stretch.follow.empty()) return is_signed;
    const std::size_t told = one.stretch.directions.size();
    if (told != best_->stretch.directions.size()) return told < best_->stretch.directions.size();
    return unsettled_s(one.stretch) < unsettled_s(best_->stretch);
  }

  void take(wish::IndependentStretch stretch) {
    const double seconds = seconds_of(stretch.first, stretch.last);
    FoundIndependent found{std::move(stretch), seconds, seconds >= need_s_};
    if (better(found)) best_ = std::move(found);
  }

  const road::Roads& roads_;
  const wish::Loop& loop_;
  double need_s_;
  std::vector<bool> inside_;
  std::vector<Decision> decisions_;
  std::vector<double> driven_s_;  ///< by row, and for the end
  std::size_t end_ = 0;           ///< behind the last row that counts as practice
  std::optional<FoundIndependent> best_;
};

}  // namespace

std::optional<FoundIndependent> independent_on(const road::Roads& roads, const wish::Loop& loop,
                                               int minutes) {
  return StretchFinder(roads, loop, minutes).find();
}

void add_independent(const road::Roads& roads, const wish::Wish& wish, wish::Loop& loop,
                     std::optional<wish::Shortfall>& shortfall) {
  loop.independent.clear();
  if (wish.independent_minutes == 0) return;
  const auto found = independent_on(roads, loop, wish.independent_minutes);
  if (found) loop.independent.push_back(found->stretch);
  if (found && found->whole) return;
  const int longest = found ? static_cast<int>(found->seconds / 60) : 0;
  if (!shortfall)
    shortfall.emplace().why = "loop " + std::to_string(loop.id) +
                              " has no independent stretch of " +
                              std::to_string(wish.independent_minutes) +
                              " minutes; the longest has " + std::to_string(longest);
}

}  // namespace loopwright::find
