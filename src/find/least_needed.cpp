// Method: the same wish with only its numbers and more minutes, as a passage graph; its quickest walk
// (circuit/circuit.hpp, least_time). Then again without each want in turn.
#include "find/least_needed.hpp"

#include <algorithm>
#include <utility>

#include "find/passage_graph.hpp"
#include "loopwright/circuit/circuit.hpp"

namespace loopwright::find {

namespace {

// Ours: beyond a day's work nobody wants to know; the tree of 20,000 nodes takes a second at most.
constexpr int most_minutes = 600;
constexpr circuit::LeastTimeWork work{20'000};

wish::Wish numbers_of(wish::Wish wish) {
  std::erase_if(wish.wants, [](const wish::Want& want) { return !want.count; });
  wish.minutes = std::min(most_minutes, 3 * wish.minutes.value_or(0) + 60);
  wish.welcome.clear();
  wish.stops = {};
  return wish;
}

double minutes_of(std::int64_t ms) {
  return static_cast<double>(ms) / 60000;
}

}  // namespace

LeastNeeded least_needed(const Ground& ground) {
  LeastNeeded needed;
  const wish::Wish wish = numbers_of(ground.wish);
  if (wish.wants.empty()) return needed;
  const Ground longer(ground.roads, wish, ground.setting, ground.walls);
  if (longer.starts.empty() || longer.goals.empty()) return needed;
  const Hunt hunt(longer);
  if (hunt.starts.empty() || hunt.goals.empty()) return needed;
  const PassageGraph graph(hunt);
  if (!graph.complete()) return needed;
  circuit::Problem problem = graph.problem();
  const circuit::LeastTime all = circuit::least_time(problem, work);
  if (all.at_least_ms >= problem.most_ms) return needed;
  needed.at_least_minutes = minutes_of(all.at_least_ms - graph.shift_ms());
  if (!all.proved || wish.wants.size() < 2) return needed;
  for (std::size_t w = 0; w < wish.wants.size(); ++w) {
    const int least = std::exchange(problem.goals[w].least, 0);
    const circuit::LeastTime rest = circuit::least_time(problem, work);
    problem.goals[w].least = least;
    if (rest.proved)
      needed.costs.push_back({wish.wants[w], minutes_of(all.at_least_ms - rest.at_least_ms)});
  }
  return needed;
}

}  // namespace loopwright::find
