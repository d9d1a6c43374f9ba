// 1. Each row's rules are laid to the meeting that ended in the row before, when the rule is the same.
// 2. In words: the rule, when the drive is there, and what follows for the car then.
#include "loopwright/lanes/met.hpp"

#include <algorithm>

namespace loopwright::lanes {
namespace {

bool goes_on(const RuleMet& before, const road::TimedRule& rule, std::size_t row) {
  return before.rows.last + 1 == row && before.rule->base == rule.base &&
         before.rule->text == rule.text;
}

std::string values_words(const LimitWhen& limit) {
  std::string values;
  for (const std::string& value : limit.values)
    values += (values.empty() ? "" : " or ") + limit_words(value);
  return values + (limit.settled() ? "" : ", check the signs");
}

}  // namespace

std::vector<RuleMet> rules_met(const road::Roads& roads, const wish::Loop& loop,
                               road::Timed about) {
  std::vector<RuleMet> all;
  for (std::size_t row = 0; row < loop.stretches.size(); ++row) {
    for (const road::TimedRule& rule : roads.timed_rules_of(loop.stretches[row].stretch)) {
      if (rule.about != about) continue;
      const auto before =
          std::ranges::find_if(all, [&](const RuleMet& met) { return goes_on(met, rule, row); });
      if (before == all.end()) {
        all.push_back({{row, row}, &rule});
      } else {
        before->rows.last = row;
      }
    }
  }
  return all;
}

Said said_of(const RuleMet& met, const TimedDrive& drive) {
  const Passing when = passing_of(drive.loop, met.rows, drive.setting);
  const std::string rule = words_of(drive.roads, *met.rule);
  if (met.rule->about == road::Timed::limit) {
    const LimitWhen limit = limit_when(drive.roads, met.rule->stretch, when, drive.setting);
    return {rule, when, values_words(limit), limit.settled()};
  }
  Clockwork clock(drive.roads, drive.setting);
  const bool open = clock.open(*met.rule, when).in_force == hours::Tri::yes;
  return {rule, when, open ? "may be driven" : "keep out", open};
}

std::string met_words(const RuleMet& met, const TimedDrive& drive) {
  const Said said = said_of(met, drive);
  return said.rule + when_passing(said.when) + ": " + said.verdict;
}

}  // namespace loopwright::lanes
