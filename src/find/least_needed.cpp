// Method: the same wish with only its numbers and more minutes, as a passage graph; its quickest walk
// (circuit/circuit.hpp, least_time). Then again without each want in turn.
#include "find/least_needed.hpp"

#include <algorithm>
#include <utility>

#include "find/passage_graph.hpp"
#include "loopwright/circuit/circuit.hpp"
#include "loopwright/wish/turn_round.hpp"

namespace loopwright::find {

namespace {

// Ours: beyond a day's work nobody wants to know; 20,000 nodes prove most wishes of a lesson.
constexpr int most_minutes = 600;
constexpr circuit::LeastTimeWork work{20'000};

/// A run or a roadside chance at the door is no candidate, yet may be passed; of what a pass leads into
/// only some ways are.
bool is_known(const wish::Want& want) {
  const road::KindForm form = road::form_of(want.kind);
  return want.count && !want.into &&
         (form == road::KindForm::junction || form == road::KindForm::manoeuvre);
}

wish::Wish numbers_of(wish::Wish wish) {
  const bool turns_round = wish::wants_turning_round(wish);
  std::erase_if(wish.wants, [](const wish::Want& want) { return !is_known(want); });
  wish.minutes = std::min(most_minutes, 3 * wish.minutes.value_or(0) + 60);
  wish.welcome.clear();
  if (turns_round) wish.welcome.push_back(road::Kind::turn_in_road);
  wish.takes.clear();  // they only take longer
  wish.stops = {};
  return wish;
}

}  // namespace

LeastNeeded least_needed(const Ground& ground) {
  LeastNeeded needed;
  const wish::Wish wish = numbers_of(ground.wish);
  if (wish.wants.empty()) return needed;
  // What the clock shuts may be open in another lesson, and later in a longer one.
  const ClockWalls walls = ground.walls.with_only({});
  const Ground longer(ground.roads, wish, ground.setting, walls);
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
