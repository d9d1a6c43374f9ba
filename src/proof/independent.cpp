// 1. A stretch of its own is told only when asked for; it begins and ends outside junctions, on road that
//    counts as practice.
// 2. One by signs: the name is signed where it begins and ends; at every choice on it the way taken is
//    signed and no other, or it is the road ahead and nothing else is signed.
// 3. One by directions: what must be told on it, in its words, is what the file tells; at most three.
// 4. It takes the minutes asked for. A shorter one is told in the shortfall, and no other on the drive is
//    longer: all are tried.
#include <algorithm>
#include <cmath>

#include "loopwright/wish/independent.hpp"
#include "proof/choices.hpp"
#include "proof/tolerance.hpp"

namespace loopwright::proof {
namespace {

using wish::IndependentStretch;

class Wayfinding {
 public:
  explicit Wayfinding(const Drive& drive)
      : drive_(drive), inside_(inside_junctions(drive)), choices_(choices_of(drive)) {
    for (const Taken& taken : taken_before(drive))
      before_s_.push_back(static_cast<double>(taken.driving.likely_ms) / 1000);
    if (drive.loop.practice)
      first_ = (*drive.loop.practice)[0], last_ = (*drive.loop.practice)[1];
    else
      last_ = drive.stretches.size() - 1;
  }

  [[nodiscard]] double seconds(std::size_t first, std::size_t last) const {
    return before_s_[last + 1] - before_s_[first];
  }
  [[nodiscard]] bool may_hold(const IndependentStretch& said) const {
    return said.first >= first_ && said.first <= said.last && said.last <= last_ &&
           !inside_[said.first] && !inside_[said.last];
  }
  [[nodiscard]] std::vector<const Choice*> choices_on(const IndependentStretch& said) const {
    std::vector<const Choice*> on;
    for (const Choice& choice : choices_)
      if (choice.from >= said.first && choice.to <= said.last) on.push_back(&choice);
    return on;
  }
  [[nodiscard]] bool is_signed(const Choice& choice, std::string_view name) const {
    for (const StretchId other : choice.other_ways)
      if (leads_to(drive_.roads, other, name)) return false;
    return choice.road_ahead || leads(choice.to, name);
  }
  [[nodiscard]] bool leads(std::size_t row, std::string_view name) const {
    return leads_to(drive_.roads, drive_.stretches[row], name);
  }
  /// Of the longest stretch there is, whether signed or told.
  [[nodiscard]] double longest_s() const {
    double longest = 0;
    for (std::size_t row = first_; row <= last_; ++row) {
      if (inside_[row]) continue;
      longest = std::max(longest, longest_told(row));
      for (const std::string& name : led_to(drive_.roads, drive_.stretches[row]))
        longest = std::max(longest, longest_signed(row, name));
    }
    return longest;
  }

 private:
  [[nodiscard]] double longest_told(std::size_t first) const {
    std::size_t last = first, told = 0;
    for (const Choice& choice : choices_) {
      if (choice.from < first) continue;
      if (!choice.road_ahead && (choice.told.empty() || ++told > wish::most_directions)) break;
      if (choice.to > last_) break;
      last = choice.to;
    }
    return seconds(first, last);
  }
  [[nodiscard]] double longest_signed(std::size_t first, std::string_view name) const {
    std::size_t last = first;
    for (const Choice& choice : choices_) {
      if (choice.from < first) continue;
      if (choice.to > last_ || !is_signed(choice, name)) break;
      if (leads(choice.to, name)) last = choice.to;
    }
    return seconds(first, last);
  }

