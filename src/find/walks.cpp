#include "find/walks.hpp"

#include <algorithm>
#include <array>
#include <future>
#include <set>

#include "find/counting.hpp"

namespace loopwright::find {

namespace {

// A quiet street may be driven twice a lesson, and the second time lessens the value: so many times slower it
// counts on top. Some walks begin more polite, some less: which is better differs from home to home.
constexpr std::array<std::int32_t, 2> dislikes = {4, 1};

constexpr std::size_t most_bettered = 2;  // ours
// A bound of more candidates and the legs of the next walk are together more than 300 MB (ours, tried on the county).
constexpr std::size_t most_beside = 600;
// A first drive that comes to less than this share of what its walk is worth won't do: another is made (ours).
constexpr double share_of_walk = 0.6;

// Each time a walk wears a street out, as multiples of its time (ours).
constexpr std::int32_t worn_out_dislike = 12;  // what a leg costs more on it
constexpr std::int32_t worn_out_toll = 8;      // what counts as time, for each drive too many

/// Makes the quiet streets dearer that the plan drives more often than they may be.
void make_worn_out_dearer(const Hunt& hunt, const Plan& plan, PassageGraph::Spared& spared) {
  const std::vector<int> drives = drives_of_pieces(hunt, plan.vertices());
  for (Vertex v = 0; v < hunt.graph.size(); ++v) {
    const std::uint32_t piece = hunt.piece_of[v];
    const int too_many = drives[piece] - hunt.piece_most[piece];
    if (hunt.piece_quiet[piece] == 0 || too_many <= 0) continue;
    spared.courtesy_ms[v] += worn_out_dislike * hunt.graph.along_ms(v);
    spared.toll_ms[v] += worn_out_toll * too_many * hunt.graph.along_ms(v);
  }
}

circuit::Walk walk_of(const circuit::Problem& problem, int rounds, std::uint64_t seed) {
  return circuit::search(problem, {.rounds = rounds, .seed = seed});
}

struct Scored {
  Plan plan;
  Score score;
  bool is_bettered = false;
  bool is_worth_its_walk = true;
};

/// The best first, and only the best few bettered: that takes as long as to make one.
std::vector<Plan> bettered(Builder& builder, std::vector<Scored> made) {
  std::stable_sort(made.begin(), made.end(),
                   [](const Scored& a, const Scored& b) { return a.score.better_than(b.score); });
  std::vector<Plan> plans;
  for (Scored& each : made) {
    if (plans.size() < most_bettered && !each.is_bettered) builder.improve(each.plan, {});
    plans.push_back(std::move(each.plan));
  }
  return plans;
}

}  // namespace

Plan plan_along_walk(const Hunt& hunt, Builder& builder, int rounds, const Liking& liking) {
  const PassageGraph graph(hunt);
  const PassageGraph::Spared spared = graph.courtesy(dislikes.front());
  const circuit::Problem problem = graph.problem(spared);
  Plan plan = builder.lay_along(graph, problem, walk_of(problem, rounds, 1), spared.courtesy_ms);
  builder.bring_within(plan, liking);
  builder.improve(plan, liking);
  return plan;
}

std::vector<Plan> plans_along_walks(const Hunt& hunt, Builder& builder, Certifier& certifier,
                                    const FindWork& work) {
  const PassageGraph graph(hunt, counts_worth(hunt.ground.wish) ? work.legs_for_most : work.legs);
  std::array<PassageGraph::Spared, dislikes.size()> by_dislike;
  for (std::size_t k = 0; k < dislikes.size(); ++k) by_dislike[k] = graph.courtesy(dislikes[k]);
  std::vector<Scored> plans;
  std::set<std::vector<Vertex>> laid;
  const auto drive = [&](const circuit::Problem& problem, const circuit::Walk& walk,
                         PassageGraph::Spared& spared) {
    Plan plan = builder.lay_along(graph, problem, walk, spared.courtesy_ms);
    // The same dice would make the same of it: of few passes the best walk is often found again.
    if (!laid.insert(plan.vertices()).second) return;
    make_worn_out_dearer(hunt, plan, spared);
    builder.bring_within(plan, {});
    Scored made{std::move(plan), {}};
    made.score = score(hunt, made.plan);
    // Mending a drive that isn't as asked takes less time than another walk.
    if (work.until_good && !made.score.as_asked()) {
      builder.improve(made.plan, {});
      made.score = score(hunt, made.plan);
      made.is_bettered = true;
    }
    if (counts_worth(hunt.ground.wish))
      made.is_worth_its_walk = static_cast<double>(made.score.value) >=
                               share_of_walk * static_cast<double>(evaluate(problem, walk).value);
    plans.push_back(std::move(made));
  };
  circuit::Walk best;
  // Beside the walks, on a thread of its own; where none can be begun, or both would take too much memory, after them.
  // Without "max" it asks prices of stretches, which only one thread may.
  std::future<circuit::Walk> bounded;
  const auto any_good = [&] {
    const bool any_will_do = plans.size() > 1;
    return std::any_of(plans.begin(), plans.end(), [&](const Scored& made) {
      return made.score.as_asked() && (any_will_do || made.is_worth_its_walk);
    });
  };
  for (int round = 0; round < work.walks || (round < work.most_walks && !any_good()); ++round) {
    PassageGraph::Spared& spared = by_dislike[static_cast<std::size_t>(round) % dislikes.size()];
    const circuit::Problem problem = graph.problem(spared);
    const circuit::Walk walk =
        walk_of(problem, work.walk_rounds, static_cast<std::uint64_t>(round + 1));
    if (round == 0) {
      best = walk;
      if (counts_worth(hunt.ground.wish) && hunt.candidates.size() <= most_beside)
        bounded = std::async(std::launch::async | std::launch::deferred,
                             [&] { return certifier.bound(graph, work, best); });
    }
    drive(problem, walk, spared);
  }
  const circuit::Walk better = bounded.valid() ? bounded.get() : certifier.bound(graph, work, best);
  if (!(better == best)) {
    PassageGraph::Spared nothing = graph.courtesy(0);
    drive(graph.problem(), better, nothing);
  }
  return bettered(builder, std::move(plans));
}

}  // namespace loopwright::find
