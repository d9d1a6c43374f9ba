#include "command/tell_logged.hpp"

#include <algorithm>
#include <iostream>
#include <vector>

#include "command/folded.hpp"
#include "command/hours_place.hpp"
#include "command/mock_words.hpp"
#include "loopwright/base/plain_words.hpp"

namespace loopwright::command {

void tell_logged(const std::string& code, int number, const Instant& start, const book::Log& log,
                 const book::Scheme& scheme) {
  const auto driven = std::count_if(log.passes.begin(), log.passes.end(),
                                    [](const auto& pass) { return pass.driven; });
  std::vector<std::string> seen;
  for (const book::Observation& one : log.observations)
    seen.push_back(std::string(scheme.skill(one.skill)->name) + " " + std::to_string(one.level));
  print_folded(std::cout, 0,
               code + ", lesson " + std::to_string(number) + " is logged: " + spoken_moment(start) +
                   "; passes driven " + std::to_string(driven) + " of " +
                   std::to_string(log.passes.size()) +
                   (seen.empty() ? "" : "; levels: " + listed(seen)));
  if (log.mock) print_folded(std::cout, 2, "mock test: " + mock_words(log));
  if (log.seen.empty()) return;
  const bool otherwise = std::any_of(log.seen.begin(), log.seen.end(),
                                     [](const book::SeenFact& one) { return !one.says.empty(); });
  print_folded(std::cout, 0,
               "seen on the ground: kept with its day, for all drives past it" +
                   std::string(otherwise ? "; what stands there otherwise than on the map counts "
                                           "once you note it ('loopwright note add --help')"
                                         : ""));
}

}  // namespace loopwright::command