  const Drive& drive_;
  std::vector<bool> inside_;
  std::vector<Choice> choices_;
  std::vector<double> before_s_;
  std::size_t first_ = 0, last_ = 0;
};

std::string at_independent(const Drive& drive) {
  return at_loop(drive) + ", independent stretch";
}

bool signs_hold(const Drive& drive, const Wayfinding& ways, const IndependentStretch& said,
                Claims& claims) {
  for (const std::size_t end : {said.first, said.last})
    if (!claims.hold(ways.leads(end, said.follow), [&] {
          return at_stretch(drive, end) + ": nothing there is signed to '" + said.follow + "'";
        }))
      return false;
  for (const Choice* choice : ways.choices_on(said))
    if (!claims.hold(ways.is_signed(*choice, said.follow), [&] {
          return at_stretch(drive, choice->from) +
                 ": at its end the way taken isn't the one signed to '" + said.follow + "'";
        }))
      return false;
  return claims.hold(said.directions.empty(), [&] {
    return at_independent(drive) + ": it follows signs, and tells directions";
  });
}

bool directions_hold(const Drive& drive, const Wayfinding& ways, const IndependentStretch& said,
                     Claims& claims) {
  std::vector<std::string> own;
  for (const Choice* choice : ways.choices_on(said))
    if (!choice->road_ahead) own.push_back(choice->told);
  if (!claims.agree(at_independent(drive) + ", directions", std::to_string(said.directions.size()),
                    std::to_string(own.size())))
    return false;
  for (std::size_t k = 0; k < own.size(); ++k)
    if (!claims.agree(at_independent(drive) + ", direction " + std::to_string(k),
                      said.directions[k], own[k]))
      return false;
  return claims.hold(own.size() <= wish::most_directions, [&] {
    return at_independent(drive) + ": it takes " + std::to_string(own.size()) + " directions";
  });
}

bool is_short(const Drive& drive, double seconds) {
  const double asked_s = 60.0 * drive.wish.independent_minutes;
  return seconds < asked_s - wish::independent_rounding_s - 2 * time_tolerance_s;
}

double told_s(const Drive& drive, const Wayfinding& ways) {
  const auto& said = drive.loop.independent;
  return said.empty() ? 0 : ways.seconds(said.front().first, said.front().last);
}

}  // namespace

bool independent_holds(const Drive& drive, Claims& claims) {
  const auto& all = drive.loop.independent;
  const bool asked = drive.wish.independent_minutes > 0;
  if (!asked && all.empty()) return true;
  if (!claims.hold(all.size() <= (asked ? 1U : 0U), [&] {
        return at_loop(drive) + ": it has " + std::to_string(all.size()) +
               " independent stretches, asked for is " + (asked ? "one" : "none");
      }))
    return false;
  if (!asked) return true;
  const Wayfinding ways(drive);
  for (const IndependentStretch& said : all) {
    if (!claims.hold(ways.may_hold(said), [&] {
          return at_independent(drive) +
                 ": it begins or ends inside a junction, or where nothing is practised";
        }))
      return false;
    const bool holds = said.follow.empty() ? directions_hold(drive, ways, said, claims)
                                           : signs_hold(drive, ways, said, claims);
    if (!holds) return false;
  }
  const double seconds = told_s(drive, ways);
  if (!is_short(drive, seconds)) return true;
  const double longest = ways.longest_s();
  return claims.hold(longest <= seconds + 2 * time_tolerance_s, [&] {
    return at_independent(drive) + ": it has " + tenths(seconds / 60) + " min of " +
           std::to_string(drive.wish.independent_minutes) + ", and there is one of " +
           tenths(longest / 60);
  });
}

bool independent_is_told(std::span<const Drive> drives, const wish::Answer& answer,
                         Claims& claims) {
  if (answer.wish.independent_minutes == 0) return true;
  for (const Drive& drive : drives) {
    const bool falls_short = is_short(drive, told_s(drive, Wayfinding(drive)));
    if (!claims.hold(!falls_short || answer.shortfall.has_value(), [&] {
          return at_loop(drive) +
                 ": its independent stretch is too short, and there is no shortfall";
        }))
      return false;
  }
  return true;
}

}  // namespace loopwright::proof
