// 1. Rows: each rule about access or a gate of the stretch is asked for the time it is driven.
// 2. Turns: conditional turn rules are followed along the drive from the row that begins their path,
//    as those without hours are: a "no" driven to its end, an "only" left after it binds.
#include <algorithm>

#include "loopwright/lanes/met.hpp"

namespace loopwright::lanes {
namespace {

using hours::Tri;
using road::TurnRule;

class BreachSearch {
 public:
  BreachSearch(const road::Roads& roads, const wish::Loop& loop, const hours::Setting& setting)
      : roads_(roads), loop_(loop), setting_(setting), clock_(roads, setting) {
    const auto rules = roads.turn_rules;
    for (std::uint32_t row = 0; row < rules.size(); ++row)
      if (!roads.text(rules[row].condition).empty())
        by_first_.emplace_back(roads.path_of(rules[row]).front(), row);
    std::ranges::sort(by_first_);
  }

  std::vector<Breach> run() {
    for (std::size_t i = 0; i < loop_.stretches.size(); ++i) {
      ask_street(i);
      ask_turns(i);
    }
    std::ranges::stable_sort(breaches_, {}, &Breach::at);
    return std::move(breaches_);
  }

 private:
  void ask_street(std::size_t i) {
    const StretchId stretch = loop_.stretches[i].stretch;
    if ((roads_.stretch(stretch).flags & road::stretch_flag::timed) == 0) return;
    const Passing when = passing_of(loop_, {i, i}, setting_);
    for (const road::TimedRule& rule : roads_.timed_rules_of(stretch)) {
      if (rule.about == road::Timed::limit) continue;
      const hours::Answer open = clock_.open(rule, when);
      if (open.in_force == Tri::yes) continue;
      const auto row = static_cast<std::uint32_t>(&rule - roads_.timed_rules.data());
      breaches_.push_back({i, BreachOf::street, row,
                           street_words(roads_, stretch) + shut_or_not(open) +
                               words_of(roads_, rule) + when_passing(when)});
    }
  }

  void ask_turns(std::size_t i) {
    const StretchId first = loop_.stretches[i].stretch;
    for (auto it = std::ranges::lower_bound(by_first_, std::pair(first, std::uint32_t{0}));
         it != by_first_.end() && it->first == first; ++it)
      ask_turn(i, it->second);
  }

  void ask_turn(std::size_t i, std::uint32_t row) {
    const TurnRule& rule = roads_.turn_rules[row];
    const std::size_t at = turned_against(roads_, loop_, rule, i);
    if (at == 0) return;
    const Passing when = at_turn(loop_, TurnMet{i, at, &rule}, setting_);
    const hours::Answer binds = clock_.binds(rule, when);
    if (binds.in_force == Tri::no) return;
    const std::string why = binds.in_force == Tri::unknown ? reason_words(binds.reason) : "";
    const std::string doubt =
        why.empty() ? " is banned: " : " may be banned, the map can't say (" + why + "): ";
    breaches_.push_back({at, BreachOf::turn, row,
                         "the turn into " + street_words(roads_, loop_.stretches[at].stretch) +
                             doubt + words_of(roads_, rule) + when_passing(when)});
  }

  /// " is ", or that nobody can tell and why.
  static std::string shut_or_not(const hours::Answer& open) {
    const std::string why = open.in_force == Tri::unknown ? reason_words(open.reason) : "";
    return why.empty() ? " is " : " may be shut, the map can't say (" + why + "): ";
  }

  const road::Roads& roads_;
  const wish::Loop& loop_;
  const hours::Setting& setting_;
  Clockwork clock_;
  std::vector<std::pair<StretchId, std::uint32_t>> by_first_;
  std::vector<Breach> breaches_;
};

}  // namespace

std::vector<Breach> breaches_on(const road::Roads& roads, const wish::Loop& loop,
                                const hours::Setting& setting) {
  return BreachSearch(roads, loop, setting).run();
}

LimitWhen limit_when(const road::Roads& roads, StretchId stretch, const Passing& when,
                     const hours::Setting& setting) {
  LimitWhen limit;
  for (const road::TimedRule& rule : roads.timed_rules_of(stretch)) {
    if (rule.about != road::Timed::limit) continue;
    const auto read = hours::read_conditional(roads.text(rule.base), roads.text(rule.text));
    const hours::Possible possible = read.through(when.from, when.to, setting);
    for (std::size_t bit = 0; bit <= read.rows().size(); ++bit) {
      const std::string& value = read.value(bit);
      if (possible.has(bit) && std::ranges::find(limit.values, value) == limit.values.end())
        limit.values.push_back(value);
    }
    limit.reason = possible.reason;
    limit.words = words_of(roads, rule);
  }
  return limit;
}

}  // namespace loopwright::lanes
