// Method: a table, an effort a function. The numbers are ours: tried on Newport and the county.
#include "find/find_work.hpp"

#include "find/builder.hpp"

namespace loopwright::find {

namespace {

FindWork quick_work() {
  return {.tries = 1,
          .tries_for_most = 0,
          .tries_without = 6,
          .until_good = true,
          .tries_when_unmet = 12,
          .walks = 1,
          .most_walks = 4,
          .walk_rounds = 300,
          .improvements = 4,
          .worth_more = {{1, MoreWorth::at_once}},
          .picked = 60,
          .legs = {.settled = 300'000, .ways_round = 1'000'000},
          .legs_for_most = {.settled = 700'000, .ways_round = 1'000'000},
          .bound = {.cut_rounds = 0, .nodes = 0, .work = 0, .repair = {.rounds = 0}}};
}

FindWork soon_work() {
  return {.tries = 2,
          .tries_for_most = 0,
          .tries_without = 6,
          .until_good = true,
          .tries_when_unmet = 12,
          .walks = 2,
          .most_walks = 4,
          .walk_rounds = 300,
          .improvements = 4,
          .driven_less_again = 2,
          .less_again_searches = 150,
          .worth_more = {{2, MoreWorth::small}},
          .picked = 60,
          .legs = {.settled = 1'000'000},
          .legs_for_most = {.settled = 1'000'000},
          .quickest_rounds = 300,
          .bound = {.cut_rounds = 2, .nodes = 1, .work = 20'000'000, .repair = {.rounds = 0}}};
}

FindWork usual_work() {
  return {
      .tries = 10,
      .tries_for_most = 2,
      .tries_without = 10,
      .tries_when_unmet = 12,
      .walks = 10,
      .most_walks = 10,
      .walk_rounds = 500,
      .improvements = Builder::usual_improvements,
      .driven_less_again = 4,
      .less_again_searches = 300,
      .worth_more = {{6, MoreWorth::small}, {2, MoreWorth::wide}},
      .picked = Hunt::usually_picked,
      .quickest_rounds = 1000,
      .bound = {.cut_rounds = 400, .nodes = 1000, .work = 50'000'000, .repair = {.rounds = 100}}};
}

FindWork thorough_work() {
  return {
      .tries = 12,
      .tries_for_most = 2,
      .tries_without = 10,
      .tries_when_unmet = 12,
      .walks = 16,
      .most_walks = 16,
      .walk_rounds = 2000,
      .improvements = Builder::usual_improvements,
      .driven_less_again = 10,
      .less_again_searches = 800,
      .worth_more = {{10, MoreWorth::small}, {6, MoreWorth::wide}, {2, MoreWorth::widest}},
      .picked = Hunt::usually_picked,
      .quickest_rounds = 1000,
      .bound = {.cut_rounds = 400, .nodes = 1000, .work = 200'000'000, .repair = {.rounds = 200}}};
}

}  // namespace

FindWork work_of(Effort effort) {
  switch (effort) {
    case Effort::quick:
      return quick_work();
    case Effort::soon:
      return soon_work();
    case Effort::usual:
      return usual_work();
    case Effort::thorough:
      return thorough_work();
  }
  return {};
}

}  // namespace loopwright::find
