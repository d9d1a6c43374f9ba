// Method: each pass of each row counts once, for the first want that it meets.
#include "card/practice.hpp"

#include <algorithm>

#include "card/lesson.hpp"
#include "loopwright/wish/asked.hpp"
#include "loopwright/wish/parts.hpp"

namespace loopwright::card {

std::map<Practice, Counted> practice_of(const Subject& subject) {
  std::map<Practice, Counted> practice;
  const std::vector<wish::Met> met = all_met(subject.loop);
  for (std::size_t k = 0; k < subject.rows.size(); ++k)
    for (const std::size_t index : subject.rows[k].passes) {
      const wish::Pass& pass = subject.loop.passes[index];
      if (!wish::lies_in(pass, wish::practice_of(subject.loop))) continue;
      const auto want = std::find_if(met.begin(), met.end(), [&](const wish::Met& m) {
        return wish::counts_for(index, subject.loop.passes, m.want);
      });
      const auto order = static_cast<std::size_t>(want - met.begin());
      Counted& counted = practice[{order, pass.kind, pass.movement}];
      ++counted.passes;
      if (pass.confidence == road::Confidence::inferred) ++counted.inferred;
      if (counted.rows.empty() || counted.rows.back() != k + 1) counted.rows.push_back(k + 1);
    }
  return practice;
}

}  // namespace loopwright::card
