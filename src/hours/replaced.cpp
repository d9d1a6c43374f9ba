// Days are tried only when some rule could take them: trying some years of days takes milliseconds.
#include "hours/replaced.hpp"

#include "hours/evaluate.hpp"

namespace loopwright::hours {
namespace {

/// Some rule that may be in force stands before one that takes days.
bool may_replace(const Rules& rules) {
  bool may_be_in_force = false;
  for (const Rule& rule : rules.rules) {
    if (may_be_in_force && takes_days(rules, rule)) return true;
    may_be_in_force = may_be_in_force || rule.state != State::off;
  }
  return false;
}

}  // namespace

bool takes_days(const Rules& rules, const Rule& rule) {
  const bool off = rule.state == State::off && rule.joint != Joint::falls_back;
  return replaces(rules, rule) || (off && rule.spans.empty());
}

std::size_t replaced_by(const Rules& rules, const RuleDays& days, std::size_t k) {
  if (rules.rules.size() > most_rules_compared) return k;
  for (std::size_t later = rules.rules.size() - 1; later > k; --later) {
    if (takes_days(rules, rules.rules[later]) && days.within(k, later)) return later;
  }
  return k;
}

void mark_whole_replacements(Rules& rules) {
  if (rules.rules.size() > most_rules_compared || !may_replace(rules)) return;
  const RuleDays days(rules);
  for (std::size_t k = 1; k < rules.rules.size(); ++k) {
    Rule& rule = rules.rules[k];
    if (!takes_days(rules, rule)) continue;
    for (std::size_t i = 0; i < k; ++i) {
      const bool nothing_left = rules.rules[i].state != State::off && days.within(i, k);
      rule.replaces_whole = rule.replaces_whole || nothing_left;
    }
    rules.any_replaced = rules.any_replaced || rule.replaces_whole;
  }
}

}  // namespace loopwright::hours
